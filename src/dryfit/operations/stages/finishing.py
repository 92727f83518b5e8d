"""Last sanding, easing and coats (TRADE D); glue faces stay bare where a coat comes before glue."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.operations import setting_of
from dryfit.operations.batch import Batch
from dryfit.operations.coats import Coat, coat_id, coats_of
from dryfit.operations.gluing.glue_patches import tape_details
from dryfit.operations.gluing.hardening import hard_first
from dryfit.operations.gluing.levelling import level_rules
from dryfit.operations.members import all_copies, assembly_named, glued_copies, outermost
from dryfit.operations.minutes import SQUARE_METRE, tenths, worked
from dryfit.operations.stages.coat_order import coat_rules, glued_before, one_surface_at_a_time
from dryfit.operations.stages.early_finish import left_out
from dryfit.operations.stages.holes_first import holes_before
from dryfit.operations.stages.sanding import eased, grit_rules, sanded
from dryfit.operations.stages.staging import WHY_SAND_WHEN_CUT
from dryfit.operations.words import listed
from dryfit.placing.model import Coating, Model
from dryfit.plan.operation import Detail, Operation, Rule, Work
from dryfit.shop.finishes import USUAL_COATS
from dryfit.shop.shop import Shop

FINISH_BENCH = "finish bench"

WHY_SAND_CURED = "a joint sanded while the glue is soft is a step when it is hard"
WHY_EASE_LAST = "edges are reference edges until nothing is measured from them any more"


def finished(
    model: Model,
    glue_ups: Mapping[str, Operation],
    last_cuts: Mapping[str, tuple[str, ...]],
    shop: Shop,
) -> Batch:
    """Return sanding, easing and coats of every subject that is finished together.

    `glue_ups` by assembly name; `last_cuts` by part.  Findings: ``finish-unknown``.
    """
    operations: list[Operation] = []
    rules: list[Rule] = []
    eased_of: dict[str, Operation] = {}
    whole = [each for each in model.coatings if not each.surfaces]
    for index, coating in enumerate(sanded_subjects(model)):
        rows = _surface_rows(coating, model, shop)
        operations += rows
        rules += grit_rules(tuple(rows[:-1]))
        rules.append(Rule(rows[-2].id, rows[-1].id, WHY_EASE_LAST))
        rules += _before_sanding(coating, rows[0], model, glue_ups, last_cuts)
        rules += level_rules(coating, rows[:1], model)
        eased_of |= dict.fromkeys(coating.copies, rows[-1])
        if index >= len(whole):
            continue
        coats = _coats(whole[index], model, shop)
        operations += coats
        rules += coat_rules(whole[index], model, glue_ups, eased_of, shop)
        rules += level_rules(whole[index], coats[:1], model)
    for coating in (each for each in model.coatings if each.surfaces):
        coats = _coats(coating, model, shop)
        operations += coats
        rules += coat_rules(coating, model, glue_ups, eased_of, shop)
        rules += level_rules(coating, coats[:1], model)
    rules += one_surface_at_a_time(model, shop)
    return Batch(tuple(operations), tuple(rules), findings=_unknown(model, shop))


def last_coats(model: Model, shop: Shop) -> tuple[tuple[str, int], ...]:
    """Return the last coat of every subject, by its id, with the tenths until it has hardened."""
    found = []
    for coating in model.coatings:
        coats = coats_of(coating, shop)
        found.append((coat_id(coating, len(coats)), coats[-1].recoat))
    return tuple(found)


def _unknown(model: Model, shop: Shop) -> tuple[Diagnostic, ...]:
    words = dict.fromkeys(each for coating in model.coatings for each in coating.products)
    return tuple(
        Diagnostic(
            "finish-unknown",
            Severity.WARNING,
            f"the shop file knows no finish `{each.product}`: {each.coats or USUAL_COATS} coats "
            "a day apart are taken for granted",
            each.span,
            hints=(Hint("write coats and hours apart, or add the product to the shop file"),),
        )
        for each in words
        if each.product not in shop.finishes and (each.coats is None or each.apart is None)
    )


def sanded_subjects(model: Model) -> tuple[Coating, ...]:
    """Return what is sanded as one: what is coated all over, in order, then what stays bare.

    Surfaces that get a finish of their own are sanded with the rest of their parts, and what stays
    bare inside a coated assembly is sanded with that.
    """
    whole = tuple(each for each in model.coatings if not each.surfaces)
    done = {name for each in whole for name in each.copies}
    rows: list[Coating] = []
    for each in whole:
        assembly = assembly_named(model, each.subject)
        inside = () if assembly is None else all_copies(assembly, model)
        bare = tuple(name for name in inside if name not in done)
        done.update(bare)
        rows.append(replace(each, copies=(*each.copies, *bare)))
    return (*rows, *_bare_subjects(model, done))


def _bare_subjects(model: Model, done: set[str]) -> tuple[Coating, ...]:
    """Return what is sanded with nothing that is coated: outermost assemblies and loose parts."""
    glued = glued_copies(model)
    rows: list[Coating] = []
    for each in outermost(model):
        copies = tuple(name for name in all_copies(each, model) if name not in done)
        if copies:
            rows.append(Coating(each.name, copies, Fraction(0), (), None, each.span))
    for part in model.parts:
        names = (copy.name for copy in part.copies if copy.name not in glued)
        loose = tuple(name for name in names if name not in done)
        if loose and not part.made:
            rows.append(Coating(part.name, loose, Fraction(0), (), None, None))
    return tuple(rows)


def _surface_rows(coating: Coating, model: Model, shop: Shop) -> list[Operation]:
    parts = [model.part_of(name) for name in coating.copies]
    area = sum((2 * p.length * (p.width + p.thickness) for p in parts), Fraction(0))
    if assembly_named(model, coating.subject) is not None:
        area *= 1 - shop.sanding.inside
    edges = sum((4 * part.length for part in parts), Fraction(0))
    spared = left_out(coating.subject, coating.copies, model)
    what = ("sand", f"Sand the {coating.subject}, along the grain{spared}")
    return [
        *sanded(coating.subject, what, coating.copies, area, shop),
        eased(coating.subject, coating.copies, edges, shop),
    ]


def _before_sanding(
    coating: Coating,
    first: Operation,
    model: Model,
    glue_ups: Mapping[str, Operation],
    last_cuts: Mapping[str, tuple[str, ...]],
) -> list[Rule]:
    waits = hard_first(glued_before(coating, model), "level", glue_ups, model)
    rules = [Rule(glued, first.id, WHY_SAND_CURED, lag) for glued, lag in waits]
    if coating.subject in glue_ups:
        return rules
    names = dict.fromkeys(model.part_of(name).name for name in coating.copies)
    cuts = (cut for name in names for cut in last_cuts.get(name, ()))
    return [*rules, *(Rule(cut, first.id, WHY_SAND_WHEN_CUT) for cut in cuts)]


def _coats(coating: Coating, model: Model, shop: Shop) -> tuple[Operation, ...]:
    """Return the coats; setting out and cleaning are shared by what is coated in one visit."""
    spared = left_out(coating.subject, coating.copies, model) + _kept_bare(coating)
    own = (coating.before, coating.visit)
    shared = sum((each.before, each.visit) == own for each in model.coatings)
    area = coating.area / SQUARE_METRE
    setting_out = worked(shop, "coat", each=1) / shared
    spread = worked(shop, "coat", per_square_metre=area)
    rub = worked(shop, "rub down", per_square_metre=area)
    mask = worked(shop, "mask", each=len(coating.masks))
    coats = coats_of(coating, shop)
    rows = []
    for number, coat in enumerate(coats, start=1):
        exact = setting_out + spread + (rub if number > 1 else mask)
        group = f"coat {number} before {coating.before}" if coating.before else f"coat {number}"
        group += f", visit {coating.visit + 1}" if coating.visit else ""
        product = setting_of.named("product", coat.product)
        rows.append(
            Operation(
                id=coat_id(coating, number),
                kind="coat",
                station=FINISH_BENCH,
                part=coating.subject,
                settings=setting_of.known_to(shop, FINISH_BENCH, (product,)),
                work=(Work(coating.subject, coating.copies, (), None, ()),),
                tenths=tenths(exact),
                sentence=_coat_sentence(coating, coats, number) + spared,
                after_tenths=coat.recoat,
                together=_group(group, coat, model),
                splittable=False,
                check="no runs and no dry places against the light",
                details=_before_the_first(coating, model) if number == 1 else (),
            )
        )
    return tuple(rows)


def _before_the_first(coating: Coating, model: Model) -> tuple[Detail, ...]:
    return (*tape_details(coating, model), *holes_before(coating, model))


def _group(group: str, coat: Coat, model: Model) -> str:
    # What gets the same coat of the same product is done in one visit.
    products = {words.product for each in model.coatings for words in each.products}
    return group if len(products) == 1 else f"{group} of {coat.product}"


def _kept_bare(coating: Coating) -> str:
    return f"; tape off {listed(coating.spared)}" if coating.spared else ""


def _coat_sentence(coating: Coating, coats: tuple[Coat, ...], number: int) -> str:
    product = coats[number - 1].product
    own = [index for index, coat in enumerate(coats, start=1) if coat.product == product]
    where = f"{coating.surfaces} of the" if coating.surfaces else "the"
    if number > 1 and number > own[0]:
        laid = f"coat {own.index(number) + 1} of {product} on {where} {coating.subject}"
        return f"Rub down lightly, then lay {laid}"
    begun = "rub down lightly, then " if number > 1 else ""
    begun += "tape the glue faces, then " if coating.masks and number == 1 else ""
    faces = "" if coating.surfaces or coating.spared else ", all faces"
    which = "the first coat" if len(own) > 1 or number == 1 else "the coat"
    text = f"{begun}lay {which} of {product} on {where} {coating.subject}{faces}"
    return text[0].upper() + text[1:]
