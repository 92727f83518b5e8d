"""Milling of all parts together: blanks, panels, lengths, marking."""

from __future__ import annotations

from dataclasses import dataclass, replace

from dryfit.operations import setting_of
from dryfit.operations.batch import Batch, joined
from dryfit.operations.cut import Cut
from dryfit.operations.cutting import Joinery
from dryfit.operations.laying_out import WHY_MARK_AFTER_LENGTH, laid_out
from dryfit.operations.lengths import cut_to_length, way_to_length
from dryfit.operations.machine_limits import Piece, why_not_ripped
from dryfit.operations.milling import milled
from dryfit.operations.minutes import METRE, tenths, worked
from dryfit.operations.panels import WHY_LENGTH_AFTER_WIDTH, glued_panels
from dryfit.operations.plane_to_fit import WHY_PLANED_FIRST, WHY_SAWN_FIRST, planed_to_fit
from dryfit.operations.precedence import Chains
from dryfit.operations.through_cuts import rip_settings
from dryfit.operations.words import all_of
from dryfit.placing.model import Model, Part
from dryfit.plan.operation import Operation, Rule, Work
from dryfit.plan.setting import Hold
from dryfit.shop.shop import Shop
from dryfit.stock.as_sawn import as_sawn
from dryfit.stock.blanks import Blank, blank_of, fed_length


@dataclass(frozen=True, slots=True)
class Sections:
    """The milling of all parts, and what the cuts of each wait for."""

    batch: Batch
    chains: Chains


def sections_of(model: Model, joinery: Joinery, shop: Shop) -> Sections:
    """Return rough board to marked part for every part that the maker mills."""
    parts = tuple(as_sawn(part) for part in model.parts if not part.made)
    blanks = {part.name: blank_of(part, model, shop) for part in parts if part.stock != "sheet"}
    fed = {part.name: fed_length(part, model.display.unit, shop) for part in parts}
    ways = {part.name: way_to_length(part, fed[part.name], shop) for part in parts}
    batches: list[Batch] = []
    chains = Chains({}, {}, {})
    for part in parts:
        blank = blanks.get(part.name)
        section = _section(part, blank, model, shop)
        each = blank.each if blank is not None else 1
        length = cut_to_length(part, ways[part.name], each, shop)
        chains.section[part.name] = section.operations[-1].id
        chains.length[part.name] = length.id
        rules = [Rule(section.operations[-1].id, length.id, WHY_LENGTH_AFTER_WIDTH)]
        rows = [length]
        planed = planed_to_fit(part, shop)
        if planed is not None:
            rows.append(planed)
            rules.append(Rule(length.id, planed.id, WHY_SAWN_FIRST))
            chains.section[part.name] = chains.length[part.name] = planed.id
        layout = laid_out(part, _cuts_of(part, joinery), shop)
        if layout is not None:
            chains.layout[part.name] = layout.id
            rows.append(layout)
            why = WHY_MARK_AFTER_LENGTH if planed is None else WHY_PLANED_FIRST
            rules.append(Rule(rows[-2].id, layout.id, why))
        batches += [section, Batch(tuple(rows), tuple(rules))]
    return Sections(joined(batches), chains)


def _cuts_of(part: Part, joinery: Joinery) -> tuple[Cut, ...]:
    return tuple(cut for cuts in joinery.cuts for cut in cuts if cut.site.part.name == part.name)


def _section(part: Part, blank: Blank | None, model: Model, shop: Shop) -> Batch:
    if blank is None:
        return Batch((_from_sheet(part, shop),))
    chain = milled(blank, model.display, shop)
    if not blank.staves:
        return chain
    return joined((chain, glued_panels(blank, shop, outdoors=model.outdoors is not None)))


def _from_sheet(part: Part, shop: Shop) -> Operation:
    names = tuple(copy.name for copy in part.copies)
    metres = part.length * len(names) / METRE
    piece = Piece(part.length, part.width, part.thickness)
    why_not, waits = why_not_ripped(piece, part.width, shop), part.waits_for("width")
    measured = "measured " if waits is not None else ""
    measure = ("Measure the sheet: what goes into a groove is as thick as it measures",)
    by_formula = setting_of.by_formula(waits) if why_not is not None else ()
    row = Operation(
        id=f"{part.name} / width",
        kind="width",
        station="bench",
        part=part.name,
        settings=(),
        work=(Work(part.name, names, (), None, ()),),
        tenths=tenths(worked(shop, "hand crosscut", each=2 * len(names))),
        sentence=f"Saw {all_of(part)} to {measured}width from the sheet, with a straight edge as a "
        "guide",
        details=(*((why_not,) if why_not else ()), measure, *by_formula),
    )
    if why_not is not None:
        return row
    settings = rip_settings(part.thickness, part.width, "E", shop)
    settings = setting_of.waiting(settings, "fence", waits)
    return replace(
        row,
        station="table saw",
        settings=settings,
        work=(Work(part.name, names, (), Hold("F", "E", None), ()),),
        tenths=tenths(worked(shop, "rip at table saw", each=len(names), per_metre=metres)),
        sentence=f"Rip {all_of(part)} to {measured}width from the sheet, a factory edge at the "
        "fence",
    )
