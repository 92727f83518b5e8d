"""The driver: its functions are the list of stages, in order.

Every stage returns what it made, or None, and its findings; a later stage runs only when the
earlier ones found no error.  Heavy rooms are imported by the command that needs them.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from dryfit.checks import check_model
from dryfit.diagnostics import Findings, Severity, Source, once, worst
from dryfit.notes import Notes, parse
from dryfit.notes.tree import InventoryLine, PatternBlock
from dryfit.piece import Declared, declare
from dryfit.placing.model import Model
from dryfit.placing.place import place
from dryfit.plan.favour import USUAL
from dryfit.shop import Shop, read_shop, rips_marked_in, shop_assumptions

if TYPE_CHECKING:
    from dryfit.order import Watch
    from dryfit.plan.operation import WorkList
    from dryfit.plan.plan import Plan, Step
    from dryfit.plan.reasons import StepReasons
    from dryfit.planning.wished_move import Wished
    from dryfit.shop.taken_for_granted import Resting
    from dryfit.stock.laid_out import LaidOut

    Listing = Callable[[Mapping[str, str]], tuple[WorkList | None, Findings]]

Progress = Callable[[str], None]


@dataclass(frozen=True, slots=True)
class Checked:
    """What all commands begin with: the declared piece, the shop, and the Model if it stands.

    `laid` is how the boards are cut, once they are laid out; None where nothing is.
    """

    source: Source
    declared: Declared
    shop: Shop | None
    model: Model | None
    findings: Findings
    laid: LaidOut | None = None

    @property
    def failed(self) -> bool:
        """Return whether an error keeps the piece from being planned."""
        return worst(self.findings) is Severity.ERROR or self.model is None


def check(
    source: Source,
    shop_file: Path | None,
    environment: Mapping[str, str],
    *,
    start: date | int | None = None,
    folder: Path | None = None,
) -> Checked:
    """Read, declare, place and check: all that needs no search.

    `start` is the day on which work begins, in place of that of the shop file.  `folder` is where
    an inventory that the notes name is looked for: where the notes are, if it is not given.
    Raises ShopFileError when the shop file cannot be read.
    """
    patterns, in_patterns = _patterns(source, environment)
    notes, in_notes = parse(source, patterns)
    in_notes += in_patterns
    listed: tuple[Notes, ...] = ()
    if any(isinstance(line, InventoryLine) for line in notes.statements):
        from dryfit.stock.inventory import inventories

        listed, in_lists = inventories(notes, folder or Path(source.name).parent)
        in_notes += in_lists
    declared, in_piece = declare(notes, listed)
    shop, in_shop = read_shop(shop_file, environment)
    if shop is not None and start is not None:
        shop = replace(shop, start=start)
    findings = in_notes + in_piece + in_shop
    if shop is None:
        return Checked(source, declared, None, None, findings)
    shop = rips_marked_in(shop, declared.display.unit)
    if worst(in_notes + in_piece) is Severity.ERROR:
        # With a line missing, what would be found about the rest is likely to be false.
        return Checked(source, declared, shop, None, once(findings))
    model, in_place = place(declared, shop)
    findings += in_place
    if model is not None:
        glued, coated = len(model.assemblies), len(model.coatings)
        said = shop_assumptions(shop, glued=glued, coated=coated, resting=_resting(model, shop))
        model = replace(model, assumptions=model.assumptions + said)
    if model is not None and worst(findings) is not Severity.ERROR:
        findings += check_model(model, shop)
    return Checked(source, declared, shop, model, once(findings))


def _resting(model: Model, shop: Shop) -> Resting | None:
    """Return which wood may rest while it is milled, where the notes tell of wood."""
    if not (model.stock or model.yard or any(part.asked for part in model.parts)):
        return None
    from dryfit.stock.resting import resting

    return resting(model, shop)


def _patterns(
    source: Source, environment: Mapping[str, str]
) -> tuple[tuple[PatternBlock, ...], Findings]:
    if re.search(r"\bas\b", source.text, re.IGNORECASE) is None:
        return (), ()
    from dryfit.patterns import library

    return library(environment, source.text)


def shopped(checked: Checked) -> Model | None:
    """Return the model with the glues that its glue-ups are planned with on its shopping list.

    Whether a glue leaves time enough shows in the operations alone.  Where there are none, the
    glues stay those of the notes.
    """
    if checked.failed or checked.model is None or checked.shop is None:
        return checked.model
    from dryfit.operations import work_list
    from dryfit.placing.shopping import with_chosen_glues
    from dryfit.plan.operation import glues_of

    work, _ = work_list(checked.model, checked.shop)
    chosen = glues_of(work.operations) if work is not None else {}
    return with_chosen_glues(checked.model, chosen, checked.shop)


def laid_out(checked: Checked) -> tuple[Checked, LaidOut | None, Findings]:
    """Lay out the blanks on the boards; None where the notes tell of no wood, or have errors.

    What comes back in place of `checked` is planned: its panels may be glued from other staves
    where that saves wood.
    """
    model, shop = checked.model, checked.shop
    if checked.failed or model is None or shop is None or not (model.stock or model.yard):
        return checked, None, ()
    from dryfit.stock.laying.lay import lay_out_stock
    from dryfit.stock.telling.leaves_told import with_leaves_told
    from dryfit.stock.telling.too_little import too_little

    model, laid, findings = lay_out_stock(model, shop)
    if laid is not None:
        findings += too_little(laid, model, checked.findings)
        model = with_leaves_told(model, laid, shop)
    return replace(checked, model=model, laid=laid), laid, findings


def plan(
    checked: Checked, progress: Progress, favour: str = USUAL, watch: Watch | None = None
) -> tuple[Plan | None, Findings]:
    """Work out the operations and their order; None with the findings when there is none.

    `favour` is what the maker favours; `watch` looks on while the order is searched.
    """
    plans, findings = plan_each(checked, progress, (favour,), watch)
    return (plans[0] if plans else None), findings


def plan_each(
    checked: Checked, progress: Progress, favours: Sequence[str], watch: Watch | None = None
) -> tuple[tuple[Plan, ...], Findings]:
    """Work out the operations once, and an order for each favour; none where one has none."""
    from dryfit.planning import best_ways, make_plan

    if checked.failed or checked.model is None or checked.shop is None:
        return (), checked.findings
    progress("working out the operations")
    shop, listed = checked.shop, _listing(checked.model, checked, checked.shop)
    work, in_work = listed({})
    findings = checked.findings + in_work
    if work is None or worst(findings) is Severity.ERROR:
        return (), findings
    work = best_ways(work, lambda ways: listed(ways)[0], shop)
    plans: list[Plan] = []
    for favour in favours:
        which = f" ({favour})" if len(favours) > 1 else ""
        progress(f"ordering {len(work.operations)} operations{which}")
        made, in_plan = make_plan(checked.model, shop, work, favour=favour, watch=watch)
        findings += tuple(each for each in in_plan if each not in findings)
        if made is None or worst(findings) is Severity.ERROR:
            return (), findings
        plans.append(made)
    return tuple(plans), findings


def reasons(checked: Checked, made: Plan, steps: Sequence[Step]) -> dict[int, StepReasons]:
    """Return, by number, why these steps of a plan stand where they stand."""
    from dryfit.planning.reasons import reasoned, reasons_of

    work = _work_of(checked, made)
    if work is None or checked.shop is None:
        return {}
    known = reasoned(made, work, checked.shop)
    return {step.number: reasons_of(step, known) for step in steps}


def wished(checked: Checked, made: Plan, first: Step, then: Step) -> Wished | None:
    """Return what becomes of a plan when one of its steps is to be done before another."""
    from dryfit.planning.wished_move import wished_move

    work = _work_of(checked, made)
    if work is None or checked.model is None or checked.shop is None:
        return None
    return wished_move(checked.model, checked.shop, work, made, first, then)


def priced(checked: Checked, made: Plan) -> Plan:
    """Return a plan that also says what the ways of cutting take that it did not choose."""
    from dryfit.planning import priced as with_prices

    if checked.model is None or checked.shop is None:
        return made
    listed = _listing(checked.model, checked, checked.shop)
    rows = with_prices(made.alternatives, lambda ways: listed(ways)[0], checked.shop)
    return replace(made, alternatives=rows)


def _work_of(checked: Checked, made: Plan) -> WorkList | None:
    """Return the work list of a plan, with the ways that it takes."""
    from dryfit.plan.operation import ways_of

    if checked.model is None or checked.shop is None:
        return None
    listed = _listing(checked.model, checked, checked.shop)
    return listed(ways_of(made.alternatives))[0]


def _listing(model: Model, checked: Checked, shop: Shop) -> Listing:
    """Return what makes the work list, with a way by mating group in place of the rule's."""
    from dryfit.operations import work_list
    from dryfit.placing.drift import with_drifts

    drifting = with_drifts(model, checked.declared, shop)
    return lambda ways: work_list(drifting, shop, ways, checked.laid)


def rehearse(checked: Checked, made: Plan, progress: Progress) -> tuple[Plan | None, Findings]:
    """Play a plan before it is printed; None, and a finding for each fault, where it fails."""
    from dryfit.refusing import refusals
    from dryfit.rehearsal import rehearse as play
    from dryfit.rehearsing import goal_of

    if checked.model is None or checked.shop is None:
        return None, ()
    progress(f"rehearsing {len(made.steps)} steps")
    faults = play(made, goal_of(checked.model), checked.shop)
    if faults:
        return None, refusals(faults, made, checked.model)
    return made, ()
