"""Blanks laid out on the boards of the notes: what comes out where, and that the wood adds up."""

from fractions import Fraction
from functools import cache
from itertools import combinations
from pathlib import Path

import pytest

from dryfit.diagnostics import Source
from dryfit.stock.laid_out import BoardLayout, Fallen, LaidOut, Placed, Reach
from dryfit.stock.lay import lay_out_stock
from dryfit.workshop import check

EXAMPLES = Path("examples")
WITH_WOOD = [
    path.stem
    for path in sorted(EXAMPLES.glob("*.dryfit"))
    if any(line.startswith(("have ", "buy ")) for line in path.read_text("utf-8").splitlines())
]


@cache
def laid(name: str) -> LaidOut:
    path = EXAMPLES / f"{name}.dryfit"
    checked = check(Source(path.name, path.read_text("utf-8")), None, {})
    assert checked.model is not None
    assert checked.shop is not None
    _, layout, _ = lay_out_stock(checked.model, checked.shop)
    assert layout is not None
    return layout


def test_the_boot_bench_comes_out_of_its_boards() -> None:
    # TRADE I1: its stock fits; posts and rails come out of A, ripped to 50 before they are planed.
    bench = laid("boot_bench")
    assert bench.verdict == "enough"
    assert bench.missing == ()
    assert bench.placed["post blank 1"].board.label == "A"
    assert bench.placed["top end rail blank 1"].board.label == "A"


@pytest.mark.parametrize("name", WITH_WOOD)
def test_blanks_what_falls_and_kerfs_are_the_board(name: str) -> None:
    for layout in laid(name).layouts:
        long, wide, _ = layout.board.sizes
        faces = [
            (one.along[1] - one.along[0]) * (one.across[1] - one.across[0])
            for one in parts_of(layout)
        ]
        sawn = [
            cut.kerf * (run[1] - run[0])
            for cut in layout.cuts
            for run in [cut.across if cut.saw == "crosscut" else cut.along]
        ]
        assert sum(faces) + sum(sawn) == long * wide, layout.board.label


@pytest.mark.parametrize("name", WITH_WOOD)
def test_nothing_overlaps_and_all_has_its_size(name: str) -> None:
    for layout in laid(name).layouts:
        areas = [(one.along, one.across) for one in parts_of(layout)]
        for one, other in combinations(areas, 2):
            assert any(a[1] <= b[0] or b[1] <= a[0] for a, b in zip(one, other, strict=True))
        for put in layout.placed:
            sizes = [put.along[1] - put.along[0], put.across[1] - put.across[0]]
            assert sizes == [put.blank.length, put.blank.width]


@pytest.mark.parametrize("name", WITH_WOOD)
def test_the_cuts_give_the_blanks(name: str) -> None:
    for layout in laid(name).layouts:
        assert sorted(played(layout)) == sorted((one.along, one.across) for one in parts_of(layout))


def parts_of(layout: BoardLayout) -> list[Placed | Fallen]:
    return [*layout.placed, *layout.fallen]


def played(layout: BoardLayout) -> list[tuple[Reach, Reach]]:
    """What the cuts leave, played one after the other from the board on."""
    long, wide, _ = layout.board.sizes
    none = Fraction(0)
    hands: dict[tuple[int | None, str], tuple[Reach, Reach]] = {
        (None, ""): ((none, long), (none, wide))
    }
    for cut in layout.cuts:
        along, across = hands.pop((cut.after, cut.side))
        assert (cut.along, cut.across) == (along, across)
        start, end = along if cut.saw == "crosscut" else across
        sides = (start, start + cut.at), (start + cut.at + cut.kerf, end)
        for side, reach in zip(("first", "rest"), sides, strict=True):
            if reach[1] > reach[0]:
                piece = (reach, across) if cut.saw == "crosscut" else (along, reach)
                hands[cut.number, side] = piece
    return list(hands.values())


def test_no_board_has_the_letter_of_a_blank() -> None:
    chest = laid("linen_chest")
    letters = [one.label for one in chest.boards] + [one.letter for one in chest.blanks]
    assert len(set(letters)) == len(letters)
    assert letters[:3] == ["A", "B", "C"]
    assert "aa" in letters
