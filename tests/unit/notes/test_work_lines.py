"""Bought things, finishes by part and surface, glue-ups, limits, and what was done at the bench."""

import pytest
from tests.unit.notes.nowhere import NOWHERE, number, part, said, size

from dryfit.notes.tree import (
    BareLine,
    CoatWords,
    DeedDone,
    DoneLine,
    FinishLine,
    For,
    GlueItem,
    GlueLine,
    LimitLine,
    MeasuredLine,
    OrderWhen,
    PartsLine,
    PlaceLine,
    Reference,
    Sizes,
    SpoiledLine,
    Sum,
    Surface,
)

PARTS = "leg, rail, seat, box"
VALUE = "ply = 18\n"
BAY = "bay = opening between legs and rails\n"
STAGE = "glue up base: legs, rails\n"


def parts(text: str) -> str:
    return "".join(f"1 {name}, flat\n" for name in PARTS.split(", ")) + VALUE + BAY + STAGE + text


def coats(product: str, count: int | None = None, apart: Sum | None = None) -> CoatWords:
    return CoatWords(product, count, apart, NOWHERE)


@pytest.mark.parametrize(
    "text",
    [
        "bought 4 casters, 108 high, for legs",
        "bought four casters 108 high for legs",
        "Bought: 4 x casters, 108 high, for the legs",
        "buy 4 casters, 108 high, for legs",
    ],
)
def test_a_bought_thing_has_a_count_and_phrases(text: str) -> None:
    line = said(text, PARTS)
    assert isinstance(line, PartsLine)
    assert (line.count, line.name, line.bought) == (4, "caster", True)
    assert line.clauses == (Sizes((size(108, "height"),), NOWHERE), For((part("leg"),), NOWHERE))


def test_a_bought_thing_needs_no_count_and_says_when_it_is_ordered() -> None:
    line = said("bought mirror, 4 thick, order after measured", PARTS)
    assert isinstance(line, PartsLine)
    assert (line.count, line.name) == (1, "mirror")
    assert line.clauses[1] == OrderWhen("after measured", NOWHERE)


@pytest.mark.parametrize(
    ("text", "subjects", "surfaces", "products"),
    [
        ("finish wax, 2 coats", (), (), (coats("wax", 2),)),
        ("finish everything else with wax", (), (), (coats("wax"),)),
        (
            "finish legs and rails with primer 1 coat then milk paint 2 coats",
            (part("leg"), part("rail")),
            (),
            (coats("primer", 1), coats("milk paint", 2)),
        ),
        ("finish legs, rails with wax", (part("leg"), part("rail")), (), (coats("wax"),)),
        ("finish front legs with wax", (part("leg", "front"),), (), (coats("wax"),)),
        (
            "finish the inside of boxes with shellac, two coats",
            (part("box"),),
            (Surface(("inside",), None, every=False, span=NOWHERE),),
            (coats("shellac", 2),),
        ),
        (
            "finish inside and bottom edges of boxes with shellac",
            (part("box"),),
            (
                Surface(("inside",), None, every=False, span=NOWHERE),
                Surface(("bottom",), "edge", every=False, span=NOWHERE),
            ),
            (coats("shellac"),),
        ),
        (
            "finish all faces of seat with oil",
            (part("seat"),),
            (Surface((), "face", every=True, span=NOWHERE),),
            (coats("oil"),),
        ),
    ],
)
def test_a_finish_is_for_parts_and_surfaces(
    text: str,
    subjects: tuple[Reference, ...],
    surfaces: tuple[Surface, ...],
    products: tuple[CoatWords, ...],
) -> None:
    assert said(text, PARTS) == FinishLine(subjects, surfaces, products, NOWHERE)


@pytest.mark.parametrize(
    ("text", "subject", "surfaces"),
    [
        ("finish left end with oil", part("end", "left"), ()),
        ("finish ends with oil", part("end"), ()),
        ("finish ends of legs with oil", part("leg"), (Surface((), "end", False, NOWHERE),)),
    ],
)
def test_what_is_called_end_is_finished_and_so_are_the_ends_of_others(
    text: str, subject: Reference, surfaces: tuple[Surface, ...]
) -> None:
    assert said(text, "leg, end") == FinishLine((subject,), surfaces, (coats("oil"),), NOWHERE)


@pytest.mark.parametrize(
    ("text", "verb", "surfaces"),
    [
        ("no finish on boxes", "no", ()),
        ("no finish: boxes", "no", ()),
        (
            "no finish on the inside of boxes",
            "no",
            (Surface(("inside",), None, every=False, span=NOWHERE),),
        ),
        ("mask boxes", "mask", ()),
        ("mask box seats", "mask", (Surface((), "seat", every=False, span=NOWHERE),)),
    ],
)
def test_what_stays_bare(text: str, verb: str, surfaces: tuple[Surface, ...]) -> None:
    assert said(text, "leg, rail, box") == BareLine(verb, (part("box"),), surfaces, NOWHERE)


@pytest.mark.parametrize(
    ("text", "glue", "pressed", "people"),
    [
        ("glue up base: legs, rails, with polyurethane glue", "polyurethane", None, None),
        ("glue up base with epoxy: legs, rails", "epoxy", None, None),
        ("glue up base: legs, rails, weights, two people", None, "weights", 2),
        ("glue up base: legs, rails, pressed by weights", None, "weights", None),
        ("glue up base: legs, rails, tape, 3 people", None, "tape", 3),
        ("glue up base: legs, rails, with clamps", None, None, None),
    ],
)
def test_a_glue_up_says_what_it_takes(
    text: str, glue: str | None, pressed: str | None, people: int | None
) -> None:
    line = said(text, PARTS)
    assert isinstance(line, GlueLine)
    assert [item.reference.name for item in line.items] == ["leg", "rail"]
    assert (line.glue, line.pressed, line.people) == (glue, pressed, people)


def test_where_the_piece_stands() -> None:
    for text in ("outdoors", "place outdoors", "for outdoors"):
        assert said(text) == PlaceLine("outdoors", NOWHERE)


@pytest.mark.parametrize(
    ("text", "subject", "dimension", "least", "most", "why"),
    [
        ("at most 620 high, the window sill", None, "height", None, 620, "the window sill"),
        ("no more than 620 high", None, "height", None, 620, None),
        ("at least 500 wide, two crates", None, "width", 500, None, "two crates"),
        ("between 500 and 520 high, the seat", None, "height", 500, 520, "the seat"),
        ("overall at most 620 high", None, "height", None, 620, None),
        ("seat top at most 460", part("seat"), "top", None, 460, None),
        ("seat top between 440 and 460", part("seat"), "top", 440, 460, None),
        ("front legs at most 800 long", part("leg", "front"), "length", None, 800, None),
        ("bay at least 600 wide, the crates", part("bay"), "width", 600, None, "the crates"),
        ("bay width at least 600", part("bay"), "width", 600, None, None),
        ("bay.width at least 600", part("bay"), "width", 600, None, None),
        ("width of bay at least 600", part("bay"), "width", 600, None, None),
    ],
)
def test_limits(
    text: str,
    subject: Reference | None,
    dimension: str,
    least: int | None,
    most: int | None,
    why: str | None,
) -> None:
    bounds = [None if bound is None else number(bound) for bound in (least, most)]
    expected = LimitLine(subject, dimension, bounds[0], bounds[1], why, NOWHERE)
    assert said(parts(text)) == expected


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("measured leg.thickness = 29", {"part": part("leg"), "dimension": "thickness"}),
        ("measured leg thickness 29", {"part": part("leg"), "dimension": "thickness"}),
        ("measured leg's thickness: 29", {"part": part("leg"), "dimension": "thickness"}),
        ("measured left leg width = 29", {"part": part("leg", "left"), "dimension": "width"}),
        ("measured bay height = 29", {"part": part("bay"), "dimension": "height"}),
        ("measured ply = 29", {"value": "ply"}),
        ("measured birch ply 30 = 29", {"timber": "birch ply", "nominal": number(30)}),
        ("measured 30 birch ply = 29", {"timber": "birch ply", "nominal": number(30)}),
        ("measured base length = 29", {"phrase": "base length"}),
        ("measured base length 29", {"phrase": "base length"}),
    ],
)
def test_what_was_measured(text: str, expected: dict[str, object]) -> None:
    line = said(parts(text))
    assert isinstance(line, MeasuredLine)
    names = ("part", "dimension", "value", "timber", "nominal", "phrase")
    found = {name: getattr(line, name) for name in names if getattr(line, name) is not None}
    assert found == expected
    assert line.amounts == (number(29),)


def test_several_measurements_of_one_thing() -> None:
    line = said(parts("measured bay width = 624, 625 and 626"))
    assert isinstance(line, MeasuredLine)
    assert line.amounts == (number(624), number(625), number(626))


@pytest.mark.parametrize(
    ("text", "deeds", "moment"),
    [
        ("done: leg / end lap, rail / rip", [(None, "leg / end lap"), (None, "rail / rip")], None),
        ("done leg/end lap", [(None, "leg / end lap")], None),
        ("done: 3 of leg / end lap", [(3, "leg / end lap")], None),
        (
            "done: base 1 / glue up, on 2026-12-05 at 14:10",
            [(None, "base 1 / glue up")],
            ("2026-12-05", "14:10"),
        ),
        ("done: base / glue up on 2026-12-05", [(None, "base / glue up")], ("2026-12-05", None)),
    ],
)
def test_what_is_done(
    text: str, deeds: list[tuple[int | None, str]], moment: tuple[str, str | None] | None
) -> None:
    expected = tuple(DeedDone(count, operation, NOWHERE) for count, operation in deeds)
    assert said(text) == DoneLine(expected, moment, NOWHERE)


def test_what_is_spoiled() -> None:
    items = (GlueItem(1, part("rail"), NOWHERE), GlueItem(2, part("leg"), NOWHERE))
    for text in ("spoiled: 1 rail, 2 legs", "spoilt one rail and two legs"):
        assert said(text, PARTS) == SpoiledLine(items, NOWHERE)
