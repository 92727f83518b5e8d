"""Damages of boards and of the cuts that part them, before anything is milled.

A plan without boards is laid out by hand first (`boarded`); where a piece lies follows from the
cuts alone, told again here by itself.
"""

import random
from collections.abc import Callable
from dataclasses import dataclass, replace
from fractions import Fraction

from tests.rehearsal_damage.boarded import boarded
from tests.rehearsal_damage.hours import SHOP
from tests.rehearsal_damage.in_counting import left_out
from tests.rehearsal_damage.in_order import first_of
from tests.rehearsal_damage.kind import Damage, Kind, kind
from tests.rehearsal_damage.places import deeds, shuffled
from tests.rehearsal_damage.wanted import sizes

from dryfit.plan.operation import Operation
from dryfit.plan.plan import Plan
from dryfit.plan.sawing import BadZone, Becomes, BoardCut, SawnBoard
from dryfit.rehearsal.fault import Reason
from dryfit.rehearsal.goal import Goal, Range, WantedPart
from dryfit.shop import Shop

Rect = tuple[Range, Range]
Sawing = Callable[[Plan, Goal, random.Random], Plan | None]
ZERO, ONE = Fraction(0), Fraction(1)


@dataclass(frozen=True, slots=True)
class Blank:
    """A side of a cut that becomes something, and where it lies in its board."""

    cut: BoardCut
    side: str
    becomes: Becomes
    board: SawnBoard
    rect: Rect


def cuts_of(plan: Plan) -> list[tuple[Operation, BoardCut]]:
    """Every cut of a board with the operation that makes it, in the order of the steps."""
    return [(op, cut) for _, _, op in deeds(plan) for cut in op.board_cuts]


def blanks_of(plan: Plan) -> list[Blank]:
    """All blanks that cuts free and that become something of the piece."""
    boards = {board.label: board for board in plan.boards}
    places: dict[tuple[str, int | None, str], Rect] = {
        (label, None, ""): ((ZERO, board.length), (ZERO, board.width))
        for label, board in boards.items()
    }
    found = []
    for _, cut in cuts_of(plan):
        along, across = places[cut.board, cut.after, cut.side]
        way = along if cut.saw == "crosscut" else across
        near, far = (way[0], way[0] + cut.at), (way[0] + cut.at + cut.kerf, way[1])
        for side, limits, becomes in (("first", near, cut.first), ("rest", far, cut.rest)):
            rect = (limits, across) if cut.saw == "crosscut" else (along, limits)
            places[cut.board, cut.number, side] = rect
            if becomes is not None and becomes.pieces:
                found.append(Blank(cut, side, becomes, boards[cut.board], rect))
    return found


def recut(plan: Plan, old: BoardCut, *new: BoardCut) -> Plan:
    """The plan with a cut replaced by others in its place, or left out."""

    def changed(op: Operation) -> Operation:
        if old not in op.board_cuts:
            return op
        rows = (new if cut == old else (cut,) for cut in op.board_cuts)
        return replace(op, board_cuts=tuple(cut for row in rows for cut in row))

    return replace(
        plan,
        steps=tuple(
            replace(step, operations=tuple(map(changed, step.operations))) for step in plan.steps
        ),
    )


def reboarded(plan: Plan, label: str, /, **changes: object) -> Plan:
    """The plan with a board that is otherwise."""
    boards = (replace(b, **changes) if b.label == label else b for b in plan.boards)  # type: ignore[arg-type]
    return replace(plan, boards=tuple(boards))


def renamed(plan: Plan, blank: Blank, becomes: Becomes | None) -> Plan:
    """The plan in which the side of a cut becomes something else."""
    new = {blank.side: becomes}
    cut = next(cut for _, cut in cuts_of(plan) if _key(cut) == _key(blank.cut))
    return recut(plan, cut, replace(cut, **new))  # type: ignore[arg-type]


def _key(cut: BoardCut) -> tuple[str, int]:
    return cut.board, cut.number


def on_boards(damage: Sawing) -> Damage:
    """The damage, done to a plan that has boards."""

    def of_plan(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
        laid = boarded(plan, goal, SHOP)
        return damage(laid, goal, chance) if laid.boards else None

    of_plan.__name__ = damage.__name__
    return of_plan


def blank_over_a_bad_place(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """A knot lies in the middle of a blank."""
    for blank in shuffled(chance, blanks_of(plan)):
        along, across = blank.rect
        middle = (sum(along, ZERO) / 2, sum(across, ZERO) / 2)
        zone = BadZone(
            (middle[0] - ONE, middle[0] + ONE), (middle[1] - ONE, middle[1] + ONE), "a knot"
        )
        return reboarded(plan, blank.board.label, zones=(*blank.board.zones, zone))
    return None


def kerf_forgotten(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """What is left counts the wood that the saw turns to dust."""
    after = {(cut.board, cut.after) for _, cut in cuts_of(plan) if cut.side == "rest"}
    for _, cut in shuffled(chance, cuts_of(plan)):
        if _key(cut) in after and cut.kerf:
            return recut(plan, cut, replace(cut, kerf=ZERO))
    return None


def wood_of_another_timber(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    for blank in shuffled(chance, blanks_of(plan)):
        part = _part(goal, blank.becomes.pieces[0])
        timbers = {each.timber for each in goal.parts} - {None, part and part.timber}
        if part is not None and part.timber is not None and blank.board.timber is not None:
            other = chance.choice(sorted(timbers, key=str) or ["ebony"])
            return reboarded(plan, blank.board.label, timber=other)
    return None


def board_too_thin(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    """The board is as thick as the finished part: nothing can be planed off."""
    for blank in shuffled(chance, blanks_of(plan)):
        thick = _thick(goal, blank)
        if thick is not None and blank.board.rough and blank.becomes.leaves == 1:
            return reboarded(plan, blank.board.label, thickness=thick)
    return None


def _warped(
    plan: Plan, goal: Goal, chance: random.Random, word: str, share: Callable[[Blank], Fraction]
) -> Plan | None:
    """A board so warped that a blank keeps more of it than there is to plane off."""
    for blank in shuffled(chance, blanks_of(plan)):
        thick = _thick(goal, blank)
        if thick is None or blank.becomes.leaves > 1 or blank.board.sheet:
            continue
        over = blank.board.thickness - thick
        return reboarded(plan, blank.board.label, **{word: (over + ONE) / share(blank)})
    return None


def _along(blank: Blank) -> Fraction:
    low, high = blank.rect[0]
    return (high - low) / blank.board.length


def _across(blank: Blank) -> Fraction:
    low, high = blank.rect[1]
    return (high - low) / blank.board.width


def cupped_too_deep(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    return _warped(plan, goal, chance, "cup", lambda blank: _across(blank) ** 2)


def bowed_too_deep(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    return _warped(plan, goal, chance, "bow", lambda blank: _along(blank) ** 2)


def twisted_too_far(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    return _warped(plan, goal, chance, "twist", lambda blank: _along(blank) * _across(blank) / 2)


def cut_before_its_parent(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """A piece is cut that nothing has parted from the board yet."""
    rows = cuts_of(plan)
    makers = {_key(cut): op.id for op, cut in rows}
    pairs = (
        (makers[cut.board, cut.after], op.id)
        for op, cut in rows
        if cut.after is not None and makers.get((cut.board, cut.after), op.id) != op.id
    )
    return first_of(plan, chance, pairs)


def cuts_in_another_order(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """One after the other along a board, the later cut comes first."""
    for op, cut in shuffled(chance, cuts_of(plan)):
        parent = next((p for p in op.board_cuts if p.number == cut.after), None)
        if parent is not None and parent.board == cut.board:
            swapped = recut(plan, parent, cut)
            later = [number for number, each in enumerate(op.board_cuts) if each == cut][-1]
            return _replaced(swapped, op.id, later, parent)
    return None


def _replaced(plan: Plan, name: str, at: int, cut: BoardCut) -> Plan:
    def changed(op: Operation) -> Operation:
        if op.id != name:
            return op
        rows = op.board_cuts
        return replace(op, board_cuts=(*rows[:at], cut, *rows[at + 1 :]))

    return replace(
        plan,
        steps=tuple(
            replace(step, operations=tuple(map(changed, step.operations))) for step in plan.steps
        ),
    )


def two_blanks_swapped(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    """A longer part, or a wider one, is to come out of a blank that has not its size."""
    found = blanks_of(plan)
    for one in shuffled(chance, found):
        for other in shuffled(chance, found):
            part, rect = _part(goal, other.becomes.pieces[0]), one.rect
            if part is None or one.becomes.leaves > 1 or other.becomes.leaves > 1:
                continue
            want = sizes(part.copies[0])
            own = (rect[0][1] - rect[0][0], rect[1][1] - rect[1][0])
            short = want[0] > own[0] or (not part.staves and want[1] > own[1])
            if short and one.board.grain and other.board.sheet == one.board.sheet:
                return renamed(renamed(plan, one, other.becomes), other, one.becomes)
    return None


def raw_end_used(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """Hardly anything is sawn off the raw end, and all that comes next has checks in it."""
    trim = SHOP.allowances["end_trim"]
    starts = {blank.board.label: blank.rect[0][0] for blank in reversed(blanks_of(plan))}
    for _, cut in shuffled(chance, cuts_of(plan)):
        first = cut.after is None and cut.saw == "crosscut" and cut.first is None
        board = next(board for board in plan.boards if board.label == cut.board)
        if first and board.rough and starts.get(cut.board, ZERO) - cut.at + ONE < trim:
            return recut(plan, cut, replace(cut, at=ONE))
    return None


def copy_without_a_blank(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    for blank in shuffled(chance, blanks_of(plan)):
        if blank.becomes.leaves == 1:
            fewer = replace(blank.becomes, pieces=blank.becomes.pieces[:-1])
            return renamed(plan, blank, fewer)
    return None


def copy_with_two_blanks(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    found = shuffled(chance, blanks_of(plan))
    for one in found:
        for other in found:
            if one.becomes.pieces != other.becomes.pieces:
                twice = (*other.becomes.pieces, one.becomes.pieces[0])
                return renamed(plan, other, replace(other.becomes, pieces=twice))
    return None


def cut_beyond_the_piece(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    boards = {board.label: board for board in plan.boards}
    for op, cut in shuffled(chance, cuts_of(plan)):
        if cut.saw == "crosscut" and all(setting.axis != "stop" for setting in op.settings):
            return recut(plan, cut, replace(cut, at=boards[cut.board].length + ONE))
    return None


def two_cuts_of_one_number(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    rows = cuts_of(plan)
    for _, cut in shuffled(chance, rows):
        rest = [each for _, each in rows if each.board == cut.board and each != cut]
        if rest:
            return recut(plan, cut, replace(cut, number=chance.choice(rest).number))
    return None


def piece_cut_twice(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """A piece is taken in hand again that is no longer there."""
    for _, cut in shuffled(chance, cuts_of(plan)):
        number = 1 + max(each.number for _, each in cuts_of(plan))
        again = replace(cut, number=number, first=None, rest=None)
        return recut(plan, cut, cut, again)
    return None


def blank_cut_in_two(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """What is sawn out already is sawn once more."""
    for blank in shuffled(chance, blanks_of(plan)):
        cut, number = blank.cut, 1 + max(each.number for _, each in cuts_of(plan))
        more = replace(cut, number=number, after=cut.number, at=cut.at / 2, first=None, rest=None)
        more = replace(more, side="first" if blank.side == "first" else "rest")
        return recut(plan, cut, cut, more)
    return None


def rip_of_another_width(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """The fence of the saw stands at another size than what falls."""
    for op, cut in shuffled(chance, cuts_of(plan)):
        if cut.saw == "rip" and any(setting.axis == "fence" for setting in op.settings):
            return recut(plan, cut, replace(cut, at=cut.at - ONE))
    return None


def crosscut_along_a_fence(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """A board is crosscut by a deed that rips."""
    for op, cut in shuffled(chance, cuts_of(plan)):
        if cut.saw == "rip" and op.kind == "rip":
            return recut(plan, cut, replace(cut, saw="crosscut"))
    return None


def two_blanks_of_one_letter(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    found = shuffled(chance, blanks_of(plan))
    for one in found:
        for other in found:
            if one.becomes.letter != other.becomes.letter:
                return renamed(plan, one, replace(one.becomes, letter=other.becomes.letter))
    return None


def sheet_of_another_thickness(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    for blank in shuffled(chance, blanks_of(plan)):
        if blank.board.sheet:
            thick = blank.board.thickness + 3 * ONE
            return reboarded(plan, blank.board.label, thickness=thick)
    return None


def strip_too_thin_for_its_leaves(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    """No kerf lies between the leaves, and nothing is left to plane."""
    for blank in shuffled(chance, blanks_of(plan)):
        thick = _thick(goal, blank)
        if thick is not None and blank.becomes.leaves > 1:
            thin = blank.becomes.leaves * thick
            return reboarded(plan, blank.board.label, thickness=thin)
    return None


def never_resawn(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    if all(blank.becomes.leaves == 1 for blank in blanks_of(plan)):
        return None
    return left_out(plan, chance, lambda op: op.kind == "resaw")


def strip_not_trued(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """A strip is resawn with a rough face along the fence, or on a rough edge."""
    return left_out(plan, chance, lambda op: op.kind in {"strip face", "strip edge"})


def planed_in_one_go(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """Wood of which much is planed off has no rest between."""
    return left_out(plan, chance, lambda op: op.kind == "rough thickness")


def longer_than_it_is_ripped(
    plan: Plan, goal: Goal, shop: Shop, chance: random.Random
) -> Shop | None:
    """The band saw takes nothing that is as short as a piece that is ripped."""
    laid = boarded(plan, goal, shop)
    longs = [
        (at, rect[0][1] - rect[0][0])
        for op, cut in cuts_of(laid)
        if cut.saw == "rip" and op.station == "band saw"
        for at, rect in ((op.station, blank.rect) for blank in blanks_of(laid) if blank.cut == cut)
    ]
    if not longs:
        return None
    name, long = chance.choice(longs)
    station = shop.stations[name]
    limits = {**station.limits, "shortest": long + ONE}
    stations = {**shop.stations, name: replace(station, limits=limits)}
    return replace(shop, stations=stations)


def _part(goal: Goal, piece: str) -> WantedPart | None:
    owner = piece.partition(" stave ")[0]
    for part in goal.parts:
        if any(copy.name == owner for copy in part.copies):
            return part
    return None


def _thick(goal: Goal, blank: Blank) -> Fraction | None:
    part = _part(goal, blank.becomes.pieces[0])
    return None if part is None else sizes(part.copies[0])[2]


KINDS: tuple[Kind, ...] = (
    Kind(
        "longer than it is ripped",
        on_boards(lambda plan, _goal, _chance: plan),
        frozenset({Reason.MACHINE}),
        poorer=longer_than_it_is_ripped,
    ),
    *(
        kind(on_boards(damage), *reasons)
        for damage, reasons in (
            (sheet_of_another_thickness, (Reason.WOOD,)),
            (strip_too_thin_for_its_leaves, (Reason.WOOD, Reason.SIZE)),
            (never_resawn, (Reason.COUNT, Reason.ORDER)),
            (strip_not_trued, (Reason.REFERENCE,)),
            (planed_in_one_go, (Reason.WAIT,)),
            (blank_over_a_bad_place, (Reason.WOOD,)),
            (kerf_forgotten, (Reason.SIZE,)),
            (wood_of_another_timber, (Reason.WOOD,)),
            (board_too_thin, (Reason.WOOD, Reason.SIZE)),
            (cupped_too_deep, (Reason.WOOD,)),
            (bowed_too_deep, (Reason.WOOD,)),
            (twisted_too_far, (Reason.WOOD,)),
            (cut_before_its_parent, (Reason.ORDER,)),
            (cuts_in_another_order, (Reason.ORDER,)),
            (two_blanks_swapped, (Reason.SIZE, Reason.WOOD)),
            (raw_end_used, (Reason.WOOD,)),
            (copy_without_a_blank, (Reason.COUNT, Reason.ORDER)),
            (copy_with_two_blanks, (Reason.COUNT,)),
            (cut_beyond_the_piece, (Reason.SIZE,)),
            (two_cuts_of_one_number, (Reason.COUNT,)),
            (piece_cut_twice, (Reason.COUNT,)),
            (blank_cut_in_two, (Reason.COUNT,)),
            (rip_of_another_width, (Reason.SETTING,)),
            (crosscut_along_a_fence, (Reason.MACHINE,)),
            (two_blanks_of_one_letter, (Reason.COUNT,)),
        )
    ),
)
