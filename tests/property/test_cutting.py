"""Whatever is to be cut: every layout can be sawn as it says, and the wood adds up."""

from hypothesis import given, settings
from hypothesis import strategies as st
from tests.property.cutting_lots import lot

from dryfit.cutting import lay_out, violations

SEEDS = st.integers(0, 10**6)


@given(SEEDS)
@settings(max_examples=60, deadline=None)
def test_a_layout_passes_the_checker(seed: int) -> None:
    job = lot(seed)
    answer = lay_out(job, effort=0)
    assert violations(job, answer.layouts, answer.missing) == ()


@given(SEEDS)
@settings(max_examples=25, deadline=None)
def test_parts_kerfs_offcuts_and_planing_are_the_stock(seed: int) -> None:
    job = lot(seed)
    parts = {part.id: part for part in job.parts}
    boards = {board.id: board for board in job.boards}
    for layout in lay_out(job).layouts:
        board = boards[layout.board]
        faces = [(piece.area.size, parts[piece.part].thickness) for piece in layout.pieces]
        wood = sum(face * thickness for face, thickness in faces)
        planing = sum(face * (board.thickness - thickness) for face, thickness in faces)
        fallen = sum(leftover.area.size for leftover in layout.leftovers) * board.thickness
        kerfs = sum(
            cut.kerf * (cut.piece.width if cut.saw == "crosscut" else cut.piece.length)
            for cut in layout.cuts
        )
        volume = board.length * board.width * board.thickness
        assert wood + planing + fallen + kerfs * board.thickness == volume
