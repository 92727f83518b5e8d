"""The checker replays the cuts: it finds what is spoilt, and nothing in what is whole."""

from collections.abc import Callable
from dataclasses import replace

import pytest
from tests.unit.cutting.jobs import BENCH, bench_answer

from dryfit.cutting import (
    Area,
    Board,
    Cut,
    Job,
    Layout,
    Leftover,
    Missing,
    Part,
    Piece,
    Rules,
    violations,
)

BOARD = Board("A", 100_000, 20_000, 2_500)
RAIL = Part("rail", 60_000, 8_000, 2_000)
PLAIN = Job((RAIL,), (BOARD,), Rules(crosscut_kerf=300, rip_kerf=200))

# Laid out by hand: 600 off the board, then 80 off that.
CUTS = (
    Cut(1, None, "", "crosscut", 60_000, 300, 1, Area(0, 100_000, 0, 20_000)),
    Cut(2, 1, "first", "rip", 8_000, 200, 2, Area(0, 60_000, 0, 20_000)),
)
PIECE = Piece("rail", 1, Area(0, 60_000, 0, 8_000))
ABOVE, BEYOND = Area(0, 60_000, 8_200, 20_000), Area(60_300, 100_000, 0, 20_000)
LAYOUT = Layout("A", 1, CUTS, (PIECE,), tuple(Leftover(a, a, keep=False) for a in (ABOVE, BEYOND)))


def with_cut(place: int, /, **changes: object) -> Layout:
    cuts = list(LAYOUT.cuts)
    cuts[place - 1] = replace(cuts[place - 1], **changes)  # type: ignore[arg-type]
    return replace(LAYOUT, cuts=tuple(cuts))


def with_piece(**changes: object) -> Layout:
    return replace(LAYOUT, pieces=(replace(PIECE, **changes),))  # type: ignore[arg-type]


def test_a_layout_made_by_hand_has_no_fault() -> None:
    assert violations(PLAIN, (LAYOUT,)) == ()


@pytest.mark.parametrize(
    ("spoilt", "reason"),
    [
        (with_cut(1, kerf=0), "wrong kerf"),
        (with_cut(1, kerf=200), "wrong kerf"),
        (with_cut(2, stage=1), "of stage 2"),
        (with_cut(2, side="rest"), "for another piece"),
        (with_cut(2, after=None, side=""), "not there"),
        (with_cut(2, number=3), "has number 3"),
        (with_cut(2, at=9_000), "do not give"),
        (with_cut(1, at=59_000), "for another piece"),
        (with_cut(1, at=100_000), "does not go through"),
        (with_cut(1, stage=0), "no trimming"),
        (with_cut(1, saw="rip"), "does not go through"),
        (with_cut(2, piece=ABOVE), "for another piece"),
        (with_piece(area=Area(0, 60_000, 0, 8_100)), "instead of"),
        (with_piece(area=Area(0, 60_000, 8_200, 16_200)), "do not give"),
        (with_piece(turned=True), "across the grain"),
        (with_piece(copy=2), "nobody asked"),
        (with_piece(part="stile"), "nobody asked"),
        (replace(LAYOUT, pieces=()), "said to be missing"),
        (replace(LAYOUT, pieces=(PIECE, PIECE)), "overlap"),
        (replace(LAYOUT, leftovers=LAYOUT.leftovers[:1]), "not the board"),
        (replace(LAYOUT, board="B"), "no board B"),
        (replace(LAYOUT, copy=2), "no board A number 2"),
        (
            replace(LAYOUT, leftovers=(Leftover(ABOVE, BEYOND, keep=False), LAYOUT.leftovers[1])),
            "outside its leftover",
        ),
    ],
)
def test_a_spoilt_layout_is_found_out(spoilt: Layout, reason: str) -> None:
    assert any(reason in fault for fault in violations(PLAIN, (spoilt,))), violations(
        PLAIN, (spoilt,)
    )


@pytest.mark.parametrize(
    ("job", "reason"),
    [
        (replace(PLAIN, boards=(replace(BOARD, material="oak"),)), "another material"),
        (replace(PLAIN, boards=(replace(BOARD, thickness=1_900),)), "thicker than the board"),
        (
            replace(PLAIN, boards=(replace(BOARD, zones=(Area(59_000, 61_000, 0, 9),)),)),
            "in a zone",
        ),
        (replace(PLAIN, boards=(replace(BOARD, length=90_000),)), "another piece"),
        (replace(PLAIN, rules=Rules(300, 200, least_rip=60_001)), "too short"),
        (replace(PLAIN, rules=Rules(300, 200, end_trim=1_000)), "trimmed ends"),
        (replace(PLAIN, rules=Rules(300, 200, stages=0)), "one stage too many"),
        (replace(PLAIN, parts=(replace(RAIL, quantity=2),)), "said to be missing"),
        (replace(PLAIN, parts=(replace(RAIL, length=61_000),)), "instead of"),
    ],
)
def test_the_job_is_held_against_the_layout(job: Job, reason: str) -> None:
    assert any(reason in fault for fault in violations(job, (LAYOUT,))), violations(job, (LAYOUT,))


def test_a_board_is_cut_once() -> None:
    two = replace(PLAIN, parts=(replace(RAIL, quantity=2),))
    again = replace(LAYOUT, pieces=(replace(PIECE, copy=2),))
    assert any("cut 2 times" in fault for fault in violations(two, (LAYOUT, again)))


def test_a_kept_leftover_is_large_enough() -> None:
    kept = replace(LAYOUT, leftovers=(LAYOUT.leftovers[0], Leftover(BEYOND, BEYOND, keep=True)))
    strict = replace(PLAIN, rules=Rules(300, 200, keep_length=39_701, keep_width=6_000))
    lenient = replace(PLAIN, rules=Rules(300, 200, keep_length=39_700, keep_width=6_000))
    assert any("too small" in fault for fault in violations(strict, (kept,)))
    assert violations(lenient, (kept,)) == ()


def test_the_stage_after_the_last_only_trims() -> None:
    two = replace(PLAIN, parts=(replace(RAIL, quantity=2),))
    above = Area(0, 60_000, 8_200, 16_200)
    strip = Area(0, 60_000, 16_400, 20_000)
    layout = replace(
        LAYOUT,
        cuts=(*CUTS, Cut(3, 2, "rest", "rip", 8_000, 200, 2, ABOVE)),
        pieces=(PIECE, Piece("rail", 2, above)),
        leftovers=(Leftover(strip, strip, keep=False), LAYOUT.leftovers[1]),
    )
    assert violations(two, (layout,)) == ()
    fewer = replace(two, rules=Rules(300, 200, stages=1))
    assert any("only trim" in fault for fault in violations(fewer, (layout,)))
    assert violations(replace(PLAIN, rules=fewer.rules), (LAYOUT,)) == ()


def test_what_is_said_to_be_missing_is_counted() -> None:
    assert violations(PLAIN, (), (Missing("rail", 1),)) == ()
    assert violations(PLAIN, (LAYOUT,), (Missing("rail", 1),)) != ()
    assert violations(PLAIN, (LAYOUT,), (Missing("stile", 1),)) != ()


Damage = Callable[[Layout], Layout]


def moved(layout: Layout) -> Layout:
    """The first piece a hundredth further on."""
    piece = layout.pieces[0]
    area = piece.area
    shifted = replace(area, start=area.start + 1, end=area.end + 1)
    return replace(layout, pieces=(replace(piece, area=shifted), *layout.pieces[1:]))


def uncut(layout: Layout) -> Layout:
    return replace(layout, cuts=layout.cuts[:-1])


def wider_kerf(layout: Layout) -> Layout:
    cut = layout.cuts[1]
    return replace(layout, cuts=(layout.cuts[0], replace(cut, kerf=cut.kerf + 1), *layout.cuts[2:]))


def swallowed(layout: Layout) -> Layout:
    return replace(layout, leftovers=layout.leftovers[1:])


def swapped(layout: Layout) -> Layout:
    first, second, *others = layout.pieces
    return replace(
        layout,
        pieces=(replace(first, area=second.area), replace(second, area=first.area), *others),
    )


@pytest.mark.parametrize("damage", [moved, uncut, wider_kerf, swallowed])
def test_every_board_of_a_real_layout_is_checked(damage: Damage) -> None:
    layouts = bench_answer().layouts
    assert violations(BENCH, layouts) == ()
    for index, layout in enumerate(layouts):
        spoilt = (*layouts[:index], damage(layout), *layouts[index + 1 :])
        assert violations(BENCH, spoilt) != (), layout.board


def test_a_torn_group_is_found() -> None:
    layouts = bench_answer().layouts
    slats = [
        (index, piece)
        for index, layout in enumerate(layouts)
        for piece in layout.pieces
        if piece.part == "slat"
    ]
    assert len({index for index, _ in slats}) == 1
    fewer = tuple(
        replace(
            layout,
            pieces=tuple(one for one in layout.pieces if one is not slats[0][1]),
            leftovers=(
                *layout.leftovers,
                *([Leftover(slats[0][1].area, None, keep=False)] if index == slats[0][0] else []),
            ),
        )
        for index, layout in enumerate(layouts)
    )
    found = violations(BENCH, fewer, (Missing("slat", 1),))
    assert found == ("group seat is cut in part",)


def test_a_run_out_of_order_is_found() -> None:
    layouts = tuple(
        replace(
            layout,
            pieces=tuple(
                replace(piece, copy=3 - piece.copy) if piece.part == "front" else piece
                for piece in layout.pieces
            ),
        )
        for layout in bench_answer().layouts
    )
    assert violations(BENCH, layouts) == ("front number 2 does not follow in group fronts",)
