"""Last sanding, easing and coats (TRADE D); glue faces stay bare where a coat comes before glue."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.operations import setting_of
from dryfit.operations.batch import Batch
from dryfit.operations.early_finish import left_out
from dryfit.operations.glue_patches import tape_details
from dryfit.operations.gluing import lag_of
from dryfit.operations.levelling import level_rules
from dryfit.operations.members import all_copies, assembly_named, glued_copies, outermost
from dryfit.operations.minutes import SQUARE_METRE, tenths, worked
from dryfit.operations.sanding import eased, grit_rules, sanded
from dryfit.operations.staging import WHY_SAND_WHEN_CUT
from dryfit.operations.words import listed
from dryfit.piece.declared import Coats
from dryfit.placing.model import Coating, Model
from dryfit.plan.operation import Operation, Rule, Work
from dryfit.shop.finishes import USUAL_COATS, finish_named
from dryfit.shop.shop import Shop

MINUTE = 10
FINISH_BENCH = "finish bench"

WHY_SAND_CURED = "a joint sanded while the glue is soft is a step when it is hard"
WHY_EASE_LAST = "edges are reference edges until nothing is measured from them any more"
WHY_COAT_SANDED = "a coat shows every scratch that is left"
WHY_COAT_CURED = "damp from the glue has left the wood by then"
WHY_RECOAT = "the coat before has to be dry enough to be rubbed down"
WHY_TURNED = "a face has to be dry before the piece is turned over on it"
WHY_COAT_BEFORE = "the notes want it finished before the glue-up"
WHY_COAT_FITTED = "a coat thickens what has to fit: the fit is proved on bare wood"


@dataclass(frozen=True, slots=True)
class Coat:
    """One coat: its product, and the tenths until the next or until it has hardened."""

    product: str
    recoat: int


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
    for coating in sanded_subjects(model):
        rows = _surface_rows(coating, model, shop)
        operations += rows
        rules += grit_rules(tuple(rows[:-1]))
        rules.append(Rule(rows[-2].id, rows[-1].id, WHY_EASE_LAST))
        rules += _before_sanding(coating, rows[0], model, glue_ups, last_cuts)
        rules += level_rules(coating, rows[:1], model)
        eased_of |= dict.fromkeys(coating.copies, rows[-1])
        if coating not in model.coatings:
            continue
        coats = _coats(coating, model, shop)
        operations += coats
        rules += _coat_rules(coating, model, glue_ups, eased_of, shop)
        rules += level_rules(coating, coats[:1], model)
    for coating in (each for each in model.coatings if each.surfaces):
        coats = _coats(coating, model, shop)
        operations += coats
        rules += _coat_rules(coating, model, glue_ups, eased_of, shop)
        rules += level_rules(coating, coats[:1], model)
    rules += _one_surface_at_a_time(model, shop)
    return Batch(tuple(operations), tuple(rules), findings=_unknown(model, shop))


def last_coats(model: Model, shop: Shop) -> tuple[tuple[str, int], ...]:
    """Return the last coat of every subject, by its id, with the tenths until it has hardened."""
    found = []
    for coating in model.coatings:
        coats = coats_of(coating, shop)
        found.append((_coat_id(coating, len(coats)), coats[-1].recoat))
    return tuple(found)


def coats_of(coating: Coating, shop: Shop) -> tuple[Coat, ...]:
    """Return the coats of a subject in their order, one product after the other."""
    return tuple(coat for words in coating.products for coat in _product(words, shop))


def _product(words: Coats, shop: Shop) -> tuple[Coat, ...]:
    finish = finish_named(shop, words.product)
    recoat = finish.recoat if words.apart is None else words.apart * MINUTE
    return (Coat(words.product, recoat),) * (words.coats or finish.coats)


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
    """Return what is sanded as one: what is coated all over, then what stays bare.

    Surfaces that get a finish of their own are sanded with the rest of their parts.
    """
    whole = tuple(each for each in model.coatings if not each.surfaces)
    coated = {name for each in whole for name in each.copies}
    return (*whole, *_bare_subjects(model, coated))


def _bare_subjects(model: Model, coated: set[str]) -> tuple[Coating, ...]:
    """Return what is sanded but not coated all over: outermost assemblies and loose parts."""
    glued = glued_copies(model)
    rows: list[Coating] = []
    for each in outermost(model):
        copies = tuple(name for name in all_copies(each, model) if name not in coated)
        # What stays bare inside a coated assembly is sanded with the assembly.
        if copies and not coated & set(all_copies(each, model)):
            rows.append(Coating(each.name, copies, Fraction(0), (), None, each.span))
    for part in model.parts:
        names = (copy.name for copy in part.copies if copy.name not in glued)
        loose = tuple(name for name in names if name not in coated)
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
    glued = glue_ups.get(coating.subject)
    if glued is not None:
        return [Rule(glued.id, first.id, WHY_SAND_CURED, lag_of(glued, "level"))]
    names = dict.fromkeys(model.part_of(name).name for name in coating.copies)
    return [
        Rule(cut, first.id, WHY_SAND_WHEN_CUT) for name in names for cut in last_cuts.get(name, ())
    ]


def _coat_id(coating: Coating, number: int) -> str:
    surfaces = coating.surfaces.replace("the ", "")
    return f"{coating.subject} / coat {number}" + (f" / {surfaces}" if surfaces else "")


def _coats(coating: Coating, model: Model, shop: Shop) -> tuple[Operation, ...]:
    """Return the coats; setting out and cleaning are shared by what is coated in one visit."""
    spared = left_out(coating.subject, coating.copies, model) + _kept_bare(coating)
    shared = sum(each.before == coating.before for each in model.coatings)
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
        product = setting_of.named("product", coat.product)
        rows.append(
            Operation(
                id=_coat_id(coating, number),
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
                details=tape_details(coating, model) if number == 1 else (),
            )
        )
    return tuple(rows)


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


def _coat_rules(
    coating: Coating,
    model: Model,
    glue_ups: Mapping[str, Operation],
    eased_of: Mapping[str, Operation],
    shop: Shop,
) -> list[Rule]:
    coats = coats_of(coating, shop)
    ids = [_coat_id(coating, number) for number in range(1, len(coats) + 1)]
    rules = [
        Rule(before, after, WHY_RECOAT, coat.recoat)
        for (before, after), coat in zip(pairwise(ids), coats, strict=False)
    ]
    ready = dict.fromkeys(eased_of[name].id for name in coating.copies if name in eased_of)
    rules += [Rule(eased, ids[0], WHY_COAT_SANDED) for eased in ready]
    glued = _glued_before(coating, model, glue_ups)
    if glued is not None:
        rules.append(Rule(glued.id, ids[0], WHY_COAT_CURED, lag_of(glued, "finish")))
    if coating.before is None:
        return rules
    for assembly in model.assemblies:
        if coating.before not in {assembly.stage, assembly.name}:
            continue
        glue = glue_ups[assembly.name]
        rules.append(Rule(ids[-1], glue.id, WHY_COAT_BEFORE, coats[-1].recoat))
        if set(coating.copies) & set(all_copies(assembly, model)):
            rules.append(Rule(f"{assembly.name} / dry fit", ids[0], WHY_COAT_FITTED))
    return rules


def _one_surface_at_a_time(model: Model, shop: Shop) -> Iterator[Rule]:
    """Yield that single surfaces are coated before the rest, each when the one before is dry."""
    single = [each for each in model.coatings if each.surfaces]
    in_order = (*single, *(each for each in model.coatings if not each.surfaces))
    for index, first in enumerate(single):
        coats = coats_of(first, shop)
        later = (each for each in in_order[index + 1 :] if set(each.copies) & set(first.copies))
        for then in later:
            last = _coat_id(first, len(coats))
            yield Rule(last, _coat_id(then, 1), WHY_TURNED, coats[-1].recoat)


def _glued_before(
    coating: Coating, model: Model, glue_ups: Mapping[str, Operation]
) -> Operation | None:
    """Return the glue-up after which a subject is coated: its own, or the one that takes it in."""
    own = glue_ups.get(coating.subject)
    if own is not None or coating.before is not None:
        return own
    for assembly in outermost(model):
        if set(coating.copies) <= set(all_copies(assembly, model)):
            return glue_ups.get(assembly.name)
    return None
