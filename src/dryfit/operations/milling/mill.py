"""From rough board to true section: rough length, rip, face, edge, thickness, width (TRADE A3)."""

from __future__ import annotations

from dataclasses import dataclass, replace
from itertools import pairwise

from dryfit.operations import setting_of, through_cuts
from dryfit.operations.batch import Batch, chained
from dryfit.operations.boards.blank_deeds import operation, pieces_of
from dryfit.operations.boards.out_of_boards import OutOfBoards
from dryfit.operations.boards.rough_rips import rough_ripped
from dryfit.operations.boards.waney import (
    WHY_BARK_FIRST,
    WHY_BARK_OFF_PIECES,
    bark_off,
    with_waney_edges,
)
from dryfit.operations.boards.wide_boards import board_too_wide, hand_planed
from dryfit.operations.machine_limits import (
    PLANER,
    Piece,
    why_not_at_mitre_saw,
    why_not_planed,
    why_not_ripped,
)
from dryfit.operations.milling.jointing import edge, face, second_edge
from dryfit.operations.milling.planer_strips import fed_between
from dryfit.operations.milling.resaw import WHY_STICKERED, WHY_TRUED_FIRST, resawn
from dryfit.operations.milling.resting import WHY_RESTED, before_the_rest, both_faces, looked_at
from dryfit.operations.milling.stave_widths import each_width
from dryfit.operations.milling.strips import Strips, strips_for
from dryfit.operations.milling.thick_already import for_those
from dryfit.operations.minutes import METRE, worked
from dryfit.operations.words import spoken
from dryfit.plan.operation import Detail, Operation, Rule
from dryfit.plan.setting import Hold
from dryfit.quantities import Display
from dryfit.shop.resting import LEFT, rest_of
from dryfit.shop.shop import Shop
from dryfit.stock.blanks.blank import Blank, gang_length, shortest_fed

WHY_FACE_AFTER_RIP = "a narrower piece has less cup to lose when its face is made true"
WHY_EDGE_AFTER_FACE = "the edge is made square to the true face"
WHY_THICKNESS_AFTER_EDGE = "the planer copies the face that lies down, so that face is true first"
WHY_WIDTH_AFTER_THICKNESS = "the width is sawn from two true faces and a true edge"
WHY_AFTER_BOARD = "what is small has less bow, cup and twist to lose when its face is made true"
TO_BUY = " / to buy"
"""Ends the id of a cut out of wood that is not there yet."""
WHY_SECOND_EDGE = "a saw leaves marks, and a glue edge is jointed"


def milled(
    blank: Blank, display: Display, shop: Shop, out: OutOfBoards | None = None, tail: str = ""
) -> Batch:
    """Return the chain for a blank, from the boards on, or from where `out` of them it comes.

    `tail` ends the ids of its own cuts, where cuts of its spares have those ids already.
    Findings: ``board-too-wide`` (H47).
    """
    strips = strips_for(blank, out, shop)
    if out is not None:
        first = _from_layouts(out, strips, shop)
    else:
        first = _from_any_board(blank if strips is None else strips.blank, shop, tail)
    if strips is not None:
        first = _resawn(first, strips, out, shop)
    # A jointer that takes the thinnest of them takes all.
    thin = blank if out is None else replace(blank, thickness=out.thinnest)
    rows = [face(thin, shop), edge(thin, shop), _thickness(blank, shop), _width(blank, shop)]
    if blank.staves:
        rows.append(second_edge(blank, shop))
    if strips is not None and not blank.staves:
        # It was jointed while they were a strip, and is no glue edge.
        rows = [row for row in rows if row.kind != "edge"]
    if blank.part.waney:
        rows = with_waney_edges(rows, blank, shop)
    if out is not None:
        rows = [_with_extra(row, out, shop) for row in rows if row.kind not in _spared(out)]
    rest = 0 if strips is not None else _rest(blank, out, shop)
    rows = [each for row in rows for each in _in_its_time(row, blank, rest, out, shop)]
    if out is not None:
        needed = (for_those(row, out) for row in rows)
        rows = [row for row in needed if row is not None]
    begins = tuple(end.then(row.id) for row in rows[:1] for end in first.ends)
    if blank.part.waney:
        begins = tuple(replace(rule, reason=WHY_BARK_OFF_PIECES) for rule in begins)
    lags = {row.id: row.after_tenths for row in rows}
    chain = chained(rows, [_why_now(row, before) for before, row in pairwise(rows)])
    chain = tuple(replace(rule, lag=lags[rule.before]) for rule in chain)
    batch = Batch(
        operations=(*first.operations, *rows),
        rules=(*first.rules, *begins, *chain),
        findings=board_too_wide(blank, display, shop),
    )
    return each_width(fed_between(batch, out, shop), blank, _width, shop)


_WHY_NOW = {
    "strip edge": WHY_EDGE_AFTER_FACE,
    "strip thickness": WHY_THICKNESS_AFTER_EDGE,
    "resaw": WHY_TRUED_FIRST,
    "face": WHY_BARK_FIRST,
    "edge": WHY_EDGE_AFTER_FACE,
    "thickness": WHY_THICKNESS_AFTER_EDGE,
    "width": WHY_WIDTH_AFTER_THICKNESS,
    "second edge": WHY_SECOND_EDGE,
}
"""Why a deed comes after the one before it."""


def _why_now(row: Operation, before: Operation) -> str:
    if before.kind == "rough thickness":
        return WHY_RESTED
    return WHY_THICKNESS_AFTER_EDGE if row.kind == "rough thickness" else _WHY_NOW[row.kind]


def _in_its_time(
    row: Operation, blank: Blank, rest: int, out: OutOfBoards | None, shop: Shop
) -> tuple[Operation, ...]:
    """Return the planing to thickness with what keeps the wood straight; other deeds as they are.

    It is planed all but the last of it, and rests for so many tenths of a minute.
    """
    if row.kind != "thickness":
        return (row,)
    if not rest:
        told = both_faces(blank) if out is not None and row.station == PLANER else ()
        return (replace(row, details=(*row.details, *told)),)
    nearly = replace(blank, thickness=blank.to_thickness + LEFT + shop.allowances["facing"])
    last = _thickness(nearly, shop)
    if out is not None:
        last = _with_extra(last, replace(out, blank=nearly), shop)
    rested = replace(blank, thickness=blank.to_thickness + LEFT)
    last = replace(last, details=(*last.details, looked_at(rested, shop)))
    return before_the_rest(last, row, blank, rest, shop), last


def _rest(blank: Blank, out: OutOfBoards | None, shop: Shop) -> int:
    """Return how many tenths all pieces rest that do; without boards only as the notes say."""
    if out is not None:
        return max(out.rests.values(), default=0)
    told = blank.part.rested or 0
    # How thick a board will be is not known, so that no rule says whether it rests.
    thick, to = blank.thickness, blank.to_thickness
    return rest_of(thick, to, shop, straight=False, known=True, told=told)


def _spared(out: OutOfBoards) -> frozenset[str]:
    """Return the kinds of deeds that planed wood needs no more; leaves are planed in any case."""
    spared = set[str]()
    if not out.trued and out.leaves == 1:
        spared.add("face")
    if not out.planed and out.leaves == 1:
        spared.add("thickness")
    if not out.ripped:
        spared |= {"edge", "width"}
    return frozenset(spared)


@dataclass(frozen=True, slots=True)
class _End:
    """An operation that something waits for, why, and how many tenths of a minute after it."""

    id: str
    why: str
    lag: int = 0

    def then(self, name: str) -> Rule:
        return Rule(self.id, name, self.why, self.lag)


@dataclass(frozen=True, slots=True)
class _Start:
    """What comes before the first true surface of a piece; `ends` are what that waits for."""

    operations: tuple[Operation, ...]
    rules: tuple[Rule, ...]
    ends: tuple[_End, ...]


def _from_any_board(blank: Blank, shop: Shop, tail: str = "") -> _Start:
    """Return the cuts out of boards that nobody has laid out."""
    rips, why_rips = rough_ripped(blank, shop)
    rows = [_with_size(_rough_length(blank, shop), blank, shop), *rips]
    rows = [replace(row, id=f"{row.id}{tail}") for row in rows]
    return _Start(tuple(rows), chained(rows, why_rips), (_End(rows[-1].id, WHY_FACE_AFTER_RIP),))


def _from_layouts(out: OutOfBoards, strips: Strips | None, shop: Shop) -> _Start:
    """Return what the first deed waits for, with the cuts of what there is no wood for yet."""
    ends = tuple(_End(name, WHY_AFTER_BOARD) for name in out.freed)
    if out.lacking is None:
        return _Start((), (), ends)
    missing = out.lacking if strips is None else strips.of(out.lacking)
    lacking = _from_any_board(missing, shop, TO_BUY)
    return _Start(lacking.operations, lacking.rules, (*ends, *lacking.ends))


def _resawn(first: _Start, strips: Strips, out: OutOfBoards | None, shop: Shop) -> _Start:
    """Return the start of leaves: of their strips, which are trued and sawn apart."""
    leaves = resawn(strips, shop)
    rows = (*strips.trued(out, shop), leaves)
    begins = tuple(end.then(rows[0].id) for end in first.ends)
    chain = chained(rows, [_WHY_NOW[row.kind] for row in rows[1:]])
    end = _End(leaves.id, WHY_STICKERED, leaves.after_tenths)
    return _Start((*first.operations, *rows), (*first.rules, *begins, *chain), (end,))


def _with_extra(row: Operation, out: OutOfBoards, shop: Shop) -> Operation:
    """Return a deed with the spares and test pieces that go through it as well."""
    if not out.extra:
        return row
    thick = out.thinnest if row.kind in {"face", "edge"} else out.blank.thickness
    more = replace(out.blank, count=out.blank.count + out.extra, thickness=thick)
    made = _AGAIN[row.kind](more, shop)
    also = f"With them: {spoken(out.extra, 'spare or test piece', 'spares and test pieces')}"
    return replace(row, tenths=made.tenths, details=(*row.details, (also,)))


def _with_size(row: Operation, blank: Blank, shop: Shop) -> Operation:
    details = row.details
    if blank.each > 1:
        ganged = (
            f"Each blank makes {blank.each}: short parts stay together, so that the planer bites "
            "deeper at two ends only"
        )
        details = (*details, (ganged,))
    shortest = shortest_fed(shop)
    if gang_length(blank.part, blank.each, shop) < shortest:
        longer: Detail = (
            "Left long until it is cut to length: what is planed and ripped by machine has to be ",
            shortest,
            " long",
        )
        details = (*details, longer)
    return replace(row, rough=(blank.length, blank.width, blank.thickness), details=details)


def _rough_length(blank: Blank, shop: Shop) -> Operation:
    # Half the width at a time: a wide board is turned over, and its rough end may be uneven
    # (common practice).
    half = Piece(blank.length, blank.width / 2, blank.thickness)
    why_not = why_not_at_mitre_saw(half, shop)
    station, rate, why = "mitre saw", "rough crosscut", why_not or ()
    if why_not is not None:
        station, rate = "bench", "hand crosscut"
    elif why_not_at_mitre_saw(replace(half, width=blank.width), shop) is not None:
        why = (
            "Wider than the saw cuts: turn the board over, and meet the cut from its other side",
        )
    return operation(
        blank,
        "rough length",
        station,
        setting_of.known_to(shop, station, (setting_of.angle("angle"),)),
        worked(shop, rate, each=blank.count),
        f"Cut {pieces_of(blank)} from the boards, to chalk marks",
        why=why,
    )


def _thickness(blank: Blank, shop: Shop) -> Operation:
    off = blank.thickness - shop.allowances["facing"] - blank.to_thickness
    bites = off / shop.allowances["planer_pass"]
    passes = max(1, -(-bites.numerator // bites.denominator))
    metres = blank.length * blank.count / METRE
    exact = worked(shop, "planer pass", each=blank.count, per_metre=metres) * passes
    sentence = f"Plane {pieces_of(blank)} to thickness"
    piece = Piece(blank.length, blank.width, blank.thickness)
    why_not = why_not_planed(piece, blank.to_thickness, shop)
    if why_not is not None:
        by_hand = f"{sentence} by hand, to a gauge line"
        exact = hand_planed(blank, off, shop)
        return operation(blank, "thickness", "bench", (), exact, by_hand, why=why_not)
    settings = setting_of.known_to(
        shop, PLANER, (setting_of.plain("thickness", blank.to_thickness),)
    )
    said = f"{sentence}, all in one go"
    row = operation(blank, "thickness", PLANER, settings, exact, said, Hold("F", None, None))
    return replace(row, details=(_test_piece(shop),))


def _test_piece(shop: Shop) -> Detail:
    at_least = shop.allowances["test_piece"]
    return ("Send a test piece along, at least ", at_least, " long: joints are tried on it")


def _width(blank: Blank, shop: Shop) -> Operation:
    metres = blank.length * blank.count / METRE
    # The staves of a panel are wide enough whatever the panel comes to.
    waits = None if blank.staves else blank.part.waits_for("width")
    measured = "measured " if waits is not None else ""
    sentence = f"Rip {pieces_of(blank)} to {measured}width"
    piece = Piece(blank.length, blank.width, blank.to_thickness)
    why_not = why_not_ripped(piece, blank.sawn_width, shop)
    if why_not is not None:
        row = operation(
            blank,
            "width",
            "bench",
            (),
            worked(shop, "joint edge", each=blank.count, per_metre=metres) * shop.by_hand,
            f"Saw and plane {pieces_of(blank)} to {measured}width, to a gauge line",
            why=why_not,
        )
        return replace(row, details=(*row.details, *setting_of.by_formula(waits)))
    settings = through_cuts.rip_settings(blank.to_thickness, blank.sawn_width, "E", shop)
    settings = setting_of.waiting(settings, "fence", waits)
    exact = worked(shop, "rip at table saw", each=blank.count, per_metre=metres)
    hold = Hold("F", "E", None)
    return operation(blank, "width", "table saw", settings, exact, sentence, hold)


_AGAIN = {
    "bark": bark_off,
    "face": face,
    "edge": edge,
    "thickness": _thickness,
    "width": _width,
    "second edge": second_edge,
}
