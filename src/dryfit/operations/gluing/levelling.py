"""Laps are planed level before what they lie in is sanded and coated (TRADE C1)."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from dryfit.kinds.joints import is_lapped
from dryfit.operations.gluing.glue_up import lag_of
from dryfit.operations.members import all_copies, horned_parts, inner_assemblies, levelled
from dryfit.placing.model import Assembly, Coating, Model
from dryfit.plan.operation import Operation, Rule

WHY_LEVEL_LATER = "a joint levelled while the glue is soft is a step when it is hard"
WHY_LEVEL_FLAT = "the frame is levelled while it still lies flat on the bench"
WHY_LEVEL_FIRST = {
    "sand": "the plane leaves its marks, and the paper takes them out",
    "coat": "the plane would take the finish off again",
}


def level_rules(coating: Coating, rows: Iterable[Operation], model: Model) -> tuple[Rule, ...]:
    """Return the rules from levelling to the sanding and the coats in `rows` of one coating.

    What is finished before a glue-up does not wait for that one, nor for one that takes it in.
    """
    return tuple(
        Rule(f"{assembly.name} / level", row.id, WHY_LEVEL_FIRST[row.kind])
        for assembly in levelled(model)
        if set(all_copies(assembly, model)) & set(coating.copies)
        and assembly.name not in coating.glued_later
        for row in rows
    )


def level_inside(
    assembly: Assembly, glue_ups: Mapping[str, Operation], model: Model
) -> Iterator[Rule]:
    """Yield when what was glued before is made level: before this glue-up, or when that is hard.

    Laps and horns are levelled while the frame lies flat, and so is what the notes want cut in it.
    Pegs and tenons that stand out may wait for the last glue, unless a coat comes in between.
    """
    glue = glue_ups[assembly.name]
    direct = {inner.name for inner in inner_assemblies(assembly, model)}
    inside = set(all_copies(assembly, model))
    for inner in levelled(model):
        copies = set(all_copies(inner, model))
        if inner.name == assembly.name or not copies <= inside:
            continue
        level = f"{inner.name} / level"
        flat = _is_lapped(inner, model) or horned_parts(inner, model)
        if flat or _is_cut_later(inner, model):
            if inner.name in direct:
                yield Rule(level, glue.id, WHY_LEVEL_FLAT)
        elif not _coated_between(inner, copies, assembly, model):
            yield Rule(glue.id, level, WHY_LEVEL_LATER, lag_of(glue, "level"))


def _is_lapped(assembly: Assembly, model: Model) -> bool:
    return any(is_lapped(model.joint(name).kind) for name in assembly.joints)


def _is_cut_later(assembly: Assembly, model: Model) -> bool:
    names = {assembly.name, assembly.stage}
    return any(each.after in names for part in model.parts for each in part.features)


def _coated_between(inner: Assembly, copies: set[str], outer: Assembly, model: Model) -> bool:
    # The coat waits for the level already, and the outer glue-up for the coat.
    return any(
        outer.name in coating.glued_later
        and inner.name not in coating.glued_later
        and copies & set(coating.copies)
        for coating in model.coatings
    )
