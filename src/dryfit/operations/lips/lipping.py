"""Lips of sheet parts: strips glued on the core's edges, or banding ironed on (TRADE A10).

The core is sawn to its finished size less its lips.  Strips are glued on wider and longer than what
they cover and trimmed flush when the glue is hard, and cuts wait for that.  Ends come first, so
that the strips of the edges cover theirs (common practice).
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace

from dryfit.diagnostics import Diagnostic
from dryfit.geometry.frame import LENGTH, WIDTH
from dryfit.operations.batch import Batch
from dryfit.operations.deed_kinds import CUTS
from dryfit.operations.gluing.glue_up import lag_of
from dryfit.operations.lips.lip_glue import glue_ups
from dryfit.operations.lips.lip_stages import stages_of
from dryfit.operations.lips.lip_trim import ironed_on, trimmed
from dryfit.operations.words import listed
from dryfit.placing.lip import ENDS, added
from dryfit.placing.model import Part
from dryfit.plan.operation import Detail, Operation, Rule
from dryfit.shop.shop import Shop

WHY_CORE_FIRST = "a lip goes on the core when that has its size"
WHY_STRIPS_READY = "the strips lie ready before the glue is spread"
WHY_HARD = "a strip that is trimmed while its glue is swollen stands hollow later"
WHY_COLD = "banding is trimmed when it is cold and sticks"
WHY_ENDS_FLUSH = "what covers the edges runs over what covers the ends, which is flush by then"
WHY_GLUE_HARD = "the glue of its lip has to be hard before tools cross it"
WHY_NO_WATER = "a finish goes over the line of a lip when its glue is dry"
_LAGS = {
    "coat": ("finish", WHY_NO_WATER),
    **dict.fromkeys(CUTS - {"trim lip"} | {"fit to gap"}, ("machine", WHY_GLUE_HARD)),
}


@dataclass(frozen=True, slots=True)
class Lipped:
    """What lips a part: `glued` are its glue-ups, `last` is the trim that its cuts wait for."""

    batch: Batch
    glued: tuple[Operation, ...]
    last: str


def lipped(
    part: Part, strips: tuple[Part, ...], ready: Mapping[str, str], shop: Shop, *, outdoors: bool
) -> Lipped:
    """Return how a part gets its lips.

    `ready` are the operations that finish the core and the strips, by the names of their parts.
    Findings: ``glue-time-short`` (H60).
    """
    operations: list[Operation] = []
    glued: list[Operation] = []
    findings: list[Diagnostic] = []
    rules: list[Rule] = []
    before, why = ready[part.name], WHY_CORE_FIRST
    for stage in stages_of(part, strips):
        trim = trimmed(stage, shop)
        rows: tuple[Operation, ...] = (ironed_on(stage, shop),)
        if not stage.banded:
            rows, late = glue_ups(stage, shop, outdoors=outdoors)
            glued += rows
            findings += late
        for row in rows:
            rules.append(Rule(before, row.id, why))
            used = (work.part for work in row.work if work.part != part.name)
            rules += [Rule(ready[name], row.id, WHY_STRIPS_READY) for name in used]
            if stage.banded:
                rules.append(Rule(row.id, trim.id, WHY_COLD))
            else:
                rules.append(Rule(row.id, trim.id, WHY_HARD, lag_of(row, "level")))
        operations += [*rows, trim]
        before, why = trim.id, WHY_ENDS_FLUSH
    batch = Batch(tuple(operations), tuple(rules), findings=tuple(findings))
    return Lipped(batch, tuple(glued), operations[-1].id)


def as_core(batch: Batch, part: Part) -> Batch:
    """Return the sawing of a core, where it says what the part measures with its lips."""
    return replace(batch, operations=tuple(_of_a_core(row, part) for row in batch.operations))


def _of_a_core(row: Operation, part: Part) -> Operation:
    direction = _SAWN.get(row.kind)
    if direction is None or part.untaken(row.kind) is not None:
        return row
    own = [lip.surface for lip in part.lips if lip.surface in ENDS[direction]]
    if not own:
        return row
    size, word = (part.length, "long") if direction == LENGTH else (part.width, "wide")
    where = f"the {'lips' if len(own) > 1 else 'lip'} at {listed(own)}"
    less = size - added(part.lips, direction)
    core: Detail = ("The core is ", less, f" {word}; with {where} it is ", size)
    return replace(row, details=(*row.details, core))


_SAWN = {"length": LENGTH, "width": WIDTH}


def hard_lips(glued: Iterable[Operation], later: Iterable[Operation]) -> Iterator[Rule]:
    """Yield how long cuts and coats of lipped parts wait for the glue; the trim waits already."""
    rows = [row for row in later if row.kind in _LAGS]
    for lip in glued:
        own = frozenset(lip.work[0].copies)
        for row in rows:
            on_it = any(own.intersection(work.copies) for work in row.work)
            if on_it and not _before_the_lip(row, lip):
                until, why = _LAGS[row.kind]
                yield Rule(lip.id, row.id, why, lag_of(lip, until))


def _before_the_lip(row: Operation, lip: Operation) -> bool:
    """Return whether it is the core that is cut: cuts of its sheet, `width` and `length`.

    A cut of a sheet counts with the part that it frees first, and serves others as well.
    """
    if row.kind in {"rough length", "rip", "straight edge"}:
        return True
    return row.part == lip.part and row.kind in _SAWN
