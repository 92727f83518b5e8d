"""What the band saw leaves of curves and tapers is brought to the line at the bench."""

from __future__ import annotations

from fractions import Fraction

from dryfit.operations.batch import Batch
from dryfit.operations.cut import Cut
from dryfit.operations.cuts.curves import CHECK as CURVE_FAIR
from dryfit.operations.cuts.cutting import Joinery
from dryfit.operations.cuts.tapers import BAND_SAW
from dryfit.operations.cuts.tapers import CHECK as TAPER_TRUE
from dryfit.operations.minutes import METRE, tenths, worked
from dryfit.operations.shapes import CURVE, KINDS, WHY_EDGE_AFTER_SHAPE
from dryfit.operations.words import some_of
from dryfit.placing.model import Model, Part
from dryfit.plan.operation import Operation, Rule, Work
from dryfit.shop.shop import Shop

FAIR = "fair"
WHY_TO_LINE = "the saw is kept a hair outside the line, and leaves its marks"


def faired(joinery: Joinery, model: Model, shop: Shop) -> Batch:
    """Return the fairing of the shapes of each part that the band saw cuts, after the last of them.

    Tapers and curves of one part are two deeds.
    """
    rows: dict[tuple[str, str], list[tuple[Operation, tuple[Cut, ...]]]] = {}
    for operation, cuts in zip(joinery.operations, joinery.cuts, strict=True):
        if operation.kind in KINDS and operation.station == BAND_SAW:
            rows.setdefault((operation.part, operation.kind), []).append((operation, cuts))
    parts = {part.name: part for part in model.parts}
    operations: list[Operation] = []
    rules: list[Rule] = []
    for (name, kind), sawn in rows.items():
        fair = _fair(parts[name], kind, [cut for _, cuts in sawn for cut in cuts], shop)
        operations.append(fair)
        rules += [Rule(operation.id, fair.id, WHY_TO_LINE) for operation, _ in sawn]
        rules += [
            Rule(fair.id, edge.id, WHY_EDGE_AFTER_SHAPE)
            for edge, cuts in zip(joinery.operations, joinery.cuts, strict=True)
            if edge.part == name and edge.kind == "profile" and not cuts[0].site.feature.after
        ]
    return Batch(tuple(operations), tuple(rules))


def _fair(part: Part, kind: str, cuts: list[Cut], shop: Shop) -> Operation:
    curved = kind == CURVE
    worked_on = {copy.name for cut in cuts for copy in cut.site.copies}
    names = tuple(copy.name for copy in part.copies if copy.name in worked_on)
    metres = sum(_length(cut) * len(cut.site.copies) for cut in cuts) / METRE
    manner = (
        " with a spokeshave, from the ends to the middle, then with paper"
        if curved
        else ", from the full end to the thin one"
    )
    return Operation(
        id=f"{part.name} / fair {kind}",
        kind=FAIR,
        station="bench",
        part=part.name,
        settings=(),
        work=(Work(part.name, names, (), None, ()),),
        tenths=tenths(worked(shop, "fair", each=len(names), per_metre=metres)),
        sentence=f"{'Fair the curves' if curved else 'Plane the tapers'} on "
        f"{some_of(part, len(names), None)} to their lines{manner}",
        check=CURVE_FAIR if curved else TAPER_TRUE,
    )


def _length(cut: Cut) -> Fraction:
    (start, end), (near, far) = cut.site.feature.along, cut.site.feature.across
    return max(end - start, far - near)
