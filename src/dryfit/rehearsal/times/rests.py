"""Wood lies on stickers before it is planed true: of which much was planed off, or that is resawn.

TRADE A3.7 and A8.3.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction

from dryfit.geometry.frame import THICKNESS
from dryfit.plan.plan import Plan
from dryfit.plan.sawing import SawnBoard
from dryfit.rehearsal.at_machines.milling import DEEDS
from dryfit.rehearsal.fault import Fault, Reason
from dryfit.rehearsal.goal import Goal, WantedPart
from dryfit.rehearsal.resting import wanted_rest
from dryfit.rehearsal.sawing.boards import made, owner_of
from dryfit.rehearsal.state import sizes_of
from dryfit.rehearsal.times.deeds import Deed
from dryfit.shop.resting import in_words
from dryfit.shop.shop import Shop


def rests(deeds: tuple[Deed, ...], plan: Plan, goal: Goal, shop: Shop) -> Iterator[Fault]:
    """Yield what is planed true too soon after it was planed close to it, and leaves too fresh."""
    parts = {copy.name: part for part in goal.parts for copy in part.copies}
    parts |= {strip.name: strip.part for strip in goal.strips}
    boards = boards_of_pieces(plan)
    for at, first in enumerate(deeds):
        if first.kind not in {"rough thickness", "resaw"}:
            continue
        for deed in deeds[at + 1 :]:
            names = [name for name in deed.touched & first.touched if owner_of(name) in parts]
            if first.kind == "resaw":
                wanted = [
                    shop.rests.resawn if (told := parts[owner_of(name)].rested) is None else told
                    for name in names
                    if deed.kind in DEEDS
                ]
            else:
                wanted = [_wanted(name, deed, parts, boards, goal, shop) for name in names]
            rest = max(wanted, default=0)
            if deed.begins < first.ends + rest:
                yield Fault(
                    Reason.WAIT,
                    f"{deed.operation.id} begins too soon after {first.operation.id}",
                    f"{in_words(rest)} between them",
                    deed.step.number,
                    deed.operation.id,
                )


def boards_of_pieces(plan: Plan) -> dict[str, SawnBoard]:
    """Return the board that each copy or stave comes out of, where the plan tells."""
    rows = {board.label: board for board in plan.boards}
    found = {name: board for board in plan.boards for name in made(board.becomes)}
    for step in plan.steps:
        for cut in (cut for operation in step.operations for cut in operation.board_cuts):
            names = (*made(cut.first), *made(cut.rest))
            found |= {name: rows[cut.board] for name in names if cut.board in rows}
    return found


def _wanted(
    name: str,
    deed: Deed,
    parts: Mapping[str, WantedPart],
    boards: Mapping[str, SawnBoard],
    goal: Goal,
    shop: Shop,
) -> int:
    """Return how long a piece rests before a deed, if that planes it to its thickness."""
    if deed.kind != "thickness":
        return 0
    part, board = parts[owner_of(name)], boards.get(name)
    if board is None:
        return part.rested or 0
    size = next((s.value for s in deed.operation.settings if s.axis == "thickness"), None)
    if not isinstance(size, Fraction):
        # By hand it is planed to a line; a stave is flattened once it is glued.
        thin = {strip.name: strip.sizes for strip in goal.strips}.get(name)
        size = (thin or sizes_of(part.copies[0]))[THICKNESS]
        size += shop.allowances["panel_flattening"] if part.staves else 0
    return wanted_rest(part, board, board.thickness, size, shop)
