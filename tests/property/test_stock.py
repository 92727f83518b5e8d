"""Blanks on boards by lot: all that is sawn adds up, and more wood is never worse."""

import random
from dataclasses import replace
from fractions import Fraction
from functools import cache

from hypothesis import assume, given, settings
from hypothesis import strategies as st
from tests.unit.stock.playing import face, kerfs, parts_of, played

from dryfit.diagnostics import Source
from dryfit.piece.declared import Avoid, Have
from dryfit.placing.model import Model
from dryfit.shop import Shop
from dryfit.stock.board_edges import bad_places
from dryfit.stock.laid_out import LaidOut, NamedBlank
from dryfit.stock.laying.lay import lay_out_stock
from dryfit.workshop import check

NOTES = """\
piece Low table
units mm
overall 700 wide, 400 deep, 300 high
timber ash
have 1 board of ash, 2400 x 160 x 34, rough
4 legs, upright, 30 x 30, at corners
2 long rails, across, on edge, 50 x 20, tenon 15 into legs, flush with top of legs
2 short rails, front to back, on edge, 50 x 20, tenon 15 into legs, flush with top of legs
finish oil, 2 coats
"""
SEEDS = st.integers(0, 10**6)


@cache
def table() -> tuple[Model, Shop]:
    checked = check(Source("table.dryfit", NOTES), None, {})
    assert checked.model is not None
    assert checked.shop is not None
    return checked.model, checked.shop


def boards(seed: int, most: int) -> tuple[Have, ...]:
    """Some lines of wood: warped, with bad places, tapering, planed, of another wood."""
    lots = random.Random(seed)  # noqa: S311 - lots, not secrets
    (pattern,) = table()[0].stock
    return tuple(_line(lots, pattern) for _ in range(lots.randint(1, most)))


def _line(lots: random.Random, pattern: Have) -> Have:
    long, wide = lots.randint(400, 2400), lots.randint(50, 220)
    start, low = lots.randrange(long), lots.randrange(wide)
    bad = Avoid(
        (Fraction(start), Fraction(start + 80)),
        lots.choice((None, (Fraction(low), Fraction(low + 30)))),
        "knot",
        pattern.span,
    )
    state = lots.choice(("rough", "rough", "hit and miss", "planed"))
    return replace(
        pattern,
        count=lots.randint(1, 2),
        timber=lots.choice(("ash", "ash", "ash", "ash", "oak", None)),
        sizes=(Fraction(long), Fraction(wide), Fraction(lots.choice((20, 24, 27, 34, 52)))),
        kind=lots.choice(("board", "board", "offcut", "slab")),
        rough=state == "rough",
        hit_and_miss=state == "hit and miss",
        cup=Fraction(lots.choice((0, 0, 0, 3))),
        bow=Fraction(lots.choice((0, 0, 5))),
        waney=lots.choice((0, 0, 1, 2)) if state == "rough" else 0,
        other_width=Fraction(lots.randint(50, 220)) if lots.random() < 0.2 else None,
        avoid=(bad,) if lots.random() < 0.3 else (),
    )


def laid(lines: tuple[Have, ...]) -> LaidOut:
    model, shop = table()
    _, found, _ = lay_out_stock(replace(model, stock=lines), shop)
    assert found is not None
    return found


@given(SEEDS)
@settings(max_examples=20, deadline=None)
def test_all_that_is_sawn_adds_up(seed: int) -> None:
    found = laid(boards(seed, 6))
    parts = {part.name: part for part in table()[0].parts}
    for layout in found.layouts:
        long, wide, thick = layout.board.sizes
        pieces = parts_of(layout)
        assert sorted(played(layout)) == sorted((one.along, one.across) for one in pieces)
        wood, planed = Fraction(0), Fraction(0)
        for one in layout.placed:
            blank, part = one.blank, parts[one.blank.part]
            assert layout.board.line.timber in {part.timber, None}
            lost = blank.allowance
            own = [size - less for size, less in zip(_sizes(one.blank), lost, strict=True)]
            if blank.what == "part":
                # A gang is as long as its pieces; what is sawn between them is in its allowance.
                # What is resawn holds its leaves one on another.
                each = -(-len(blank.pieces) // blank.leaves)
                thick_of_all = blank.leaves * part.thickness
                assert own == [each * part.cut_length, part.width, thick_of_all]
            assert blank.thickness == thick
            assert min(lost) >= 0
            wood += own[0] * own[1] * own[2]
            planed += face(one) * thick - own[0] * own[1] * own[2]
            for bad in bad_places(layout.board):
                clear = [
                    place[1] <= away[0] or away[1] <= place[0]
                    for place, away in ((one.along, bad.along), (one.across, bad.across))
                ]
                assert any(clear)
        offcuts = sum(map(face, layout.fallen)) * thick
        assert wood + planed + offcuts + kerfs(layout) * thick == long * wide * thick


def _sizes(blank: NamedBlank) -> tuple[Fraction, Fraction, Fraction]:
    return blank.length, blank.width, blank.thickness


@given(SEEDS, SEEDS)
@settings(max_examples=15, deadline=None)
def test_more_wood_is_never_worse(seed: int, more: int) -> None:
    few = laid(boards(seed, 5))
    # A wood that no line tells of is not looked at; with one board of it, it is.
    assume(not few.unlisted)
    many = laid((*boards(seed, 5), *boards(more, 2)))
    if few.verdict == "enough":
        assert many.verdict == "enough"
    if many.verdict == "not enough":
        assert few.verdict != "enough"


@given(SEEDS)
@settings(max_examples=10, deadline=None)
def test_what_is_bought_holds_all_that_is_missing(seed: int) -> None:
    lines = boards(seed, 2)
    model, shop = table()
    (pattern,) = model.stock
    sold = replace(pattern, sizes=(Fraction(2400), Fraction(160), Fraction(34)))
    yard = (sold, replace(sold, sizes=(Fraction(1200), Fraction(80), Fraction(34))))
    _, found, _ = lay_out_stock(replace(model, stock=lines, yard=yard), shop)
    assert found is not None
    if found.verdict == "enough":
        assert found.buy == ()
        return
    assert set(found.placed) == {blank.name for blank in found.blanks}
    bought = [layout for layout in found.layouts if not layout.board.on_hand]
    assert sum(one.count for one in found.buy) == len(bought) > 0
    lost = {one.blank.part for layout in bought for one in layout.placed}
    assert {one.part for one in found.missing} == lost
