"""Bark comes off before a fence is set, and the same wood comes out; what a bow leaves."""

from tests.unit.stock.playing import face, kerfs, parts_of, played

from dryfit.diagnostics import Source
from dryfit.quantities import Display
from dryfit.shop import read_shop
from dryfit.stock.laid_out import LaidOut
from dryfit.stock.laying.lay import lay_out_stock
from dryfit.stock.telling.in_words import usable_thickness
from dryfit.workshop import check

SLAB = """piece Table
units mm
overall 1000 wide, 400 deep, 450 high
timber elm
4 legs, upright, 50 x 50, at corners, of oak
2 long aprons, across, 75 x 22, tenon 25 long into legs, of oak
2 short aprons, front to back, 75 x 22, tenon 25 long into legs, of oak
1 top, flat, 38 thick, from 2 staves
top onto long aprons and short aprons: buttons
have 1 slab of elm, 2290 x 305 to 267 x 57, waney both edges, cup 6, split 0 to 127
"""
BOW = """piece Rack
units mm
overall 800 wide, 100 deep, 20 high
timber ash
2 laths, across, flat, 40 x 20, up 0, spread front to back, no gap at ends
have 1 board of ash, 1800 x 120 x 32, rough, bow 8
finish oil, 2 coats
"""


def laid(text: str) -> LaidOut:
    """The wood of the notes laid out."""
    checked = check(Source("notes.dryfit", text), None, {})
    assert checked.model is not None
    assert checked.shop is not None
    _, layout, _ = lay_out_stock(checked.model, checked.shop)
    assert layout is not None
    return layout


def test_bark_comes_off_first() -> None:
    # TRADE A2.6: a fence wants a straight edge, and the first rip makes it.
    (layout,) = laid(SLAB).layouts
    rips = [cut for cut in layout.cuts if cut.saw == "rip"]
    assert rips[0].at == 0
    assert all(cut.across[0] > 0 for cut in rips if cut.at > 0)
    # Nothing else has changed: the cuts play, and blanks, waste and kerfs are the board.
    areas = {(one.along, one.across) for one in parts_of(layout)}
    assert set(played(layout)) == areas
    long, wide, _ = layout.board.sizes
    assert sum(map(face, parts_of(layout)), kerfs(layout)) == long * wide


def test_what_a_bow_leaves_is_told_of_the_length_too() -> None:
    # A1.5: 32 - 1 to clean up; the bow of 8 over 1800 goes with the square of the length that is
    # left: 8 x (920 / 1800)^2 = 2.09. Ripping alone takes none of it out.
    (layout,) = laid(BOW).layouts
    shop, _ = read_shop(None, {})
    assert shop is not None
    usable = usable_thickness(layout.board, layout, Display(), shop)
    assert {name: round(float(much), 2) for name, much in usable.items()} == {
        "whole": 23.0,
        "in pieces of 920 x 45": 28.91,
    }


def test_the_raw_end_and_the_split_behind_it_are_sawn_off_at_once() -> None:
    # Common practice: one crosscut behind the split. 127 of it, less the kerf of 3.
    (layout,) = laid(SLAB).layouts
    first, *others = layout.cuts
    assert (first.saw, float(first.at), float(first.kerf)) == ("crosscut", 124, 3)
    assert first.first == ()
    assert [cut.number for cut in layout.cuts] == list(range(1, len(others) + 2))
    # No two crosscuts in a row let only waste fall.
    rows = {cut.number: cut for cut in layout.cuts}
    for cut in others:
        before = rows[cut.after] if cut.after is not None and cut.side == "rest" else None
        wasted = before is not None and before.saw == cut.saw == "crosscut" and not before.first
        assert not (wasted and not cut.first)
