"""Lines about cuts with no mate: what each kind needs, and what it cannot have."""

from __future__ import annotations

from fractions import Fraction

import pytest
from tests.pieces.reading import checked

from dryfit.diagnostics import Source
from dryfit.notes import parse, source_of
from dryfit.piece import declare
from dryfit.piece.declared import DeclaredFeature
from dryfit.piece.feature_words import BARE_ORDER, example
from dryfit.quantities import Display

PIECE = """piece Kinds
units mm
overall 900 wide, 400 deep, 800 high
timber oak
4 legs, upright, 50 x 50, at corners
2 aprons, across, on edge, 100 x 20, tenon 20 into legs
glue up frames: legs, aprons
"""


def declared(line: str) -> DeclaredFeature:
    source = source_of("notes.dryfit", f"{PIECE}{line}\n".encode())
    assert isinstance(source, Source)
    piece, findings = declare(parse(source)[0])
    assert [each.message for each in findings] == []
    return piece.features[0]


@pytest.mark.parametrize(
    ("line", "missing"),
    [
        (
            "groove in legs: inside, through",
            "the width (`6 wide`), the depth (`9 deep`), the place",
        ),
        ("groove in legs: 6 wide, 9 deep, 12 from top", "the face"),
        ("rabbet in legs: 6 wide, 9 deep", "the edge"),
        ("rabbet in legs: back inner edge, 6 wide", "the depth"),
        ("hole in legs: inside, 5 dia, 10 deep", "the place"),
        ("hole in legs: inside, 5 dia, 50 from top", "the depth (`10 deep`, or `through`)"),
        ("hole in legs: inside, 10 deep, 50 from top", "the diameter"),
        ("taper in legs: inside faces, 40 to 25", "where it begins and ends"),
        ("taper in legs: inside faces, from 60 from top to the bottom end", "what is left"),
        ("chamfer on legs: 2 wide", "the edges"),
        ("chamfer on legs: bottom end", "the width"),
        ("round-over on legs: long edges", "the radius"),
        ("profile on legs: long edges, 9 wide", "the name of the moulding"),
        ("profile on legs: long edges, ogee", "the width"),
        ("curve in aprons: bottom edge", "the depth"),
        ("curve in aprons: 30 deep", "the edge"),
        ("notch in aprons: bottom edge, 60 wide, 20 deep", "the place"),
        ("notch in aprons: bottom edge, at left", "the width"),
        ("slot in aprons: outside, 25 wide, through, 30 from top", "the length"),
        ("slot in aprons: outside, 25 wide, 90 long, 30 from top", "the depth"),
        ("bevel in aprons: top edge", "the angle"),
        ("bevel in aprons: 10 degrees", "the edge or end"),
        ("keys in frames: 2 a corner, 25 deep", "the thickness"),
        ("keys in frames: 2 a corner, 3 thick", "the depth"),
        ("chamfer on legs: long edges, 3 wide, stopped", "where it stops"),
    ],
)
def test_what_is_missing_is_told_with_words_that_say_it(line: str, missing: str) -> None:
    told = checked(f"{PIECE}{line}\n").findings
    (finding,) = (each for each in told if each.code == "feature-unfinished")
    assert missing in finding.message
    kind = finding.message.partition(":")[0]
    said = Display().examples(example(kind))
    assert finding.hints[0].message == f"write for example `{said}`"


@pytest.mark.parametrize("shown", [Display(), Display.inches()], ids=["mm", "in"])
@pytest.mark.parametrize("kind", sorted(BARE_ORDER))
def test_the_example_of_every_kind_is_read_as_that_kind(kind: str, shown: Display) -> None:
    text = """piece Examples
units mm
overall 900 wide, 400 deep, 800 high
timber oak
4 legs, upright, 40 x 40, at corners
2 aprons, across, on edge, 100 x 20
2 stiles, upright, 60 x 20
2 rails, across, 60 x 20
1 top, flat, 22 thick
1 back, 20 thick
1 seat, flat, 20 thick
1 lid, flat, 20 thick
glue up frames: stiles, rails
"""
    source = source_of("notes.dryfit", f"{text}{shown.examples(example(kind))}\n".encode())
    assert isinstance(source, Source)
    notes, _ = parse(source)
    piece, findings = declare(notes)
    assert [each for each in findings if each.code.startswith("feature")] == []
    assert [each.kind for each in piece.features] == [kind]


@pytest.mark.parametrize(
    ("line", "size", "value"),
    [
        ("groove in legs: inside, 6 wide, 9 deep, 12 from left, through", "width", 6),
        ("hole in aprons: outside, 5 radius, through, 50 from top", "diameter", 10),
        ("chamfer on legs: bottom end, 2", "width", 2),
        ("round-over on legs: long edges, 6", "radius", 6),
        ("curve in aprons: bottom edge, 30 rise", "depth", 30),
        ("bevel in aprons: top edge, 10 degrees", "angle", 10),
        ("keys in frames: 3 x 25", "thickness", 3),
    ],
)
def test_sizes_go_by_their_words_and_bare_ones_by_the_order_of_the_trade(
    line: str, size: str, value: int
) -> None:
    assert declared(line).size(size) == Fraction(value)


def test_a_size_that_says_nothing_about_the_kind_is_refused() -> None:
    line = "round-over on legs: long edges, 6 radius, 9 deep\n"
    (finding,) = checked(PIECE + line).findings
    assert (finding.code, finding.message) == (
        "feature-size-unused",
        "round-over: a depth says nothing about it",
    )
    assert finding.hints[0].message == "its sizes are written `6 radius`"


@pytest.mark.parametrize("degrees", ["90", "100"])
def test_a_slope_is_less_than_square(degrees: str) -> None:
    (finding,) = checked(f"{PIECE}bevel in aprons: top edge, {degrees} degrees\n").findings
    assert finding.code == "angle-too-steep"


@pytest.mark.parametrize(
    "line",
    [
        "groove in aprons: inside, 6 wide, 9 deep, 12 from top, ogee",
        "groove in aprons: inside, 6 wide, 9 deep, 12 from top, 7 wide",
        "2 grooves in aprons: inside, 6 wide, 9 deep, 12 from top",
        "groove in aprons: inside, 6 wide, 9 deep, 12 from top, 4 at 32",
        "rabbet in aprons: bottom inside edge, 6 wide, 9 deep, 20 from top",
        "chamfer on aprons: bottom edges, 3 wide, 20 from left",
        "round-over on aprons: bottom edges, 3 radius, 5 wide",
        "notch in aprons: bottom edge, 60 wide, 20 deep, 50 from left, stopped 20 from left",
    ],
)
def test_what_a_cut_does_not_take_is_told(line: str) -> None:
    found = checked(f"{PIECE}{line}\n").findings
    assert [each.code for each in found] == ["feature-size-unused"]
