"""Milling of all parts together: blanks, panels, lengths, marking."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from dryfit.operations.batch import Batch, joined
from dryfit.operations.boards.out_of_boards import OutOfBoards, outs_of
from dryfit.operations.boards.sawing import NO_BOARDS, sawn_boards
from dryfit.operations.cut import Cut
from dryfit.operations.cuts.cutting import Joinery
from dryfit.operations.lips.lipping import Lipped, as_core, lipped
from dryfit.operations.machine_limits import Piece
from dryfit.operations.milling.laying_out import WHY_MARK_AFTER_LENGTH, laid_out
from dryfit.operations.milling.lengths import cut_to_length, way_to_length
from dryfit.operations.milling.mill import TO_BUY, milled
from dryfit.operations.milling.panels import WHY_LENGTH_AFTER_WIDTH, glued_panels
from dryfit.operations.milling.plane_to_fit import WHY_PLANED_FIRST, WHY_SAWN_FIRST, planed_to_fit
from dryfit.operations.milling.widths import to_width, width_of
from dryfit.operations.stages.precedence import Chains
from dryfit.operations.words import all_of
from dryfit.placing.model import Model, Part
from dryfit.placing.strips import core_of, strip_parts
from dryfit.plan.operation import Operation, Rule
from dryfit.plan.sawing import SawnBoard
from dryfit.shop.shop import Shop
from dryfit.stock.blanks.as_sawn import as_sawn
from dryfit.stock.blanks.blank import Blank, blank_of, fed_length
from dryfit.stock.laid_out import LaidOut

WHY_FREED_FIRST = "it is cut to length from its rough length"
WHY_BROKEN_DOWN = "what is broken down is small enough for the saw, or for a guide across it"


@dataclass(frozen=True, slots=True)
class Sections:
    """The milling of all parts, what the cuts of each wait for, and the boards that are sawn.

    `lips` are the glue-ups of strips, whose glue has to be hard before they are cut.
    """

    batch: Batch
    chains: Chains
    boards: tuple[SawnBoard, ...] = ()
    lips: tuple[Operation, ...] = ()


def sections_of(
    model: Model, joinery: Joinery, shop: Shop, laid: LaidOut | None = None
) -> Sections:
    """Return rough board to marked part for every part that the maker mills."""
    wholes = tuple(as_sawn(part) for part in _with_strips(model, shop))
    sawing = NO_BOARDS if laid is None else sawn_boards(laid, model, shop)
    parts = tuple(_without(core_of(part), sawing.whole) for part in wholes)
    blanks = {part.name: blank_of(part, model, shop) for part in parts if part.stock != "sheet"}
    fed = {part.name: fed_length(part, model.display.unit, shop) for part in parts}
    outs: dict[str, OutOfBoards] = {}
    if laid is not None:
        outs = outs_of(blanks, laid, sawing.freed, model, shop)
        blanks |= {name: out.blank for name, out in outs.items()}
        fed |= {name: out.blank.length for name, out in outs.items()}
    ways = {part.name: way_to_length(part, fed[part.name], shop) for part in parts}
    batches: list[Batch] = [sawing.batch]
    glued: list[Operation] = []
    chains = Chains({}, {}, {})
    for whole, part in zip(wholes, parts, strict=True):
        if not part.copies:
            # Sheets that have the very size of their parts are sawn nowhere.
            batches.append(_marked(whole, _cuts_of(part, joinery), chains, shop))
            continue
        blank: Blank | None = blanks.get(part.name)
        freed = sawing.freed.get(part.name if blank is None else blank.subject, ())
        section = _section(part, blank, outs.get(part.name), freed, model, shop)
        each = blank.each if blank is not None else 1
        length = cut_to_length(part, ways[part.name], each, shop)
        # Planed wood that is used as it is has no section to be made, and is cut to length.
        last = section.operations[-1].id if section.operations else length.id
        chains.section[part.name] = last
        chains.length[part.name] = length.id
        rules = [Rule(last, length.id, WHY_LENGTH_AFTER_WIDTH)]
        if last == length.id:
            rules = [Rule(name, length.id, WHY_FREED_FIRST) for name in freed]
        sized = joined((section, Batch((length,), tuple(rules))))
        batches.append(as_core(sized, whole) if part.lips else sized)
        if part.lips:
            lip = _lipped(whole, chains, model, shop)
            batches.append(lip.batch)
            glued += lip.glued
            chains.section[part.name] = chains.length[part.name] = lip.last
        batches.append(_marked(whole, _cuts_of(part, joinery), chains, shop))
    return Sections(joined(batches), chains, sawing.boards, tuple(glued))


def _marked(part: Part, cuts: tuple[Cut, ...], chains: Chains, shop: Shop) -> Batch:
    """Return the planing to its opening of a part with its length, and its marking."""
    rows: list[Operation] = []
    rules: list[Rule] = []
    planed = planed_to_fit(part, shop)
    if planed is not None:
        rows.append(planed)
        rules.append(Rule(chains.length[part.name], planed.id, WHY_SAWN_FIRST))
        chains.section[part.name] = chains.length[part.name] = planed.id
    layout = laid_out(part, cuts, shop)
    if layout is not None:
        chains.layout[part.name] = layout.id
        rows.append(layout)
        why = WHY_MARK_AFTER_LENGTH if planed is None else WHY_PLANED_FIRST
        last = chains.length.get(part.name)
        rules += [Rule(last, layout.id, why)] if last is not None else []
    return Batch(tuple(rows), tuple(rules))


def _without(part: Part, whole: frozenset[str]) -> Part:
    """Return a part without the copies that nothing is sawn of."""
    return replace(part, copies=tuple(copy for copy in part.copies if copy.name not in whole))


def _with_strips(model: Model, shop: Shop) -> Iterator[Part]:
    """Yield what the maker mills, the strips that lip a part before it."""
    for part in model.parts:
        if not part.made:
            yield from strip_parts(part, shop.allowances) if part.lips else ()
            yield part


def _lipped(part: Part, chains: Chains, model: Model, shop: Shop) -> Lipped:
    strips = strip_parts(part, shop.allowances)
    return lipped(part, strips, chains.length, shop, outdoors=model.outdoors is not None)


def _cuts_of(part: Part, joinery: Joinery) -> tuple[Cut, ...]:
    return tuple(cut for cuts in joinery.cuts for cut in cuts if cut.site.part.name == part.name)


def _section(
    part: Part,
    blank: Blank | None,
    out: OutOfBoards | None,
    freed: tuple[str, ...],
    model: Model,
    shop: Shop,
) -> Batch:
    if blank is None:
        width = _from_sheet(part, shop, broken_down=bool(freed))
        return Batch((width,), tuple(Rule(name, width.id, WHY_BROKEN_DOWN) for name in freed))
    # A test piece may be sawn out of a board that has no room for the part itself.
    tail = TO_BUY if freed and not part.bookmatched else ""
    chain = milled(blank, model.display, shop, out, tail)
    if not blank.staves:
        return chain
    outdoors = model.outdoors is not None
    return joined((chain, glued_panels(blank, shop, outdoors=outdoors)))


def _from_sheet(part: Part, shop: Shop, *, broken_down: bool) -> Operation:
    out_of = "" if broken_down else " from the sheet"
    edge = "a factory edge, or one sawn straight," if broken_down else "a factory edge"
    what = f"{all_of(part)} to {width_of(part)}{out_of}"
    return to_width(
        part,
        Piece(part.length, part.width, part.thickness),
        shop,
        f"Rip {what}, {edge} at the fence",
        f"Saw {what}, with a straight edge as a guide",
        (("Measure the sheet: what goes into a groove is as thick as it measures",),),
    )
