"""The booklet as plain data, page by page in the order of use: what the templates print."""

from __future__ import annotations

import hashlib
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import PurePath
from types import MappingProxyType

from dryfit.booklet.bench import Bench
from dryfit.booklet.cautions import Caution, for_steps, for_visit, for_words
from dryfit.booklet.circumstances import circumstances
from dryfit.booklet.drawing import Svg
from dryfit.booklet.drawings import (
    apart_drawing,
    cover_drawing,
    part_drawings,
    time_line,
    uncut_parts,
)
from dryfit.booklet.finish_page import finishes, left_bare
from dryfit.booklet.front import AssumptionView, Cover, FindingView, assumptions, cover, warnings
from dryfit.booklet.labels import label
from dryfit.booklet.on_site import SiteView, site_view
from dryfit.booklet.parts_list import PartRow, part_rows
from dryfit.booklet.saving import SavingView, saving_view
from dryfit.booklet.site_cautions import site_words
from dryfit.booklet.spares import spare_wood
from dryfit.booklet.steps import StepView, spent, visit_steps
from dryfit.booklet.text import Say, Text, capital, closed
from dryfit.booklet.titles import titles
from dryfit.booklet.weight_words import weight_sentences
from dryfit.booklet.wood import WoodView, wood_view
from dryfit.booklet.wood_needed import WoodNeeded, boards_to_have, wood_needed
from dryfit.booklet.wording import clock
from dryfit.diagnostics import Findings
from dryfit.kinds.joints import glossary_of
from dryfit.kinds.part_words import parts_explained
from dryfit.placing.model import Model
from dryfit.placing.shopping import with_chosen_glues
from dryfit.plan.operation import glues_of
from dryfit.plan.plan import Plan, Visit
from dryfit.plan.reasons import StepReasons
from dryfit.plan.ways_as_text import weighed_ways
from dryfit.shop.shop import Shop
from dryfit.stock.laid_out import LaidOut


@dataclass(frozen=True, slots=True)
class VisitView:
    """One visit to a station: what is done there, and its steps."""

    number: int
    station: str
    title: str
    first: int
    last: int
    minutes: str
    starts: str
    steps: tuple[StepView, ...]
    cautions: tuple[Caution, ...]


@dataclass(frozen=True, slots=True)
class Supplies:
    """What is bought, who gets which finish and what none, wood, weight.

    `boards` are about how much wood to have, empty where boards are laid out.
    """

    hardware: tuple[tuple[int, str, str, str], ...]
    finishes: tuple[tuple[str, str], ...]
    bare: str
    wood: tuple[WoodNeeded, ...]
    boards: tuple[WoodNeeded, ...]
    spares: tuple[Text, ...]
    weight: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Booklet:
    """Everything that is printed."""

    id: str
    unit: str
    notes_file: str
    cover: Cover
    cautions: tuple[Caution, ...]
    assumptions: tuple[AssumptionView, ...]
    findings: tuple[FindingView, ...]
    circumstances: tuple[str, ...]
    ways: tuple[str, ...]
    notes: tuple[str, ...]
    shop: str
    hours: str
    parts: tuple[PartRow, ...]
    wood: WoodView | None
    apart: Svg | None
    drawn: tuple[Svg, ...]
    uncut: tuple[Svg, ...]
    hands: bool
    further_hands: tuple[str, ...]
    supplies: Supplies
    time_line: Svg | None
    saving: SavingView | None
    visits: tuple[VisitView, ...]
    glossary: tuple[tuple[str, str], ...]
    rehearsed: bool
    site: SiteView | None


def booklet_view(
    model: Model,
    plan: Plan,
    shop: Shop,
    findings: Findings,
    *,
    rehearsed: bool = False,
    reasons: Mapping[int, StepReasons] = MappingProxyType({}),
    laid: LaidOut | None = None,
) -> Booklet:
    """Return the booklet of a piece: its model, its plan, the shop, and what was found.

    `reasons` say by number why a step stands where it stands; without them that is left out, and
    so are the boards where none are `laid` out.
    """
    model = with_chosen_glues(
        model, glues_of(op for step in plan.steps for op in step.operations), shop
    )
    boards = () if laid is None else (board.label for board in laid.boards)
    bench = Bench(model, plan, shop, label(model, boards), Say(model.display), reasons)
    wood = None if laid is None else wood_view(laid, bench)
    headings = titles(plan, bench)
    return Booklet(
        id=booklet_id(model, plan),
        unit=model.display.unit,
        notes_file=PurePath(model.source.name).name,
        cover=cover(bench, cover_drawing(bench), () if wood is None else wood.short),
        cautions=(*for_steps(plan.steps), *for_words(site_words(model, findings))),
        assumptions=assumptions(model, plan),
        findings=warnings(findings),
        circumstances=circumstances(model, findings, plan),
        ways=tuple(closed(capital(way)) for way in weighed_ways(plan.alternatives)),
        notes=model.notes,
        shop=shop.name,
        hours=f"{_time(shop.opens)} to {_time(shop.closes)}",
        parts=part_rows(model, bench.labels, bench.say, shop),
        wood=wood,
        apart=apart_drawing(bench),
        drawn=part_drawings(bench),
        uncut=uncut_parts(bench),
        hands=any(len(part.hands()) > 1 for part in model.parts),
        further_hands=tuple(
            sorted({hand for part in model.parts for hand in part.hands()} - {"A", "B"})
        ),
        supplies=_supplies(bench, laid),
        time_line=time_line(bench),
        saving=saving_view(bench),
        visits=tuple(_visit(visit, headings[visit.number], bench) for visit in plan.visits()),
        glossary=(
            *glossary_of(joint.kind for joint in model.joints),
            *parts_explained(part.name for part in model.parts),
        ),
        rehearsed=rehearsed,
        site=None if model.place is None else site_view(model.place, bench),
    )


def booklet_id(model: Model, plan: Plan) -> str:
    """Return eight hexadecimal digits that change with the notes, the shop file and the order."""
    order = "\n".join(operation.id for step in plan.steps for operation in step.operations)
    words = f"{model.source.text}\0{plan.shop_sha256}\0{plan.favour}\0{order}"
    digest = hashlib.sha256(words.encode()).hexdigest()
    return f"{digest[:4]}-{digest[4:8]}"


def _visit(visit: Visit, title: str, bench: Bench) -> VisitView:
    return VisitView(
        number=visit.number,
        station=capital(visit.station),
        title=title,
        first=visit.steps[0].number,
        last=visit.steps[-1].number,
        minutes=spent(visit.steps),
        starts=clock(visit.steps[0].starts),
        steps=visit_steps(visit.steps, bench),
        cautions=for_visit(visit.steps),
    )


def _supplies(bench: Bench, laid: LaidOut | None) -> Supplies:
    model = bench.model
    return Supplies(
        tuple((row.count, row.item, row.size, row.purpose) for row in model.hardware),
        finishes(bench),
        left_bare(bench.model),
        wood_needed(model, bench.say),
        boards_to_have(model, bench.shop, bench.say) if laid is None else (),
        spare_wood(bench, laid),
        weight_sentences(model),
    )


def _time(tenths: int) -> str:
    hours, rest = divmod(tenths // 10, 60)
    return f"{hours:02}:{rest:02}"
