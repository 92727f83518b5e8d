"""Last sanding, easing and coats (TRADE D); glue faces stay bare where a coat comes before glue."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.operations import setting_of
from dryfit.operations.batch import Batch
from dryfit.operations.early_finish import left_out
from dryfit.operations.gluing import lag_of
from dryfit.operations.members import all_copies, assembly_named, glued_copies, outermost
from dryfit.operations.minutes import SQUARE_METRE, tenths, worked
from dryfit.operations.sanding import eased, grit_rules, sanded
from dryfit.operations.staging import WHY_SAND_WHEN_CUT
from dryfit.placing.model import Coating, Model
from dryfit.plan.operation import Operation, Rule, Work
from dryfit.shop.shop import FinishProduct, Shop

MINUTE = 10
USUAL_COATS = 2
USUAL_RECOAT = 24 * 60 * MINUTE
FINISH_BENCH = "finish bench"

WHY_SAND_CURED = "a joint sanded while the glue is soft is a step when it is hard"
WHY_EASE_LAST = "edges are reference edges until nothing is measured from them any more"
WHY_COAT_SANDED = "a coat shows every scratch that is left"
WHY_COAT_CURED = "damp from the glue has left the wood by then"
WHY_RECOAT = "the coat before has to be dry enough to be rubbed down"
WHY_COAT_BEFORE = "the notes want it finished before the glue-up"
WHY_COAT_FITTED = "a coat thickens what has to fit: the fit is proved on bare wood"


@dataclass(frozen=True, slots=True)
class Schedule:
    """What is laid on: product, coats, and tenths between them."""

    product: str
    coats: int
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
    subjects = model.coatings or _bare_subjects(model)
    schedule, findings = _schedule(model, shop)
    operations: list[Operation] = []
    rules: list[Rule] = []
    for coating in subjects:
        rows = _surface_rows(coating, model, shop)
        operations += rows
        rules += grit_rules(tuple(rows[:-1]))
        rules.append(Rule(rows[-2].id, rows[-1].id, WHY_EASE_LAST))
        rules += _before_sanding(coating, rows[0], model, glue_ups, last_cuts)
        if schedule is None or coating not in model.coatings:
            continue
        spared = left_out(coating.subject, coating.copies, model)
        coats = _coats(coating, schedule, subjects, spared, shop)
        operations += coats
        rules.append(Rule(rows[-1].id, coats[0].id, WHY_COAT_SANDED))
        rules += _coat_rules(coating, coats, schedule, model, glue_ups)
    return Batch(tuple(operations), tuple(rules), findings=findings)


def hardened(model: Model, shop: Shop) -> tuple[str, int]:
    """Return the id ending of the last coat and the tenths until it has hardened, or nothing."""
    schedule, _ = _schedule(model, shop)
    if schedule is None:
        return "", 0
    return f" / coat {schedule.coats}", schedule.recoat


def _schedule(model: Model, shop: Shop) -> tuple[Schedule | None, tuple[Diagnostic, ...]]:
    finish = model.finish
    if finish is None:
        return None, ()
    known: FinishProduct | None = shop.finishes.get(finish.product)
    coats = finish.coats or (known.coats if known is not None else USUAL_COATS)
    recoat = known.recoat if known is not None else USUAL_RECOAT
    if finish.apart is not None:
        recoat = finish.apart * MINUTE
    found: tuple[Diagnostic, ...] = ()
    if known is None and (finish.coats is None or finish.apart is None):
        found = (
            Diagnostic(
                "finish-unknown",
                Severity.WARNING,
                f"the shop file knows no finish `{finish.product}`: {coats} coats a day apart are "
                "taken for granted",
                finish.span,
                hints=(Hint("write coats and hours apart, or add the product to the shop file"),),
            ),
        )
    return Schedule(finish.product, coats, recoat), found


def _bare_subjects(model: Model) -> tuple[Coating, ...]:
    """Return what is sanded when no finish is wanted: outermost assemblies and loose parts."""
    glued = glued_copies(model)
    rows = [
        Coating(each.name, all_copies(each, model), Fraction(0), (), None, each.span)
        for each in outermost(model)
    ]
    for part in model.parts:
        loose = tuple(copy.name for copy in part.copies if copy.name not in glued)
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


def _coats(
    coating: Coating, schedule: Schedule, subjects: tuple[Coating, ...], spared: str, shop: Shop
) -> tuple[Operation, ...]:
    """Return the coats; setting out and cleaning are shared by what is coated in one visit."""
    shared = sum(other.before == coating.before for other in subjects)
    area = coating.area / SQUARE_METRE
    setting_out = worked(shop, "coat", each=1) / shared
    spread = worked(shop, "coat", per_square_metre=area)
    rub = worked(shop, "rub down", per_square_metre=area)
    mask = worked(shop, "mask", each=len(coating.masks))
    rows = []
    for number in range(1, schedule.coats + 1):
        exact = setting_out + spread + (rub if number > 1 else mask)
        group = f"coat {number} before {coating.before}" if coating.before else f"coat {number}"
        rows.append(
            Operation(
                id=f"{coating.subject} / coat {number}",
                kind="coat",
                station=FINISH_BENCH,
                part=coating.subject,
                settings=setting_of.known_to(
                    shop, FINISH_BENCH, (setting_of.named("product", schedule.product),)
                ),
                work=(Work(coating.subject, coating.copies, (), None, ()),),
                tenths=tenths(exact),
                sentence=_coat_sentence(coating, schedule, number) + spared,
                after_tenths=schedule.recoat,
                together=group,
                splittable=False,
                check="no runs and no dry places against the light",
            )
        )
    return tuple(rows)


def _coat_sentence(coating: Coating, schedule: Schedule, number: int) -> str:
    if number > 1:
        laid = f"coat {number} of {schedule.product} on the {coating.subject}"
        return f"Rub down lightly, then lay {laid}"
    masked = "tape the glue faces, then " if coating.masks else ""
    text = f"{masked}lay the first coat of {schedule.product} on the {coating.subject}, all faces"
    return text[0].upper() + text[1:]


def _coat_rules(
    coating: Coating,
    coats: tuple[Operation, ...],
    schedule: Schedule,
    model: Model,
    glue_ups: Mapping[str, Operation],
) -> list[Rule]:
    rules = [
        Rule(before.id, after.id, WHY_RECOAT, schedule.recoat) for before, after in pairwise(coats)
    ]
    glued = glue_ups.get(coating.subject)
    if glued is not None:
        rules.append(Rule(glued.id, coats[0].id, WHY_COAT_CURED, lag_of(glued, "finish")))
    if coating.before is None:
        return rules
    for assembly in model.assemblies:
        if coating.before not in {assembly.stage, assembly.name}:
            continue
        glue = glue_ups[assembly.name]
        rules.append(Rule(coats[-1].id, glue.id, WHY_COAT_BEFORE, schedule.recoat))
        if set(coating.copies) & set(all_copies(assembly, model)):
            rules.append(Rule(f"{assembly.name} / dry fit", coats[0].id, WHY_COAT_FITTED))
    return rules
