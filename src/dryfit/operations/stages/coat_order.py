"""When coats are laid: sanded wood, hard glue, a dry coat before, and nothing done on a wet one."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import pairwise

from dryfit.operations.coats import coat_id, coats_of
from dryfit.operations.gluing.hardening import hard_first
from dryfit.operations.members import (
    all_copies,
    all_inside,
    dry_fit_first,
    inner_assemblies,
    waits_for_measure,
)
from dryfit.placing.model import Assembly, Coating, Model
from dryfit.plan.operation import Operation, Rule
from dryfit.shop.shop import Shop

WHY_COAT_SANDED = "a coat shows every scratch that is left"
WHY_COAT_CURED = "damp from the glue has left the wood by then"
WHY_RECOAT = "the coat before has to be dry enough to be rubbed down"
WHY_TURNED = "a face has to be dry before the piece is turned over on it"
WHY_COAT_BEFORE = "the notes want it finished before the glue-up"
WHY_COAT_FITTED = "a coat thickens what has to fit: the fit is proved on bare wood"


def coat_rules(
    coating: Coating,
    model: Model,
    glue_ups: Mapping[str, Operation],
    eased_of: Mapping[str, Operation],
    shop: Shop,
) -> list[Rule]:
    """Return the rules between a subject's coats, what comes before them, and what must wait.

    `glue_ups` by assembly name; `eased_of` the last work on a copy's surfaces, by copy.
    """
    coats = coats_of(coating, shop)
    ids = [coat_id(coating, number) for number in range(1, len(coats) + 1)]
    rules = [
        Rule(before, after, WHY_RECOAT, coat.recoat)
        for (before, after), coat in zip(pairwise(ids), coats, strict=False)
    ]
    ready = dict.fromkeys(eased_of[name].id for name in coating.copies if name in eased_of)
    rules += [Rule(eased, ids[0], WHY_COAT_SANDED) for eased in ready]
    rules += [
        Rule(glued, ids[0], WHY_COAT_CURED, lag)
        for glued, lag in hard_first(glued_before(coating, model), "finish", glue_ups, model)
    ]
    if coating.before is None:
        return rules
    for assembly in model.assemblies:
        if coating.before in {assembly.stage, assembly.name}:
            glue = glue_ups[assembly.name]
            rules.append(Rule(ids[-1], glue.id, WHY_COAT_BEFORE, coats[-1].recoat))
    rules += _fitted_bare(coating, ids[0], model)
    return rules


def _fitted_bare(coating: Coating, first: str, model: Model) -> Iterator[Rule]:
    """Yield that whatever takes the copies in after their coats is tried dry before them.

    A whole that is tried only when what is in it has been glued comes after the coats anyway.
    """
    wanted = {each.name for each in model.assemblies if coating.before in {each.stage, each.name}}
    for assembly in (each for each in model.assemblies if each.name in coating.glued_later):
        taken_in = (
            inner
            for inner in inner_assemblies(assembly, model)
            if wanted & {inner.name, *all_inside(inner, model)}
        )
        glued_first = any(not dry_fit_first(assembly, inner, model) for inner in taken_in)
        if assembly.name in wanted or not (glued_first or waits_for_measure(assembly, model)):
            yield Rule(f"{assembly.name} / dry fit", first, WHY_COAT_FITTED)


def glued_before(coating: Coating, model: Model) -> tuple[Assembly, ...]:
    """Return the glue-ups after which a subject is sanded and coated, outer and inner ones.

    What no wish finishes early is coated in the whole that it is part of.
    """
    own = set(coating.copies)
    rows = tuple(
        each
        for each in model.assemblies
        if own & set(all_copies(each, model)) and each.name not in coating.glued_later
    )
    inside = {name for each in rows for name in all_inside(each, model)}
    return tuple(each for each in model.assemblies if each in rows or each.name in inside)


def one_surface_at_a_time(model: Model, shop: Shop) -> Iterator[Rule]:
    """Yield that single surfaces are coated before the rest, each when the one before is dry."""
    single = [each for each in model.coatings if each.surfaces]
    in_order = (*single, *(each for each in model.coatings if not each.surfaces))
    for index, first in enumerate(single):
        coats = coats_of(first, shop)
        later = (each for each in in_order[index + 1 :] if set(each.copies) & set(first.copies))
        for then in later:
            last = coat_id(first, len(coats))
            yield Rule(last, coat_id(then, 1), WHY_TURNED, coats[-1].recoat)
