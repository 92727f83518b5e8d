"""Shelves are sanded before their housings are cut to them (TRADE C4.1).

A housing is as wide as the shelf is thick.  What sanding takes off the shelf afterwards is a gap.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from dryfit.operations.batch import Batch, joined
from dryfit.operations.cuts.cutting import Joinery
from dryfit.operations.stages.sanding import grit_rules, sanded
from dryfit.operations.words import all_of
from dryfit.placing.model import Model, Part
from dryfit.plan.operation import Operation, Rule
from dryfit.shop.shop import Shop

WHY_SAND_BEFORE_HOUSING = "a shelf sanded after its housing was fitted rattles in it"
WHY_SAND_WHEN_LONG = "the part is sanded when it is sawn to size"


def housed_copies(model: Model) -> frozenset[str]:
    """Return the copies that go into housings; what waits for a measurement is not known yet."""
    return frozenset(
        joint.guest
        for joint in model.joints
        if joint.kind == "housing" and not model.part_of(joint.guest).measures
    )


def shelves_sanded(model: Model, joinery: Joinery, lengths: dict[str, str], shop: Shop) -> Batch:
    """Return the sanding of all parts that go into housings, before these are cut.

    `lengths` names the operation that cuts each part to length.
    """
    housed = housed_copies(model)
    return joined(
        _sanded(part, names, joinery, lengths, shop)
        for part in model.parts
        if not part.made
        and (names := tuple(copy.name for copy in part.copies if copy.name in housed))
    )


def _sanded(
    part: Part, names: tuple[str, ...], joinery: Joinery, lengths: dict[str, str], shop: Shop
) -> Batch:
    area = 2 * part.length * part.width * len(names)
    what = ("sand faces", f"Sand both faces of {all_of(part)}, along the grain")
    rows = sanded(part.name, what, names, area, shop)
    housings = (
        operation.id
        for operation, cuts in zip(joinery.operations, joinery.cuts, strict=True)
        if operation.kind == "housing"
        and any(cut.site.feature.mate == part.name for cut in cuts)
        and operation.part != part.name
    )
    return Batch(
        rows,
        (
            *_when_long(part, lengths, rows),
            *grit_rules(rows),
            *(Rule(rows[-1].id, housing, WHY_SAND_BEFORE_HOUSING) for housing in housings),
        ),
    )


def _when_long(part: Part, lengths: Mapping[str, str], rows: Sequence[Operation]) -> Iterator[Rule]:
    """Yield what the sanding waits for; a sheet that has its part's size is sawn nowhere."""
    if part.name in lengths:
        yield Rule(lengths[part.name], rows[0].id, WHY_SAND_WHEN_LONG)
