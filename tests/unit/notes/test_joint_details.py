"""What is said of joints besides their sizes, and where glue goes."""

import pytest
from tests.unit.notes.nowhere import NOWHERE, number, part, said, size

from dryfit.notes.tree import (
    GlueWords,
    Join,
    JointDetail,
    JointLine,
    JointSpec,
    Offset,
    PartsLine,
    Reference,
    SizeWord,
    StageName,
)

PARTS = "rail, leg, stile, slat"
STAGE = "1 rail, flat\n1 leg, flat\n1 stile, flat\n1 slat, flat\nglue up face: stile, slat\n"


def spec_of(text: str) -> JointSpec:
    line = said(f"{STAGE}rails into legs: {text}")
    assert isinstance(line, JointLine)
    assert line.join.spec is not None
    return line.join.spec


def detail(
    kind: str,
    *sizes: SizeWord,
    count: int | None = None,
    place: str | None = None,
    of: Reference | None = None,
) -> JointDetail:
    return JointDetail(kind, count, sizes, place, of, NOWHERE)


SHOULDERS = (
    detail("shoulder", size(5), place="below"),
    detail("shoulder", size(65), place="above"),
)


@pytest.mark.parametrize(
    ("text", "details"),
    [
        ("haunched", (detail("haunch"),)),
        ("haunch 10 long 6 deep", (detail("haunch", size(10, "length"), size(6, "depth")),)),
        ("through", (detail("through"),)),
        ("through and wedged", (detail("through"), detail("wedges"))),
        ("wedged 2", (detail("wedges", count=2),)),
        ("2 wedges", (detail("wedges", count=2),)),
        ("pegged", (detail("pegs"),)),
        ("pegs 9", (detail("pegs", size(9)),)),
        ("2 pegs 6 dia", (detail("pegs", size(6, "diameter"), count=2),)),
        ("draw-bored", (detail("pegs", place="drawbore"),)),
        ("proud 4", (detail("proud", size(4)),)),
        ("4 proud", (detail("proud", size(4)),)),
        (
            "shoulders 5 below 65 above",
            (
                detail("shoulder", size(5), place="below"),
                detail("shoulder", size(65), place="above"),
            ),
        ),
        (
            "shoulder 5 below and 65 above",
            (
                detail("shoulder", size(5), place="below"),
                detail("shoulder", size(65), place="above"),
            ),
        ),
        ("offset 2 to the front", (detail("offset", size(2), place="front"),)),
        (
            "keys 2 a corner, 3 thick, 25 deep",
            (detail("keys", size(3, "thickness"), size(25, "depth"), count=2, place="corner"),),
        ),
        ("rails show", (detail("shows", of=part("rail")),)),
    ],
)
def test_details_stand_behind_the_joint(text: str, details: tuple[JointDetail, ...]) -> None:
    spec = spec_of(f"tenon 20 long 8 thick, {text}")
    assert spec.details == details
    assert spec.sizes == (size(20, "length"), size(8, "thickness"))


@pytest.mark.parametrize(
    ("text", "count", "kinds"),
    [
        ("through tenon 20", None, ["through"]),
        ("haunched tenon 20", None, ["haunch"]),
        ("wedged through tenon 20", None, ["through", "wedges"]),
        ("drawbored tenon 20", None, ["pegs"]),
        ("2 tenons 20", 2, []),
        ("twin tenons 20", 2, []),
        ("tenon 20", None, []),
    ],
)
def test_adjectives_of_a_tenon_are_details(text: str, count: int | None, kinds: list[str]) -> None:
    spec = spec_of(text)
    assert (spec.kind, spec.count, spec.sizes) == ("tenon", count, (size(20),))
    assert [each.kind for each in spec.details] == kinds


@pytest.mark.parametrize("word", ["bridle", "bridle joint", "open mortise and tenon"])
def test_a_bridle_has_several_names(word: str) -> None:
    assert spec_of(f"{word} 10 thick").kind == "bridle"


def test_details_on_a_parts_own_line_go_to_its_joint() -> None:
    line = said("2 bars, 55 x 20, tenon 20 into legs, 5 from bottom, haunched, pegs 9", PARTS)
    assert isinstance(line, PartsLine)
    joined = next(clause for clause in line.clauses if isinstance(clause, Join))
    assert joined.spec is not None
    assert joined.spec.details == (detail("haunch"), detail("pegs", size(9)))
    first = said("2 bars, haunched, tenon 20 into legs", PARTS)
    assert isinstance(first, PartsLine)
    assert isinstance(first.clauses[0], Join)
    assert first.clauses[0].spec is not None
    assert first.clauses[0].spec.details == (detail("haunch"),)


def test_a_tenons_place_is_from_an_edge() -> None:
    spec = spec_of("tenon 18 long 8 thick 40 wide, 5 from bottom")
    assert spec.place == Offset(number(5), "bottom", NOWHERE)


def test_what_shows_at_a_crossing() -> None:
    half_lap = JointSpec(
        "half lap", None, (), None, NOWHERE, details=(detail("shows", of=part("stile")),)
    )
    line = said("rails crossing stiles, stiles show", PARTS)
    assert isinstance(line, JointLine)
    assert line.join.spec == half_lap
    own = said("2 bars, crossing stiles, stiles run through", PARTS)
    assert isinstance(own, PartsLine)
    assert own.clauses == (Join("crossing", (part("stile"),), half_lap, NOWHERE),)


def test_a_joint_may_wait_for_a_glue_up() -> None:
    assert spec_of("tenon 20, after glue up face").after == StageName("face", NOWHERE)


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("glue the middle 60", GlueWords("middle", number(60), None, NOWHERE)),
        ("glued in the centre 60", GlueWords("middle", number(60), None, NOWHERE)),
        ("glue front 75", GlueWords("place", number(75), "front", NOWHERE)),
        ("glue the front edge", GlueWords("edge", None, "front", NOWHERE)),
        ("glued along the front edge", GlueWords("edge", None, "front", NOWHERE)),
        ("glue one edge", GlueWords("one edge", None, None, NOWHERE)),
        ("dry", GlueWords("dry", None, None, NOWHERE)),
        ("not glued", GlueWords("dry", None, None, NOWHERE)),
        ("unglued", GlueWords("dry", None, None, NOWHERE)),
        ("pinned at the middle", GlueWords("pinned", None, "middle", NOWHERE)),
        ("knock-down", GlueWords("knock-down", None, None, NOWHERE)),
        ("loose", GlueWords("knock-down", None, None, NOWHERE)),
        ("bolted", GlueWords("bolted", None, None, NOWHERE)),
    ],
)
def test_where_glue_goes(text: str, words: GlueWords) -> None:
    line = said(f"slats onto rails: {text}", PARTS)
    assert isinstance(line, JointLine)
    assert (line.join.spec, line.join.glue) == (None, (words,))
    screwed = said(f"slats onto rails: screws, {text}", PARTS)
    assert isinstance(screwed, JointLine)
    assert screwed.join.spec is not None
    assert (screwed.join.spec.glue, screwed.join.glue) == ((words,), ())
    own = said(f"5 laths, onto rails, {text}", PARTS)
    assert isinstance(own, PartsLine)
    assert isinstance(own.clauses[0], Join)
    assert own.clauses[0].glue == (words,)
