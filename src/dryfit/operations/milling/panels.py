"""Glued panels: dry fit, glue-up, rest, flatten, width, length (TRADE A9)."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from dryfit.diagnostics import Diagnostic
from dryfit.operations import clamps, setting_of, through_cuts
from dryfit.operations.batch import Batch
from dryfit.operations.boards.straight_edges import straight_edges
from dryfit.operations.gluing.glue_up import lag_of, lags_of
from dryfit.operations.gluing.open_time import glue_for, short_of_time
from dryfit.operations.machine_limits import (
    PLANER,
    Piece,
    why_not_planed,
)
from dryfit.operations.milling.resaw import on_a_router_sled, opened_like_a_book
from dryfit.operations.milling.widths import to_width, width_of
from dryfit.operations.minutes import METRE, SQUARE_METRE, tenths, worked
from dryfit.plan.operation import Detail, GlueUp, Held, Operation, Rule, Work
from dryfit.plan.setting import Hold
from dryfit.shop.shop import Shop
from dryfit.stock.blanks.blank import Blank

WHY_DRY = "a gap that shows dry can still be planed away"
WHY_GLUE_FRESH = "the edges are tried dry, then glued the same day"
WHY_REST = "a swollen glue line that is planed early sinks later"
WHY_SIZE_LAST = "the panel is sized from flat faces"
WHY_STRAIGHT_FIRST = "only a straight edge runs true along the saw's fence"
WHY_LENGTH_AFTER_WIDTH = "what breaks out at the edges is cut off with the ends"


@dataclass(frozen=True, slots=True)
class GluedPanel:
    """A panel with the size at which its staves are glued, in mm."""

    blank: Blank
    outdoors: bool = False

    @property
    def name(self) -> str:
        """Return the name of the part."""
        return self.blank.part.name

    @property
    def width(self) -> Fraction:
        """Return the width of the staves side by side."""
        staves = self.blank.part.staves
        assert staves is not None
        return staves.total

    def widest(self, shop: Shop) -> Fraction:
        """Return the width where the second edges took no more than one pass of the jointer."""
        staves = self.blank.part.staves
        assert staves is not None
        # What is sawn off wider than it is jointed, the same of every stave.
        one_pass = self.blank.sawn_width - shop.allowances["facing"] / 2 - staves.width
        return staves.total + max(Fraction(0), one_pass) * staves.count

    @property
    def joints(self) -> int:
        """Return the glue lines of one panel."""
        staves = self.blank.part.staves
        assert staves is not None
        return staves.count - 1


def glued_panels(blank: Blank, shop: Shop, *, outdoors: bool = False) -> Batch:
    """Return the operations from jointed staves to a panel ripped to width, for all copies.

    A panel that stands `outdoors` takes a glue that lasts there.
    """
    panel = GluedPanel(blank, outdoors)
    last = f"{blank.subject} / second edge"
    operations: list[Operation] = []
    rules: list[Rule] = []
    findings: list[Diagnostic] = []
    flatten = _flatten(panel, shop)
    for index, copy in enumerate(blank.part.copies):
        subject = copy.name if len(blank.part.copies) > 1 else panel.name
        dry = _dry_fit(panel, subject, shop)
        glue, found = _glue_up(panel, subject, index, shop)
        operations += [dry, glue]
        findings += found
        rest = lag_of(glue, "machine")
        rules += [
            Rule(last, dry.id, WHY_DRY),
            Rule(dry.id, glue.id, WHY_GLUE_FRESH),
            Rule(glue.id, flatten.id, WHY_REST, rest),
        ]
    width = _width(panel, shop)
    rules.append(Rule(flatten.id, width.id, WHY_SIZE_LAST))
    sizing = [width]
    if width.station == through_cuts.SAW:
        edge = _straight_edge(panel, shop)
        sizing = [edge, width]
        rules.append(Rule(flatten.id, edge.id, WHY_SIZE_LAST))
        rules.append(Rule(edge.id, width.id, WHY_STRAIGHT_FIRST))
    return Batch(
        operations=(*operations, flatten, *sizing), rules=tuple(rules), findings=tuple(findings)
    )


def _dry_fit(panel: GluedPanel, subject: str, shop: Shop) -> Operation:
    return Operation(
        id=f"{subject} / dry fit",
        kind="dry fit",
        station="bench",
        part=panel.name,
        settings=(),
        work=(),
        tenths=tenths(worked(shop, "dry fit", each=1, per_joint=panel.joints)),
        sentence=f"Lay the staves of the {subject} together dry in the order of the marks, "
        "clamps and all",
        check="no light through the joints, no stave rocks on the next",
        details=opened_like_a_book() if panel.blank.part.bookmatched else (),
    )


def _glue_up(
    panel: GluedPanel, subject: str, index: int, shop: Shop
) -> tuple[Operation, tuple[Diagnostic, ...]]:
    part = panel.blank.part
    assert part.staves is not None
    row, held, found = clamps.for_panel(
        subject, panel.width, panel.blank.length, part.spans[0] if part.spans else None, shop
    )
    closing = _closing(panel, row.count, shop)
    glue = glue_for(closing, shop, outdoors=panel.outdoors)
    stop = (index + 1) * part.staves.count
    names = panel.blank.pieces[stop - part.staves.count : stop]
    glue_up = GlueUp(
        stage=subject,
        parts=names,
        open_tenths=glue.open,
        closing_tenths=closing,
        limit_tenths=glue.close_within,
        glue=glue.name,
        clamps=(row,),
        lags=lags_of(glue),
        diagonals=(),
    )
    operation = Operation(
        id=f"{subject} / glue up",
        kind="glue up",
        station="glue bench",
        part=panel.name,
        settings=(),
        work=(Work(panel.blank.subject, names, (), None, ()),),
        tenths=tenths(
            worked(
                shop,
                "glue up",
                each=1,
                per_edge_joint=panel.joints,
                per_clamp=row.count,
                check=1,
                clean=1,
            )
        ),
        sentence="Glue the staves edge to edge, clamps over and under in turn",
        after_tenths=glue.lags["out of clamps"],
        splittable=False,
        held=tuple(Held(name, count, glue.lags["out of clamps"]) for name, count in held),
        check="a straight edge lies close over all the staves, faces level at the joints",
        glue_up=glue_up,
    )
    span = part.spans[0] if part.spans else None
    late = short_of_time(subject, closing, glue, span, shop, named=panel.outdoors)
    return operation, (*found, *late)


def _closing(panel: GluedPanel, count: int, shop: Shop) -> int:
    metres = panel.blank.length / METRE * panel.joints
    return tenths(
        worked(shop, "spread edge joint", each=panel.joints, per_metre=metres)
        + worked(shop, "place stave", each=panel.joints + 1)
        + worked(shop, "close clamp", each=count)
    )


def _flatten(panel: GluedPanel, shop: Shop) -> Operation:
    blank, part = panel.blank, panel.blank.part
    names = tuple(copy.name for copy in part.copies)
    piece = Piece(blank.length, panel.widest(shop), blank.to_thickness)
    why_not = why_not_planed(piece, part.thickness, shop)
    if why_not is None:
        metres = blank.length * len(names) / METRE
        return Operation(
            id=f"{part.name} / flatten",
            kind="flatten",
            station=PLANER,
            part=part.name,
            settings=setting_of.known_to(
                shop, PLANER, (setting_of.plain("thickness", part.thickness),)
            ),
            work=(Work(part.name, names, (), Hold("F", None, None), ()),),
            tenths=tenths(worked(shop, "planer pass", each=len(names), per_metre=metres) * 2),
            sentence="Scrape off the glue, then plane the panel on both faces to thickness",
        )
    area = panel.width * blank.length * len(names) / SQUARE_METRE
    return Operation(
        id=f"{part.name} / flatten",
        kind="flatten",
        station="bench",
        part=part.name,
        settings=(),
        work=(Work(part.name, names, (), None, ()),),
        tenths=tenths(worked(shop, "flatten panel", each=len(names), per_square_metre=area)),
        sentence="Flatten the panel by hand on both faces, to thickness",
        check="a straight edge lies close along the grain, over the width and corner to corner",
        details=(*_told(why_not), *((on_a_router_sled(),) if part.bookmatched else ())),
    )


def _width(panel: GluedPanel, shop: Shop) -> Operation:
    part = panel.blank.part
    return to_width(
        part,
        Piece(panel.blank.length, panel.width, part.thickness),
        shop,
        f"Rip the panel to {width_of(part)}, the straight edge at the fence",
        f"Saw the panel to {width_of(part)} along a line and plane both edges true",
    )


def _straight_edge(panel: GluedPanel, shop: Shop) -> Operation:
    part = panel.blank.part
    names = tuple(copy.name for copy in part.copies)
    piece = Piece(panel.blank.length, panel.width, part.thickness)
    edges = straight_edges([piece], len(names), shop)
    row = Operation(
        id=f"{part.name} / straight edge",
        kind="straight edge",
        station=edges.station,
        part=part.name,
        settings=(),
        work=(Work(part.name, names, (), None, ()),),
        tenths=tenths(edges.exact),
        sentence="Make one edge of the panel straight for the saw's fence",
    )
    return edges.of(row)


def _told(why_not: Detail | None) -> tuple[Detail, ...]:
    return (why_not,) if why_not else ()
