"""Inside faces of a corner of fingers or tails are sanded before it is marked (TRADE B14, C1.4).

Whatever is taken off a face after its mate was marked from it is a gap in the joint.
"""

from __future__ import annotations

from collections.abc import Sequence

from dryfit.operations.batch import Batch
from dryfit.operations.deed_kinds import CORNER_CUTS, MILLING
from dryfit.operations.members import loose_copies, parts_of
from dryfit.placing.model import Assembly, Model
from dryfit.plan.operation import Operation, Rule

WHY_SAND_FIRST = "what sanding took off later would stand open in the joint"
WHY_TRUE_FIRST = "the faces are sanded when the part has its size"
_LAY_OUT = " / lay out"


def has_corners(assembly: Assembly, made: Batch, model: Model) -> bool:
    """Return whether loose parts of an assembly have their ends cut to fingers or tails."""
    return bool(_corner_cuts(assembly, made, model))


def without_corners(assembly: Assembly, made: Batch, model: Model) -> tuple[str, ...]:
    """Return the loose parts of an assembly that have no such ends."""
    cut = {each.part for each in _corner_cuts(assembly, made, model)}
    names = (part.name for part in parts_of(loose_copies(assembly, model), model))
    return tuple(name for name in names if name not in cut)


def sanded_first(
    assembly: Assembly, inside: Sequence[Operation], made: Batch, model: Model
) -> list[Rule]:
    """Return the rules that put the sanding of an inside between milling and the corner's cuts.

    `made` are the operations that make the parts, with their rules.  Parts of the assembly that
    have no such corner are sanded when nothing is cut from them any more, which others see to.
    """
    if not inside:
        return []
    rules: list[Rule] = []
    for cut in _corner_cuts(assembly, made, model):
        layout = f"{cut.part}{_LAY_OUT}"
        before = {rule.before for rule in made.rules if rule.after in {cut.id, layout}}
        kinds = {each.id: each.kind for each in made.operations}
        # Other joints are marked on the sanded faces, or cut before or after, as they like.
        milled = [each for each in sorted(before) if kinds.get(each) in MILLING]
        rules += [Rule(each, inside[0].id, WHY_TRUE_FIRST) for each in milled]
        rules.append(Rule(inside[-1].id, cut.id, WHY_SAND_FIRST))
        if layout in kinds:
            rules.append(Rule(inside[-1].id, layout, WHY_SAND_FIRST))
    return rules


def _corner_cuts(assembly: Assembly, made: Batch, model: Model) -> list[Operation]:
    names = {part.name for part in parts_of(loose_copies(assembly, model), model)}
    return [each for each in made.operations if each.kind in CORNER_CUTS and each.part in names]
