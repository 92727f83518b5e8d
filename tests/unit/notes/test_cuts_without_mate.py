"""Cuts with no mate: surfaces, sizes, extents, rows, counts."""

from fractions import Fraction

import pytest
from tests.unit.notes.nowhere import NOWHERE, number, part, said, size

from dryfit.notes.tree import (
    Extent,
    FeatureLine,
    Number,
    Offset,
    PartSize,
    Row,
    SizeWord,
    StageName,
    Surface,
)
from dryfit.quantities import ANGLE, Quantity

PARTS = "leg, box side, top, apron"


def cut(text: str) -> FeatureLine:
    line = said(text, PARTS)
    assert isinstance(line, FeatureLine)
    return line


def surface(*words: str, noun: str | None = None, every: bool = False) -> Surface:
    return Surface(words, noun, every, NOWHERE)


def offset(amount: int, place: str, *, of: str | None = None, on_host: bool = False) -> Offset:
    return Offset(number(amount), place, NOWHERE, (part(of),) if of else (), on_host)


def none_from(place: str) -> Offset:
    return Offset(Number(Fraction(0), None, NOWHERE), place, NOWHERE, on_host=True)


@pytest.mark.parametrize(
    ("word", "kind"),
    [
        ("groove", "groove"),
        ("rebate", "rabbet"),
        ("rabbets", "rabbet"),
        ("holes", "hole"),
        ("taper", "taper"),
        ("chamfers", "chamfer"),
        ("round-over", "round-over"),
        ("roundover", "round-over"),
        ("moulded edge", "profile"),
        ("arch", "curve"),
        ("notches", "notch"),
        ("slot", "slot"),
        ("bevel", "bevel"),
        ("splines", "keys"),
    ],
)
def test_a_cut_has_its_trade_names(word: str, kind: str) -> None:
    for text in (f"{word} in legs: inside", f"{word} on the legs, inside", f"{word} legs: inside"):
        line = cut(text)
        assert (line.kind, line.parts, line.surfaces) == (
            kind,
            (part("leg"),),
            (surface("inside"),),
        )


@pytest.mark.parametrize(
    ("text", "surfaces"),
    [
        ("back inner edge", (surface("back", "inner", noun="edge"),)),
        ("all top edges", (surface("top", noun="edge", every=True),)),
        ("all arrises", (surface(noun="edge", every=True),)),
        ("all long edges", (surface("long", noun="edge", every=True),)),
        ("top and bottom edges", (surface("top", noun="edge"), surface("bottom", noun="edge"))),
        (
            "front and end top edges",
            (surface("front", "top", noun="edge"), surface("end", "top", noun="edge")),
        ),
        ("underside", (surface("bottom"),)),
        ("bottom end", (surface("bottom", noun="end"),)),
        ("two inside faces", (surface("inside", noun="face", every=True),)),
    ],
)
def test_surfaces_are_sides_and_nouns(text: str, surfaces: tuple[Surface, ...]) -> None:
    assert cut(f"chamfer on top: {text}, 3 wide").surfaces == surfaces


@pytest.mark.parametrize(
    ("text", "word"),
    [
        ("6 wide", size(6, "width")),
        ("5 dia", size(5, "diameter")),
        ("dia 5", size(5, "diameter")),
        ("6 radius", size(6, "radius")),
        ("radius = 6", size(6, "radius")),
        ("30 rise", size(30, "depth")),
        ("2", size(2)),
        (
            "10 degrees",
            SizeWord(number(10, Quantity(Fraction(10), ANGLE)), "angle", NOWHERE),
        ),
    ],
)
def test_sizes_stand_with_their_words(text: str, word: SizeWord) -> None:
    assert cut(f"bevel on top: front edge, {text}").sizes == (word,)


@pytest.mark.parametrize(
    ("text", "extent"),
    [
        ("through", Extent("through", None, None, NOWHERE)),
        ("full length", Extent("through", None, None, NOWHERE)),
        ("stopped 20 from left", Extent("stopped", offset(20, "left"), None, NOWHERE)),
        (
            "from 60 from left to 100 from right",
            Extent("stretch", offset(60, "left"), offset(100, "right"), NOWHERE),
        ),
        (
            "from 1 beyond legs to the ends",
            Extent("stretch", offset(1, "end", of="leg", on_host=True), None, NOWHERE),
        ),
        (
            "from 100 below the top to the bottom end",
            Extent("stretch", offset(100, "top", on_host=True), none_from("bottom"), NOWHERE),
        ),
        (
            "from the bottom end to 100 below the top",
            Extent("stretch", none_from("bottom"), offset(100, "top", on_host=True), NOWHERE),
        ),
    ],
)
def test_a_cut_runs_so_far(text: str, extent: Extent) -> None:
    assert cut(f"groove in aprons: inside, 6 wide, {text}").extent == extent


def test_a_size_that_changes_is_a_range() -> None:
    line = cut("taper in legs: inside faces, 3 1/2 to 1 3/4")
    assert line.ranges == ((number(Fraction(7, 2)), number(Fraction(7, 4))),)


def test_rows_stand_at_distances_and_are_counted() -> None:
    line = cut("holes in box sides: inside, rows 37 from front and 38 from back, 12 at 32 from 250")
    assert line.places == (offset(37, "front"), offset(38, "back"))
    assert line.rows == (Row(12, number(32), number(250), None, NOWHERE),)
    assert line.count is None
    named = cut("holes in box sides: inside, 12 holes at 32 from 250 from top")
    assert named.rows == (Row(12, number(32), number(250), "top", NOWHERE),)
    ahead = cut("12 holes in box sides: inside, 5 dia, 32 apart")
    assert (ahead.rows, ahead.count) == ((Row(12, number(32), None, None, NOWHERE),), None)


@pytest.mark.parametrize(
    ("text", "count", "each"),
    [
        ("keys in aprons: 2 a corner", 2, "corner"),
        ("keys in aprons: 2 at each corner", 2, "corner"),
        ("keys in aprons: 2 at corners", 2, "corner"),
        ("chamfer on legs: each end", None, "end"),
        ("4 holes in top: inside", 4, None),
    ],
)
def test_counts_stand_before_or_with_what_they_are_at(
    text: str, count: int | None, each: str | None
) -> None:
    line = cut(text)
    assert (line.count, line.each) == (count, each)


def test_places_are_distances_sides_and_the_middle() -> None:
    assert cut("notch in top: 60 wide, at left").places == (none_from("left"),)
    assert cut("slot in top: top, centred").places == (none_from("middle"),)
    assert cut("slot in top: top, 30 from each end").places == (offset(30, "end", on_host=True),)


def test_a_cut_waits_for_a_glue_up_and_has_a_profile() -> None:
    stage = "1 front, flat\nglue up base: front\n"
    line = said(f"{stage}profile on front: top edge, cove, after gluing up base")
    assert isinstance(line, FeatureLine)
    assert (line.profile, line.after) == ("cove", StageName("base", NOWHERE))


def test_a_cut_may_be_in_a_part_that_is_called_as_a_side() -> None:
    line = cut("groove in top: top, 6 wide")
    assert (line.parts, line.surfaces) == ((part("top"),), (surface("top"),))


@pytest.mark.parametrize(
    ("words", "surfaces"),
    [
        ("bottom end, 3 wide", (surface("bottom", noun="end"),)),
        ("3 wide, ends", (surface(noun="end"),)),
        ("edges and ends, 3 wide", (surface(noun="edge"), surface(noun="end"))),
        ("all edges, 3 wide", (surface(noun="edge", every=True),)),
    ],
)
def test_ends_and_edges_of_a_cut_are_those_of_its_part_though_parts_are_called_so(
    words: str, surfaces: tuple[Surface, ...]
) -> None:
    read = said(f"chamfer on legs: {words}", "leg, end, edge, bottom end")
    assert isinstance(read, FeatureLine)
    assert read.surfaces == surfaces
    assert [each.amount for each in read.sizes] == [number(3)]


def test_a_cut_goes_to_the_end_though_parts_are_called_so() -> None:
    read = said("taper on legs: inside, 40 to 28, from 100 from top to the bottom end", "leg, end")
    assert isinstance(read, FeatureLine)
    assert read.extent is not None
    assert read.extent.end == none_from("bottom")


def test_parts_called_ends_are_still_cut_measured_and_measured_from() -> None:
    read = said("groove in ends: end.width wide, 10 from bottom of legs and ends", "leg, end")
    assert isinstance(read, FeatureLine)
    assert read.parts == (part("end"),)
    assert read.sizes[0].amount == PartSize("end", "width", NOWHERE)
    assert read.places[0].of == (part("leg"), part("end"))
