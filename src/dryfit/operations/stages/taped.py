"""Strips of the first tapers are taped back, so that a part with tapers all round lies flat again.

Of four tapers the third leans on the face opposite, and the fourth lies on one beside it, that are
tapered by then (common practice).
"""

from __future__ import annotations

from dryfit.operations.batch import Batch
from dryfit.operations.cut import Cut
from dryfit.operations.cuts.cutting import Joinery
from dryfit.operations.cuts.tapers import lies_on_strips
from dryfit.operations.minutes import tenths, worked
from dryfit.operations.shapes import TAPER
from dryfit.operations.words import some_of
from dryfit.placing.model import Model, Part
from dryfit.plan.operation import Operation, Rule, Work
from dryfit.shop.shop import Shop

TAPE_BACK = "tape back"
WHY_STRIPS_FIRST = "the strips are what the first tapers took off"
WHY_LIES_FLAT = "only with the strips in their places the part lies flat"

Rows = list[tuple[Operation, tuple[Cut, ...]]]


def taped(joinery: Joinery, model: Model, shop: Shop) -> Batch:
    """Return the taping of each part whose later tapers lie or lean on earlier ones."""
    parts = {part.name: part for part in model.parts}
    rows: dict[str, Rows] = {}
    for operation, cuts in zip(joinery.operations, joinery.cuts, strict=True):
        if operation.kind == TAPER and operation.station != "bench":
            rows.setdefault(operation.part, []).append((operation, cuts))
    batches = [_taped(parts[name], own, shop) for name, own in rows.items()]
    return Batch(
        tuple(operation for batch in batches for operation in batch.operations),
        tuple(rule for batch in batches for rule in batch.rules),
    )


def _taped(part: Part, own: Rows, shop: Shop) -> Batch:
    on_strips = [row for row in own if any(lies_on_strips(cut.site) for cut in row[1])]
    if not on_strips:
        return Batch()
    turn = min(cuts[0].turn for _, cuts in on_strips)
    before = [row for row in own if row[1][0].turn < turn]
    strips = sum(len(cut.site.copies) for _, cuts in before for cut in cuts)
    worked_on = {copy.name for _, cuts in before for cut in cuts for copy in cut.site.copies}
    names = tuple(copy.name for copy in part.copies if copy.name in worked_on)
    deed = Operation(
        id=f"{part.name} / tape strips",
        kind=TAPE_BACK,
        station="bench",
        part=part.name,
        settings=(),
        work=(Work(part.name, names, (), None, ()),),
        tenths=tenths(worked(shop, "tape strip", each=strips)),
        sentence=f"Stick the strips that came off {some_of(part, len(names), None)} back where "
        "they were with double-sided tape, each on its own; take them off after the last taper",
        check="the part lies on the strips without rocking",
    )
    rules = [Rule(operation.id, deed.id, WHY_STRIPS_FIRST) for operation, _ in before]
    rules += [Rule(deed.id, operation.id, WHY_LIES_FLAT) for operation, _ in on_strips]
    return Batch((deed,), tuple(rules))
