"""Blanks that keep a raw edge: where they lie in a slab, by TRADE A2.6, and what the judge says."""

from dataclasses import replace
from fractions import Fraction

import pytest
from tests.unit.rehearsal.played import played
from tests.unit.stock.playing import face, kerfs, parts_of
from tests.unit.stock.playing import played as replayed

from dryfit.diagnostics import Source
from dryfit.rehearsal.fault import Reason
from dryfit.stock.laid_out import SPARE, LaidOut
from dryfit.stock.laying.lay import lay_out_stock
from dryfit.stock.telling.in_words import bought_in_words
from dryfit.workshop import check

SEAT = """piece Slab seat
units mm
overall 900 wide, {deep} deep, 40 high
timber elm
1 seat, flat, 40 thick, waney at {edges}
{have}
finish oil, 2 coats
"""
SLAB = "have 1 slab of elm, 1100 x 460 to 420 x 52, rough, waney both edges"
SHELVES = """piece Shelves
units mm
overall 800 wide, 190 deep, 900 high
timber elm
2 sides, upright, 180 x 22, at left and right
3 shelves, across, flat, 190 x 26, housing 8 into sides, up 60 and 400 and 800, waney at front
have 1 slab of elm, 2600 x 460 to 440 x 40, rough, waney both edges
have 2 boards of elm, 1400 x 200 x 32, rough
glue up case: sides, shelves, cure 1 h
finish oil, 2 coats
"""


def laid(text: str) -> LaidOut:
    """The wood of the notes laid out."""
    checked = check(Source("notes.dryfit", text), None, {})
    assert checked.model is not None, checked.findings
    assert checked.shop is not None
    _, layout, _ = lay_out_stock(checked.model, checked.shop)
    assert layout is not None
    return layout


def seat(deep: int, edges: str = "front", have: str = SLAB) -> LaidOut:
    """One seat laid out."""
    return laid(SEAT.format(deep=deep, edges=edges, have=have))


def test_one_waney_edge_lies_along_the_slab() -> None:
    (layout,) = seat(300).layouts
    (place,) = layout.placed
    # 25 off the raw end; 900 and twice 60 of snipe; 3 for the bark and 3 to joint (A2.6).
    assert [*map(float, (*place.along, *place.across))] == [25, 1045, 0, 306]
    assert [(cut.saw, float(cut.at)) for cut in layout.cuts] == [
        ("crosscut", 22),
        ("crosscut", 1020),
        ("rip", 306),
    ]


def test_two_waney_edges_are_the_slab() -> None:
    # Over its 925 from 25 on the slab is 459 to 425.5 wide, and 6 of that are bark.
    layouts = seat(419, "front and back").layouts
    (place,) = layouts[0].placed
    assert [*map(float, place.across)] == [0, 460]
    assert all(cut.saw == "crosscut" for cut in layouts[0].cuts)
    # Cut short, its 900 end where the slab is still 426.4 wide: that there is none is not proved.
    assert seat(420, "front and back").verdict == "not found"
    short = seat(421, "front and back")
    assert short.verdict == "not enough"
    assert [one.part for one in short.missing] == ["seat"]
    # A slab much wider than the seat makes another seat than is wanted.
    assert seat(350, "front and back").verdict == "not enough"


@pytest.mark.parametrize(
    ("deep", "edges", "slab", "begins"),
    [
        # What is split ends just behind the raw end, which is 25 long (A5.1).
        (300, "front", "1300 x 460 x 52, rough, waney one edge, avoid 0 to 27", 27),
        # The slab comes to 300 + 6 at 26 / 180 of its 2600: at 375.6.
        (300, "front", "2600 x 280 to 460 x 52, rough, waney one edge", 376),
        # It comes down to 350 + 6 + 60 at 44 / 160 of its 2800: at 770.
        (350, "front and back", "2800 x 460 to 300 x 52, rough, waney both edges", 770),
    ],
)
def test_a_blank_lies_further_on_where_it_cannot_at_the_end(
    deep: int, edges: str, slab: str, begins: int
) -> None:
    found = seat(deep, edges, f"have 1 slab of elm, {slab}")
    assert found.verdict == "enough"
    assert found.layouts[0].placed[0].along[0] == begins


@pytest.mark.parametrize(("long", "verdict"), [(960, "not found"), (940, "not enough")])
def test_not_enough_is_proved_of_a_blank_cut_short(long: int, verdict: str) -> None:
    # 900 and no more between two raw ends of 25 each.
    have = f"have 1 slab of elm, {long} x 460 x 52, rough, waney one edge"
    assert seat(300, have=have).verdict == verdict


def test_a_blank_is_cut_short_where_the_others_took_the_long_slab() -> None:
    # 895 with the planer's snipe, 800 without (A5.2): the short slab is clear for 850 - 50.
    other = "have 1 slab of elm, {} x 316 x 52, rough, waney one edge\n"
    slabs = other.format(850) + other.format(2115)
    text = SHELVES.replace(
        "have 1 slab of elm, 2600 x 460 to 440 x 40, rough, waney both edges\n", slabs
    )
    found = laid(text)
    assert found.verdict == "enough"
    long = {
        one.blank.length
        for each in found.layouts
        for one in each.placed
        if one.blank.part == "shelf"
    }
    assert long == {895, 800}
    assert found.way.endswith("instead (shelf)")
    assert played(text).faults() == ()


def test_each_edge_of_a_slab_serves() -> None:
    found = laid(SHELVES)
    assert found.verdict == "enough"
    layout = next(one for one in found.layouts if one.board.label == "A")
    here = [one for one in layout.placed if one.blank.part == "shelf"]
    assert [one.across[0] == 0 for one in here] == [True, False, True]
    # From 25 to 920 the slab narrows from 459.8 to 452.9: 196 of that are the far blank.
    assert [round(float(at), 1) for at in here[1].across] == [256.9, 460]
    areas = {(one.along, one.across) for one in parts_of(layout)}
    assert set(replayed(layout)) == areas
    long, wide, _ = layout.board.sizes
    assert sum(map(face, parts_of(layout)), kerfs(layout)) == long * wide


@pytest.mark.parametrize(
    ("have", "code"),
    [
        ("have 1 board of elm, 1100 x 460 x 52, rough", "no-waney-edge"),
        ("have 1 slab of elm, 1100 x 460 x 52, rough, waney one edge", None),
    ],
)
def test_a_slab_without_such_an_edge_is_told(have: str, code: str | None) -> None:
    text = SEAT.format(deep=300, edges="front", have=have)
    found = [each.code for each in check(Source("notes.dryfit", text), None, {}).findings]
    assert found == ([code] if code else [])


def test_a_slab_that_is_to_be_bought_holds_the_blank() -> None:
    short = seat(300, have="have 1 slab of elm, 400 x 200 x 52, rough, waney one edge")
    (buy,) = short.buy
    # 1020 and two raw ends of 25; 306 and the 3 by which a rough board counts narrower (A2.6).
    assert (buy.count, buy.line.kind, buy.line.waney) == (1, "slab", 1)
    assert buy.line.sizes[:2] == (Fraction(1100), Fraction(310))
    long, wide, thick = (size for size in buy.line.sizes if size is not None)
    have = f"have 1 slab of elm, {long} x {wide} x {thick}, rough, waney one edge"
    assert seat(300, have=have).verdict == "enough"
    assert "".join(map(str, bought_in_words(buy))).endswith(", one waney edge")
    # Slabs that are alike are counted.
    assert [one.count for one in laid(SHELVES.replace("2600 x", "400 x")).buy] == [3]


def test_what_has_no_edge_is_told_where_it_stands_and_a_spare_as_a_spare() -> None:
    text = SEAT.format(deep=300, edges="front, 1 spare", have=SLAB)
    (lost,) = laid(text).missing
    assert lost.why.startswith(SPARE)
    assert lost.span is not None
    assert text.splitlines()[lost.span.line - 1].startswith("1 seat")


def test_the_first_to_buy_is_of_the_board_that_is_cut_closest() -> None:
    assert (found := seat(300).first_to_buy) is not None
    assert (found.blank.part, found.board.line.kind) == ("seat", "slab")


@pytest.mark.parametrize("wide", [306, 308, 309])
def test_what_is_less_than_a_saw_cut_beside_a_blank_stays_on_it(wide: int) -> None:
    # 300 and 6 (A2.6); the cut takes 3.
    slab = f"have 1 slab of elm, 1100 x {wide} x 52, rough, waney one edge"
    assert played(SEAT.format(deep=300, edges="front", have=slab)).faults() == ()


@pytest.mark.parametrize(
    "slabs",
    [
        # Between two blanks of 196 with a cut of 3 are 0.2 left at the narrow end.
        "have 2 slabs of elm, 1674 x 395 to 425 x 34, rough, waney both edges\n",
        # 196 wide at its near end, but narrower further on.
        (
            "have 1 slab of elm, 1906 x 421 x 34, rough, waney one edge\n"
            "have 1 slab of elm, 1216 x 196 to 160 x 60, rough, waney both edges\n"
        ),
    ],
)
def test_two_blanks_side_by_side_and_one_in_a_narrowing_slab(slabs: str) -> None:
    have = "have 1 slab of elm, 2600 x 460 to 440 x 40, rough, waney both edges\n"
    text = SHELVES.replace(have, slabs)
    for layout in laid(text).layouts:
        assert set(replayed(layout)) == {(one.along, one.across) for one in parts_of(layout)}
    if laid(text).verdict == "enough":
        assert played(text).faults() == ()


def judged(**change: object) -> set[Reason]:
    """What the judge says of a sound plan whose slab is otherwise."""
    seats = played(SEAT.format(deep=300, edges="front", have=SLAB))
    assert seats.faults() == ()
    (board,) = seats.plan.boards
    other = replace(board, **change)  # type: ignore[arg-type]
    return replace(seats, plan=replace(seats.plan, boards=(other,))).reasons()


def test_the_judge_wants_bark_along_the_blank_and_wood_at_its_narrowest() -> None:
    assert Reason.WOOD in judged(waney=0)
    assert Reason.SIZE in judged(ends=(Fraction(460), Fraction(280)))
