"""Boards to rough pieces: the cuts of the layouts as operations, with what waits for them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from dryfit.operations import through_cuts
from dryfit.operations.batch import Batch
from dryfit.operations.boards.board_saws import (
    NO_EDGE_AT_FENCE,
    SawWay,
    piece_of,
    saw_way,
    sawing_minutes,
    settings_of,
)
from dryfit.operations.boards.board_words import (
    board_name,
    cut_lines,
    of_parts,
    sawing_details,
    sawing_sentence,
)
from dryfit.operations.boards.cut_groups import DEEDS, CutGroup, grouped
from dryfit.operations.boards.heavy_boards import with_helpers
from dryfit.operations.boards.layout_cuts import LayoutCut, layout_cuts
from dryfit.operations.boards.rough_rips import (
    WHY_RIP_AFTER_CROSSCUT,
    WHY_STRAIGHT_AFTER_CROSSCUT,
    WHY_STRAIGHT_FIRST,
)
from dryfit.operations.boards.straight_edges import straight_edges
from dryfit.operations.minutes import tenths
from dryfit.piece.declared import Have
from dryfit.placing.model import Model
from dryfit.plan.operation import Detail, Operation, Rule, Work
from dryfit.plan.sawing import BadZone, Becomes, SawnBoard
from dryfit.shop.shop import Shop
from dryfit.stock.boards import unplaned
from dryfit.stock.laid_out import BoardLayout, LaidOut, NamedBlank, StockBoard
from dryfit.stock.resting import moisture_known
from dryfit.stock.ripped_first import parting, too_thin_whole

ZERO = Fraction(0)
WHY_CROSSCUT_AFTER_RIP = "it is cut off what that rip has freed"
WHY_FROM_WHAT_IS_LEFT = "it is sawn out of what that cut leaves"


@dataclass(frozen=True, slots=True)
class Sawing:
    """The cuts of all boards, the boards, and by subject what frees its rough pieces.

    `freed` are the operations that a piece of that subject is cut all round with; a subject whose
    pieces are whole boards waits for nothing.  `whole` are copies that are sheets as they came.
    """

    batch: Batch
    boards: tuple[SawnBoard, ...]
    freed: Mapping[str, tuple[str, ...]]
    whole: frozenset[str] = frozenset()


NO_BOARDS = Sawing(Batch(), (), {})


def sawn_boards(laid: LaidOut, model: Model, shop: Shop) -> Sawing:
    """Return the operations that part the boards of the layouts, with the rules between them.

    What is sawn to its size out of a sheet is no blank that the saws bring to its size once more:
    its parts are sawn from the sheet to width and to length as without a layout.
    """
    layouts = tuple(layout for layout in laid.layouts if not _sawn_to_size(layout))
    cuts = layout_cuts(replace(laid, layouts=layouts), model)
    ways = {cut.key: saw_way(cut, shop) for cut in cuts}
    groups = grouped(cuts, tuple(ways[cut.key].key for cut in cuts))
    of = {cut.key: group.id for group in groups for cut in group.cuts}
    operations: list[Operation] = []
    rules: dict[tuple[str, str], Rule] = {}
    for group in groups:
        way = ways[group.cuts[0].key]
        operation = _operation(group, way, model, shop)
        operation = with_helpers(operation, group.cuts, model.display.unit)
        before = _before(group, of, cuts)
        raw = [
            cut for cut in group.cuts if ways[cut.key].straight and not _on_fresh_edge(cut, ways)
        ]
        if raw:
            edge = _straight_edge(group, raw, model, shop)
            operations.append(edge)
            rules[edge.id, group.id] = Rule(edge.id, group.id, WHY_STRAIGHT_FIRST)
            for name in before:
                rules[name, edge.id] = Rule(name, edge.id, WHY_STRAIGHT_AFTER_CROSSCUT)
        operations.append(operation)
        for name, saw in before.items():
            rules[name, group.id] = Rule(name, group.id, _why(saw, group.cuts[0].cut.saw))
    freed: dict[str, dict[str, None]] = {}
    for cut in cuts:
        for blank in cut.freed:
            freed.setdefault(blank.subject, {})[of[cut.key]] = None
    uncut = tuple(_whole_sheets(laid, model))
    return Sawing(
        Batch(tuple(operations), tuple(rules.values())),
        (*(_board(layout.board, model) for layout in layouts), *uncut),
        {subject: tuple(names) for subject, names in freed.items()},
        frozenset(name for each in uncut if each.becomes for name in each.becomes.pieces),
    )


def _whole_sheets(laid: LaidOut, model: Model) -> Iterator[SawnBoard]:
    """Yield the sheets that no cut parts: each has the very size of its part."""
    parts = {part.name: part for part in model.parts}
    for layout in laid.layouts:
        sheet = layout.board.line.kind == "sheet"
        if not sheet or layout.cuts or len(layout.placed) != 1:
            continue
        blank = layout.placed[0].blank
        part = parts[blank.part]
        if blank.pieces and not (part.lips or part.measures or any(blank.allowance)):
            becomes = Becomes(blank.name, blank.letter, blank.pieces)
            yield replace(_board(layout.board, model), becomes=becomes)


def _sawn_to_size(layout: BoardLayout) -> bool:
    """Return whether nothing is trimmed off what comes out of a sheet."""
    spared = (not any(one.blank.allowance) for one in layout.placed)
    return layout.board.line.kind == "sheet" and all(spared)


def _before(
    group: CutGroup, of: Mapping[tuple[str, int], str], cuts: Iterable[LayoutCut]
) -> dict[str, str]:
    """Return the operations that a group's pieces in hand come from, with their saws."""
    saws = {cut.key: cut.cut.saw for cut in cuts}
    found: dict[str, str] = {}
    for cut in group.cuts:
        parent = cut.parent
        if parent is not None and parent in of and of[parent] != group.id:
            found[of[parent]] = saws[parent]
    return found


def _why(before: str, after: str) -> str:
    if before == after:
        return WHY_FROM_WHAT_IS_LEFT
    return WHY_RIP_AFTER_CROSSCUT if after == "rip" else WHY_CROSSCUT_AFTER_RIP


def _operation(group: CutGroup, way: SawWay, model: Model, shop: Shop) -> Operation:
    cuts, owner = group.cuts, group.cuts[0].owner
    return Operation(
        id=group.id,
        kind=DEEDS[cuts[0].cut.saw],
        station=way.station,
        part=owner.part,
        settings=settings_of(way, cuts, shop),
        work=_works(blank for cut in cuts for blank in cut.last_of),
        tenths=tenths(sawing_minutes(way, cuts, shop)),
        sentence=sawing_sentence(cuts, way, model),
        details=tuple(dict.fromkeys((*sawing_details(cuts, way), *_before_planing(cuts, shop)))),
        board_cuts=tuple(cut.for_plan() for cut in cuts),
        cut_lines=tuple(cut_lines(cuts)),
        cautions=("saw-in-hand",) if way.why == NO_EDGE_AT_FENCE else (),
    )


def _before_planing(cuts: Sequence[LayoutCut], shop: Shop) -> Iterator[Detail]:
    """Yield why a board is parted before it is planed, where whole it would be too thin (H44)."""
    for board in dict.fromkeys(cut.board for cut in cuts if cut.cut.saw == "rip"):
        blanks = [blank for cut in cuts if cut.board == board for blank in cut.last_of]
        found = too_thin_whole(board, blanks, shop)
        if found is not None:
            told = f"Planed flat as a whole, {board_name(board)} would be "
            takes = f" thick, and the {found.blank.subject} takes "
            yield (told, found.whole, takes, found.needed, f": so it is {parting(board)} first")


def _works(blanks: Iterable[NamedBlank]) -> tuple[Work, ...]:
    """Return the copies that no other cut in that direction comes to, those of each subject."""
    rows: dict[str, list[str]] = {}
    for blank in blanks:
        if blank.pieces:
            rows.setdefault(blank.subject, []).extend(blank.pieces)
    return tuple(Work(subject, tuple(names), (), None, ()) for subject, names in rows.items())


def _on_fresh_edge(cut: LayoutCut, ways: Mapping[tuple[str, int], SawWay]) -> bool:
    """Return whether the edge of the piece in hand was sawn along the table saw's fence before."""
    if cut.parent is None or cut.run == cut.cut.number:
        return False
    before = ways.get(cut.parent)
    return before is not None and before.station == through_cuts.SAW


def _straight_edge(
    group: CutGroup, raw: Sequence[LayoutCut], model: Model, shop: Shop
) -> Operation:
    owner = group.cuts[0].owner
    edges = straight_edges([piece_of(cut) for cut in raw], 1, shop)
    row = Operation(
        id=group.id.replace(" / rip", " / straight edge"),
        kind="straight edge",
        station=edges.station,
        part=owner.part,
        settings=(),
        work=(),
        tenths=tenths(edges.exact),
        sentence=f"For {of_parts(owner, model)}, make one edge of each piece straight for the "
        "saw's fence",
    )
    return edges.of(row)


def _ends(line: Have) -> tuple[Fraction, Fraction] | None:
    here, there = line.sizes[1], line.other_width
    return None if here is None or there is None or here == there else (here, there)


def _board(board: StockBoard, model: Model) -> SawnBoard:
    line = board.line
    long, wide, thick = board.sizes
    return SawnBoard(
        label=board.label,
        timber=line.timber,
        length=long,
        width=wide,
        thickness=thick,
        rough=unplaned(line),
        sheet=line.kind == "sheet",
        cup=line.cup,
        bow=line.bow,
        twist=line.twist,
        zones=tuple(
            BadZone(zone.along or (ZERO, long), zone.across or (ZERO, wide), zone.why)
            for zone in line.avoid
        ),
        on_hand=board.on_hand,
        damp=not moisture_known(line, model),
        grain=line.kind != "sheet" or line.grain,
        waney=line.waney,
        ends=_ends(line),
    )
