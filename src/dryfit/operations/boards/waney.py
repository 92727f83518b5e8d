"""Boards that keep an edge as it grew: bark off by hand, and nothing measured from there (A2.6).

The width is that where the board is narrowest, the bark off.  With one waney edge the other is
jointed until that is so; with two the slab is as wide as it grew, and no edge is sawn.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from fractions import Fraction

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.operations.boards.blank_deeds import operation, pieces_of
from dryfit.operations.minutes import METRE, worked
from dryfit.placing.model import Model
from dryfit.plan.operation import Detail, Operation
from dryfit.shop.shop import Shop
from dryfit.stock.blanks.blank import Blank

WHY_BARK_FIRST = "bark holds grit, which nicks knives"
WHY_BARK_OFF_PIECES = "only the edge that is kept has to be peeled"
NEVER_RIPPED = frozenset({"width", "second edge"})
"""Deeds that would take the waney edge off."""
NO_EDGE: Detail = ("Both edges are waney: square the ends to a chalk line along its middle",)
"""Why no saw with a fence cuts such a board to length."""
JOINTED_TWICE = 2
"""So much longer than a plain edge takes the one that is jointed to a width (our guess)."""


def with_waney_edges(rows: Iterable[Operation], blank: Blank, shop: Shop) -> list[Operation]:
    """Return the milling of a blank that keeps waney edges: its bark first, no edge sawn there."""
    part = blank.part
    kept = [row for row in rows if row.kind not in NEVER_RIPPED]
    if len(part.waney) > 1:
        kept = [row for row in kept if row.kind != "edge"]
    return [bark_off(blank, shop), *(_to_width(row, blank) for row in kept)]


def bark_off(blank: Blank, shop: Shop) -> Operation:
    """Return the taking off of the bark of all pieces of a blank (common practice)."""
    edges, count = len(blank.part.waney), len(blank.pieces)
    exact = worked(shop, "bark", per_metre=blank.length * count * edges / METRE)
    which = "waney edge" if edges == 1 else "two waney edges"
    row = operation(
        blank, "bark", "bench", (), exact, f"Take the bark off the {which} of {pieces_of(blank)}"
    )
    with_care: Detail = (
        (
            "Peel it with a drawknife or a blunt chisel down to the wood, follow the edge as it "
            "grew, and brush it clean: bark that stays comes off later, finish and all"
        ),
    )
    return replace(row, details=(with_care,), check="no bark or grit left along the edge")


def _to_width(row: Operation, blank: Blank) -> Operation:
    if row.kind != "edge":
        return row
    wide: Detail = (
        "Joint the edge across from the waney one until the board is ",
        blank.to_width,
        " wide where it is narrowest",
    )
    sentence = row.sentence.replace("one edge", "the straight edge")
    tenths = row.tenths * JOINTED_TWICE
    return replace(row, tenths=tenths, sentence=sentence, details=(*row.details, wide))


def held_by_bark(rows: Iterable[Operation], model: Model) -> Iterator[Diagnostic]:
    """Yield parts that a cut would need a straight edge of where they have a waney one.

    Findings: waney-at-the-fence.
    """
    waney = {part.name: part for part in model.parts if part.waney}
    told = set[str]()
    for row in rows:
        for work in row.work:
            part, hold = waney.get(work.part), work.hold
            if part is None or hold is None or part.name in told:
                continue
            if {hold.down, hold.against_fence, hold.at_stop} & {*part.waney}:
                told.add(part.name)
                yield Diagnostic(
                    "waney-at-the-fence",
                    Severity.ERROR,
                    f"{part.name}: {row.id.partition(' / ')[2]} is cut with an edge at the fence "
                    "that is to stay waney",
                    part.spans[0] if part.spans else None,
                    rule="A2.6",
                    hints=(Hint("let another edge be waney, or leave the word out"),),
                )


def rough_width(blank_width: Fraction) -> Detail:
    """Return how such a board is ripped out of a slab that nobody has laid out."""
    return (
        "The line ",
        blank_width,
        " from the narrowest place of the waney edge, the bark off",
    )
