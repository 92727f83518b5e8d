"""One blank more out of what falls, with all that is laid out left as it is."""

from collections.abc import Sequence
from dataclasses import replace

from dryfit.cutting.checker import violations
from dryfit.cutting.layouts import SAWS, Hand, leftover
from dryfit.cutting.problem import Area, Board, Job, Part
from dryfit.cutting.result import Cut, Layout, Leftover, Piece, stage_after
from dryfit.cutting.zoned import parted


def added(job: Job, layouts: Sequence[Layout], part: Part) -> tuple[Job, tuple[Layout, ...]] | None:
    """The job and the layouts with a further part of quantity 1.

    None where nothing that falls is large enough for it, or may still be cut. It comes out of the
    smallest leftover that holds it, at its reference end and edge.
    """
    larger = replace(job, parts=(*job.parts, part))
    boards = {board.id: board for board in job.boards}
    places = sorted(
        (one.area.size, number, place)
        for number, layout in enumerate(layouts)
        if part.boards is None or layout.board in part.boards
        for place, one in enumerate(layout.leftovers)
    )
    missing = violations(job, layouts)
    for _, number, place in places:
        layout = layouts[number]
        board = boards[layout.board]
        for ways in ((0, 1), (1, 0)):
            fuller = _cut_out(board, job, layout, place, part, ways)
            if fuller is None:
                continue
            new = (*layouts[:number], fuller, *layouts[number + 1 :])
            if violations(larger, new) == missing:
                return larger, new
    return None


def _cut_out(
    board: Board, job: Job, layout: Layout, place: int, part: Part, ways: tuple[int, int]
) -> Layout | None:
    """The layout with the part cut out of one leftover, first in one direction, then the other."""
    rules = job.rules
    spare: Leftover = layout.leftovers[place]
    area, clear = spare.area, spare.clear
    if clear is None or (clear.start, clear.low) != (area.start, area.low):
        return None
    if part.length > min(clear.end, board.length - rules.end_trim) - area.start:
        return None
    if part.width > clear.width or area.start < rules.end_trim:
        return None
    hand = next((hand for hand, piece in hands(layout).items() if piece == area), None)
    if hand is None:
        return None
    sizes = part.length, part.width
    kerfs = rules.crosscut_kerf, rules.rip_kerf
    cuts, fallen = list(layout.cuts), list(layout.leftovers)
    del fallen[place]
    for way in ways:
        run = area.width if way else area.length
        if sizes[way] == run:
            continue
        first, rest, kerf = parted(area, way, sizes[way], kerfs[way])
        assert first is not None
        stage = stage_after(None if hand[0] is None else cuts[hand[0] - 1], SAWS[way])
        cuts.append(Cut(len(cuts) + 1, *hand, SAWS[way], sizes[way], kerf, stage, area))
        if rest is not None:
            fallen.append(leftover(board, rules, rest))
        area, hand = first, (len(cuts), "first")
    piece = Piece(part.id, 1, area)
    return replace(
        layout, cuts=tuple(cuts), pieces=(*layout.pieces, piece), leftovers=tuple(fallen)
    )


def hands(layout: Layout) -> dict[Hand, Area]:
    """What is left when all cuts are done: of each cut the sides that are cut no further."""
    found: dict[Hand, Area] = {}
    for cut in layout.cuts:
        found.pop((cut.after, cut.side), None)
        first, rest, _ = parted(cut.piece, SAWS.index(cut.saw), cut.at, cut.kerf)
        if first is not None:
            found[cut.number, "first"] = first
        if rest is not None:
            found[cut.number, "rest"] = rest
    return found
