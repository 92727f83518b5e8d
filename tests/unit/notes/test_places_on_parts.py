"""Openings, faces of hosts, distances on hosts, lists of heights, gaps: what the spellings mean."""

import pytest
from tests.unit.notes.nowhere import NOWHERE, number, part, said, size

from dryfit.notes.tree import (
    Apart,
    At,
    From,
    Gap,
    Handed,
    Horns,
    Join,
    Lapping,
    LeftOut,
    Offset,
    OpeningLine,
    Operation,
    PartClause,
    PartSize,
    PartsLine,
    SetIn,
    SizeRange,
    Sizes,
    Spread,
    Sum,
    Up,
    ValueLine,
    WoodWords,
)

HOSTS = "post, long rail, stile, top"
BAY = "bay = opening between posts and long rails\n"


def clauses(text: str, count: int = 2) -> tuple[PartClause, ...]:
    parts = "".join(f"1 {name}, flat\n" for name in HOSTS.split(", "))
    line = said(f"{parts}{BAY}{count} bars, {text}")
    assert isinstance(line, PartsLine)
    return line.clauses


def on_face(face: str, host: str = "stile") -> Join:
    return Join("on face", (part(host),), None, NOWHERE, face=face)


def from_(
    amount: int, place: str, *others: int, of: str | None = None, on_host: bool = False
) -> From:
    offset = Offset(number(amount), place, NOWHERE, (part(of),) if of else (), on_host)
    return From(offset, NOWHERE, tuple(number(other) for other in others))


@pytest.mark.parametrize(
    "text",
    [
        "nook = opening between posts and long rails",
        "nook is the opening between the posts and the long rails",
        "Nook: the space between posts & long rails",
        "let nook be an opening between posts and long rails",
        "nook = space inside posts and long rails",
    ],
)
def test_an_opening_lies_between_parts(text: str) -> None:
    line = said(text, HOSTS)
    assert line == OpeningLine("nook", NOWHERE, (part("post"), part("long rail")), NOWHERE)


@pytest.mark.parametrize(
    ("text", "dimension"),
    [("bay.width", "width"), ("bay depth", "depth"), ("height of bay", "height")],
)
def test_an_opening_has_sizes_for_sums(text: str, dimension: str) -> None:
    line = said(f"1 post, flat\n1 long rail, flat\n{BAY}play = {text} - 2")
    assert isinstance(line, ValueLine)
    assert isinstance(line.amount, Operation)
    assert line.amount.left == PartSize("bay", dimension, NOWHERE)


def test_in_an_opening_gaps_go_round_and_between() -> None:
    in_bay = Join("in", (part("bay"),), None, NOWHERE)
    gaps: tuple[tuple[Sum, str | None], ...] = (
        (number(2), "up and down"),
        (number(1), "ends"),
    )
    for text in (
        "in bay, gap 2 up and down, 1 at ends",
        "within the bay, 2 gap up and down, 1 at ends",
    ):
        assert clauses(text) == (in_bay, Gap(gaps, NOWHERE))
    for text in ("3 between", "3 between them", "3 apart", "gap 3 between"):
        around = Gap(((number(2), None),), NOWHERE)
        assert clauses(f"in bay, gap 2 all round, {text}") == (
            in_bay,
            around,
            Apart(number(3), NOWHERE),
        )


@pytest.mark.parametrize(
    ("text", "face"),
    [
        ("on the inside of stiles", "inside"),
        ("on inner faces of the stiles", "inside"),
        ("against the outside of stiles", "outside"),
        ("at the back of stiles", "back"),
        ("behind stiles", "back"),
        ("in front of stiles", "front"),
        ("to the left side of stiles", "left"),
    ],
)
def test_a_part_lies_on_a_face(text: str, face: str) -> None:
    assert clauses(text) == (on_face(face),)


def test_top_and_underside_stay_onto_and_under() -> None:
    for text, preposition in [
        ("on top of stiles", "onto"),
        ("on the top of stiles", "onto"),
        ("on the underside of stiles", "under"),
        ("against stiles", "against"),
    ]:
        assert clauses(text) == (Join(preposition, (part("stile"),), None, NOWHERE),)


def test_at_the_back_alone_is_a_place() -> None:
    assert clauses("at the back", count=1) == (At(("back",), NOWHERE),)


@pytest.mark.parametrize(
    ("text", "clause"),
    [
        ("15 below the top", from_(15, "top", on_host=True)),
        ("15 below top of posts", from_(15, "top", of="post")),
        ("15 below posts", from_(15, "bottom", of="post", on_host=True)),
        ("20 above the long rails", from_(20, "top", of="long rail", on_host=True)),
        ("30 from left of bay", from_(30, "left", of="bay")),
        ("10 from front", from_(10, "front")),
        ("78, 262 and 446 above the bottom", from_(78, "bottom", 262, 446, on_host=True)),
        ("78, 262, 446 up from bottom", from_(78, "bottom", 262, 446)),
        ("10 from left, 50 and 90", from_(10, "left", 50, 90)),
    ],
)
def test_a_distance_has_a_side_and_may_be_a_list(text: str, clause: From) -> None:
    assert clauses(text) == (clause,)


@pytest.mark.parametrize("text", ["up 78, 262, 446", "up 78, 262 and 446", "up 78, up 262, up 446"])
def test_heights_are_a_list(text: str) -> None:
    assert clauses(text) == (Up((number(78), number(262), number(446)), NOWHERE),)
    assert clauses("80 above the floor") == (Up((number(80),), NOWHERE),)


def test_a_list_is_closed_by_its_and() -> None:
    heights = Up((number(40), number(220)), NOWHERE)
    assert clauses("up 40 and 220, 111 from front") == (heights, from_(111, "front"))
    places = from_(60, "front", 111)
    assert clauses("up 40, 60 and 111 from front") == (Up((number(40),), NOWHERE), places)


def test_set_in_says_how_far_at_which_side() -> None:
    amounts: tuple[tuple[Sum, str | None], ...] = (
        (number(30), "ends"),
        (number(20), "front"),
        (number(20), "back"),
    )
    for text in (
        "set in 30 at ends, 20 at front and back",
        "inset 30 at each end and 20 at the front and back",
        "30 from the ends",
    ):
        found = amounts if "20" in text else amounts[:1]
        assert clauses(text) == (SetIn(found, NOWHERE),)


def test_set_in_at_as_many_places_as_copies_says_where_they_are() -> None:
    places = (At(("left", "right"), NOWHERE), SetIn(((number(15), None),), NOWHERE))
    assert clauses("set in 15 at left and right") == places
    assert clauses("set in 15 at corners", count=4) == (At(("corners",), NOWHERE), places[1])
    by_side = SetIn(((number(15), "left"), (number(15), "right")), NOWHERE)
    assert clauses("set in 15 at left and right", count=1) == (by_side,)
    assert clauses("at front, set in 15 at left and right")[1] == by_side


@pytest.mark.parametrize(
    ("text", "ends"),
    [
        ("same gap at ends", "same"),
        ("the same gap at each end", "same"),
        ("no gaps at the ends", "no"),
        ("with half a gap at both ends", "half"),
    ],
)
def test_a_spread_says_what_is_left_at_its_ends(text: str, ends: str) -> None:
    spread = Spread("front to back", NOWHERE, ends)
    assert clauses(f"spread evenly front to back, {text}") == (spread,)


@pytest.mark.parametrize(
    ("text", "clause"),
    [
        ("lapping 20", Lapping(number(20), NOWHERE)),
        ("horns 20", Horns(number(20), NOWHERE)),
        ("horns of 20 at both ends", Horns(number(20), NOWHERE)),
        ("handed", Handed(NOWHERE)),
        ("as a pair", Handed(NOWHERE)),
        ("480 to 500 wide", SizeRange(number(480), number(500), "width", NOWHERE)),
        ("between 480 and 500 wide", SizeRange(number(480), number(500), "width", NOWHERE)),
        ("width 480 to 500", SizeRange(number(480), number(500), "width", NOWHERE)),
        ("at most 620 long", SizeRange(None, number(620), "length", NOWHERE)),
        ("no less than 20 thick", SizeRange(number(20), None, "thickness", NOWHERE)),
        ("bookmatched", WoodWords("bookmatched", (), NOWHERE)),
        ("live edges at front and back", WoodWords("waney", ("front", "back"), NOWHERE)),
        ("grain left to right", WoodWords("grain", ("across",), NOWHERE)),
        ("in sequence from one board", WoodWords("in sequence", (), NOWHERE)),
        ("cut from one board", WoodWords("one board", (), NOWHERE)),
        ("resawn", WoodWords("resawn", (), NOWHERE)),
        ("resawn from thick boards", WoodWords("resawn", (), NOWHERE)),
        ("sawn in two from thicker boards", WoodWords("resawn", (), NOWHERE)),
        ("from boards as they come", WoodWords("free widths", (), NOWHERE)),
        ("glued from boards as they come", WoodWords("free widths", (), NOWHERE)),
        ("glued from boards", WoodWords("boards", (), NOWHERE)),
        ("glued up from several staves", WoodWords("boards", (), NOWHERE)),
    ],
)
def test_what_else_a_parts_line_may_say(text: str, clause: PartClause) -> None:
    assert clauses(text) == (clause,)


def test_a_size_is_left_out_by_a_question_mark() -> None:
    left_out = LeftOut(NOWHERE)
    assert clauses("? x 274 x 18") == (Sizes((size(left_out), size(274), size(18)), NOWHERE),)
    for text in ("? long", "long ?", "length ?", "length = ?", "length to suit"):
        assert clauses(text) == (Sizes((size(left_out, "length"),), NOWHERE),)


def test_the_edge_that_enters_is_named() -> None:
    joined = clauses("its back edge into long rails, housing 6")
    assert len(joined) == 1
    assert isinstance(joined[0], Join)
    assert (joined[0].edge, joined[0].spec is not None) == ("back edge", True)


def test_a_part_called_as_a_place_stays_a_part() -> None:
    assert clauses("up top.thickness") == (Up((PartSize("top", "thickness", NOWHERE),), NOWHERE),)
    assert clauses("15 below the top", count=1) == (from_(15, "top", on_host=True),)
    assert clauses("onto top") == (Join("onto", (part("top"),), None, NOWHERE),)


def test_a_name_may_hold_a_word_of_the_language_behind_a_hyphen() -> None:
    line = said("2 built-in shelves, flat")
    assert isinstance(line, PartsLine)
    assert line.name == "built in shelf"
