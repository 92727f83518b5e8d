"""Whatever is to be cut: every layout can be sawn as it says, and the wood adds up."""

from dataclasses import replace

from hypothesis import assume, given, settings
from hypothesis import strategies as st
from tests.property.cutting_lots import lot, planted

from dryfit.cutting import Part, added, lay_out, violations
from dryfit.cutting.boxes import Steps
from dryfit.cutting.instance import compiled
from dryfit.cutting.proof import alone, short_of

SEEDS = st.integers(0, 10**6)


@given(SEEDS)
@settings(max_examples=60, deadline=None)
def test_a_layout_passes_the_checker(seed: int) -> None:
    job = lot(seed)
    answer = lay_out(job, effort=0)
    assert violations(job, answer.layouts, answer.missing) == ()
    for layout in answer.layouts:
        for cut in layout.cuts:
            hand = cut.piece
            assert any(
                hand.start <= piece.area.start < hand.end and hand.low <= piece.area.low < hand.high
                for piece in layout.pieces
            ), "scrap is cut up"


@given(SEEDS)
@settings(max_examples=30, deadline=None)
def test_parts_kerfs_offcuts_and_planing_are_the_stock(seed: int) -> None:
    job = lot(seed)
    parts = {part.id: part for part in job.parts}
    boards = {board.id: board for board in job.boards}
    for layout in lay_out(job, effort=0).layouts:
        board = boards[layout.board]
        wood = planing = 0
        for piece in layout.pieces:
            thick = parts[piece.part].thickness
            assert thick <= board.thickness
            wood += piece.area.size * thick
            planing += piece.area.size * (board.thickness - thick)
        fallen = sum(leftover.area.size for leftover in layout.leftovers) * board.thickness
        kerfs = sum(
            cut.kerf * (cut.piece.width if cut.saw == "crosscut" else cut.piece.length)
            for cut in layout.cuts
        )
        volume = board.length * board.width * board.thickness
        assert wood + planing + fallen + kerfs * board.thickness == volume


@given(SEEDS)
@settings(max_examples=15, deadline=None)
def test_what_was_cut_from_the_stock_is_never_refused(seed: int) -> None:
    instance = compiled(planted(seed))
    assert alone(instance) == ()
    assert short_of(instance, Steps(20_000)) is None


@given(SEEDS)
@settings(max_examples=40, deadline=None)
def test_what_a_layout_holds_is_never_refused(seed: int) -> None:
    job = lot(seed)
    answer = lay_out(job, effort=0)
    assume(answer.layouts)
    counts = {part.id: part.quantity for part in job.parts}
    for lack in answer.missing:
        counts[lack.part] -= lack.copies
    parts = tuple(replace(p, quantity=counts[p.id]) for p in job.parts if counts[p.id])
    instance = compiled(replace(job, parts=parts))
    assert alone(instance) == ()
    assert short_of(instance, Steps(20_000)) is None


@given(SEEDS, SEEDS)
@settings(max_examples=30, deadline=None)
def test_more_stock_is_never_worse(seed: int, other: int) -> None:
    job = lot(seed)
    answer = lay_out(job, effort=0)
    assume(answer.verdict == "enough")
    more = replace(lot(other).boards[0], id="one more")
    assert lay_out(replace(job, boards=(*job.boards, more)), effort=0).verdict == "enough"


@given(SEEDS)
@settings(max_examples=30, deadline=None)
def test_one_blank_more_leaves_the_others_where_they_are(seed: int) -> None:
    job = lot(seed)
    answer = lay_out(job, effort=0)
    part = Part("more", 12_000, 4_000, 1_500, material="oak")
    found = added(job, answer.layouts, part)
    if found is None:
        return
    larger, layouts = found
    assert violations(larger, layouts, answer.missing) == ()
    before = [piece for layout in answer.layouts for piece in layout.pieces]
    after = [piece for layout in layouts for piece in layout.pieces]
    assert [piece for piece in after if piece.part != "more"] == before
    assert len(after) == len(before) + 1
