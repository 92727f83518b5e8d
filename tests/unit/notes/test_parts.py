"""The phrases of a part's line, and how they are put together."""

import pytest
from tests.unit.notes.nowhere import NOWHERE, number, part, said, size

from dryfit.notes.tree import (
    At,
    CutAfter,
    Down,
    Flush,
    From,
    Gap,
    GluedFrom,
    Join,
    JointSpec,
    Lie,
    Offset,
    OfTimber,
    PartClause,
    PartsLine,
    Run,
    SetBack,
    SetIn,
    Sizes,
    Spread,
    StageName,
    Up,
    ValueName,
)

HOSTS = "leg, long rail, base, apron"


def clauses(text: str) -> tuple[PartClause, ...]:
    line = said(f"2 bars, {text}", HOSTS)
    assert isinstance(line, PartsLine)
    return line.clauses


def tenon(*sizes: tuple[int, str | None], place: Offset | None = None) -> JointSpec:
    words = tuple(size(amount, dimension) for amount, dimension in sizes)
    return JointSpec("tenon", None, words, place, NOWHERE)


def into_legs(spec: JointSpec | None) -> Join:
    return Join("into", (part("leg"),), spec, NOWHERE)


@pytest.mark.parametrize(
    "text",
    ["4 legs", "4 x legs", "4x legs", "4xlegs", "4 × legs", "4 off legs", "four legs", "4 Legs"],
)
def test_a_count_has_many_spellings(text: str) -> None:
    line = said(f"{text}, upright")
    assert isinstance(line, PartsLine)
    assert (line.count, line.name) == (4, "leg")
    assert line.written.lower() == "legs"
    assert line.clauses == (Run("upright", NOWHERE),)


def test_a_name_ends_at_a_comma_a_digit_or_a_word_that_goes_on() -> None:
    for text, name in [
        ("2 top end rails, flat", "top end rail"),
        ("2 bars 40 x 20", "bar"),
        ("2 bars upright", "bar"),
        ("2 bars across flat", "bar"),
        ("2 glue blocks, flat", "glue block"),
        ("2 corner glue blocks, flat", "corner glue block"),
        ("2 long flat bars, upright", "long flat bar"),
        ("1 top", "top"),
        ("2 ends, upright", "end"),
        ("2 bars of white oak", "bar"),
        ("2 xylophone bars", "xylophone bar"),
    ]:
        line = said(text)
        assert isinstance(line, PartsLine)
        assert line.name == name, text


@pytest.mark.parametrize(
    ("text", "clause"),
    [
        ("upright", Run("upright", NOWHERE)),
        ("standing", Run("upright", NOWHERE)),
        ("front to back", Run("front to back", NOWHERE)),
        ("on edge", Lie("on edge", NOWHERE)),
        ("facing the side", Lie("facing side", NOWHERE)),
        ("45 x 30", Sizes((size(45), size(30)), NOWHERE)),
        ("45×30", Sizes((size(45), size(30)), NOWHERE)),
        ("45x30", Sizes((size(45), size(30)), NOWHERE)),
        ("45 by 30", Sizes((size(45), size(30)), NOWHERE)),
        ("22 thick", Sizes((size(22, "thickness"),), NOWHERE)),
        ("length 300", Sizes((size(300, "length"),), NOWHERE)),
        ("width = 300", Sizes((size(300, "width"),), NOWHERE)),
        ("at corners", At(("corners",), NOWHERE)),
        ("at the corners", At(("corners",), NOWHERE)),
        ("at left and right", At(("left", "right"), NOWHERE)),
        ("at back", At(("back",), NOWHERE)),
        ("set in 15", SetIn(((number(15), None),), NOWHERE)),
        ("set back 6", SetBack(number(6), NOWHERE)),
        ("up 80", Up((number(80),), NOWHERE)),
        ("down 20", Down((number(20),), NOWHERE)),
        ("120 from left", From(Offset(number(120), "left", NOWHERE), NOWHERE)),
        ("flush top", Flush("top", (), NOWHERE)),
        ("flush with top", Flush("top", (), NOWHERE)),
        ("flush with the top of legs", Flush("top", (part("leg"),), NOWHERE)),
        ("spread", Spread(None, NOWHERE)),
        ("spread up and down", Spread("up and down", NOWHERE)),
        ("gap 8", Gap(((number(8), None),), NOWHERE)),
        ("glued from 4", GluedFrom(4, NOWHERE)),
        ("glued up from 4 staves", GluedFrom(4, NOWHERE)),
        ("of birch ply", OfTimber("birch ply", NOWHERE)),
        ("cut after glue up base", CutAfter(StageName("base", NOWHERE), NOWHERE)),
        ("between legs", Join("between", (part("leg"),), None, NOWHERE)),
    ],
)
def test_phrase(text: str, clause: PartClause) -> None:
    assert clauses(text) == (clause,)


def test_set_in_takes_a_second_direction() -> None:
    amounts = ((number(30), "across"), (number(10), "front to back"))
    assert clauses("set in 30 across, 10 front to back") == (SetIn(amounts, NOWHERE),)
    assert clauses("set in 30, across") == (
        SetIn(((number(30), None),), NOWHERE),
        Run("across", NOWHERE),
    )


@pytest.mark.parametrize(
    "text",
    [
        "tenon 20 long 6 thick into legs",
        "tenon 20 long, 6 thick, into legs",
        "tenon 20 long 6 thick, into legs",
        "into legs tenon 20 long 6 thick",
        "into legs, tenon 20 long 6 thick",
        "into legs: tenon 20 long 6 thick",
    ],
)
def test_a_joint_finds_its_preposition_in_both_orders(text: str) -> None:
    assert clauses(text) == (into_legs(tenon((20, "length"), (6, "thickness"))),)


def test_sizes_behind_a_joint_are_the_joint_s_when_the_part_has_them() -> None:
    assert clauses("55 x 20, into legs, tenon 20 long, 6 thick")[1:] == (
        into_legs(tenon((20, "length"), (6, "thickness"))),
    )
    assert clauses("into legs, tenon 20, 22 thick") == (
        into_legs(tenon((20, None))),
        Sizes((size(22, "thickness"),), NOWHERE),
    )


def test_a_tenon_s_place_is_its_own_and_a_housing_s_is_the_part_s() -> None:
    place = Offset(number(5), "bottom", NOWHERE)
    sizes = ((20, "length"), (8, "thickness"), (40, "width"))
    assert clauses("tenon 20 long 8 thick 40 wide, 5 from bottom, into legs") == (
        into_legs(tenon(*sizes, place=place)),
    )
    housing = JointSpec("housing", None, (size(6),), None, NOWHERE)
    assert clauses("between long rails, housing 6, 160 from left, up 170") == (
        Join("between", (part("long rail"),), housing, NOWHERE),
        From(Offset(number(160), "left", NOWHERE), NOWHERE),
        Up((number(170),), NOWHERE),
    )


def test_the_nearest_preposition_gets_the_joint() -> None:
    into, onto = clauses("into legs, tenon 20, onto aprons")
    assert isinstance(into, Join)
    assert isinstance(onto, Join)
    assert (into.spec, onto.spec) == (tenon((20, None)), None)
    into, onto = clauses("tenon 20, into legs, onto aprons, 4 screws")
    assert isinstance(into, Join)
    assert isinstance(onto, Join)
    assert into.spec == tenon((20, None))
    assert onto.spec == JointSpec("screws", 4, (), None, NOWHERE)


@pytest.mark.parametrize(
    ("text", "kinds"),
    [
        ("behind legs: housing 6, in front of aprons", ["housing", None]),
        ("behind legs, housing 6, in front of aprons", ["housing", None]),
        ("behind legs with housing 6, in front of aprons", ["housing", None]),
        ("behind legs housing 6, in front of aprons", ["housing", None]),
        ("in front of legs, housing 6 behind aprons", [None, "housing"]),
        ("between legs: housing 6, under aprons: glue", ["housing", "glue"]),
        ("under legs: glue, between aprons: housing 6", ["glue", "housing"]),
        ("between legs, housing 6, under aprons", ["housing", None]),
        ("between legs: screws, under aprons", ["screws", None]),
        ("between legs, screws, under aprons", [None, "screws"]),
        ("onto legs: screws, between aprons", ["screws", None]),
    ],
)
def test_the_sign_between_ties_a_joint_to_its_preposition(
    text: str, kinds: list[str | None]
) -> None:
    joins = [clause for clause in clauses(text) if isinstance(clause, Join)]
    assert [join.spec.kind if join.spec else None for join in joins] == kinds


def test_screws_hold_what_lies_on_something_not_what_is_between() -> None:
    onto, between = clauses("onto aprons, between legs, screws")
    assert isinstance(onto, Join)
    assert isinstance(between, Join)
    assert onto.spec == JointSpec("screws", None, (), None, NOWHERE)
    assert between.spec is None


@pytest.mark.parametrize(
    ("word", "kind"),
    [
        ("dado 6", "housing"),
        ("dadoed 6", "housing"),
        ("housed 6", "housing"),
        ("trench 6", "housing"),
        ("mortise and tenon 20", "tenon"),
        ("halving", "half lap"),
        ("edge glue", "glue"),
    ],
)
def test_trade_words_for_one_joint(word: str, kind: str) -> None:
    (join,) = clauses(f"into legs, {word}")
    assert isinstance(join, Join)
    assert join.spec is not None
    assert join.spec.kind == kind


def test_commas_are_optional() -> None:
    line = said("2 bars across on edge 55 x 20 tenon 20 long 6 thick into legs set back 2", HOSTS)
    assert isinstance(line, PartsLine)
    assert [type(clause) for clause in line.clauses] == [Run, Lie, Sizes, Join, SetBack]


def test_a_value_may_be_named_by_words_of_the_language() -> None:
    line = said("tenon length = 30\n2 bars, tenon tenon length into legs", HOSTS)
    assert isinstance(line, PartsLine)
    spec = JointSpec("tenon", None, (size(ValueName("tenon length", NOWHERE)),), None, NOWHERE)
    assert line.clauses == (into_legs(spec),)
