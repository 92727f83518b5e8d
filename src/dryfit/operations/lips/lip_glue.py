"""Strips glued on: with tape, or with clamps over a caul, as many parts at once as these allow."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from dryfit.diagnostics import Diagnostic
from dryfit.geometry.frame import LENGTH
from dryfit.operations import clamps
from dryfit.operations.gluing.glue_up import lags_of
from dryfit.operations.gluing.open_time import glue_for, short_of_time
from dryfit.operations.lips.lip_stages import Stage
from dryfit.operations.minutes import tenths, worked
from dryfit.operations.words import all_of, counted, listed
from dryfit.placing.model import Copy, Part
from dryfit.placing.strips import covers, strip_name
from dryfit.plan.operation import ClampRow, Detail, GlueUp, Held, Operation, Work
from dryfit.shop.shop import Glue, Shop

CHECK = "no open line along a strip, and it stands over both faces from end to end"


def glue_ups(
    stage: Stage, shop: Shop, *, outdoors: bool
) -> tuple[tuple[Operation, ...], tuple[Diagnostic, ...]]:
    """Return the glue-ups of a stage: as many copies at once as there are clamps for.

    Findings: ``glue-time-short`` (H60).
    """
    copies, row = stage.part.copies, _clamps(stage, shop)
    closing = _closing(stage, 0 if row is None else row.count, shop)
    glue = glue_for(closing, shop, outdoors=outdoors)
    span = stage.lips[0].span
    late = short_of_time(
        stage.named("lip"), closing, glue, span, shop, named=outdoors, staged=False
    )
    at_once = len(copies) if row is None else _there(row.length, shop) // row.count
    turns = -(-len(copies) // at_once)
    each = -(-len(copies) // turns)
    rows = [copies[start : start + each] for start in range(0, len(copies), each)]
    names = [f" / {number}" if len(rows) > 1 else "" for number in range(1, len(rows) + 1)]
    found = (
        _glue_up(stage, f"{stage.named('lip')}{name}", own, row, _Closing(closing, glue), shop)
        for name, own in zip(names, rows, strict=True)
    )
    return tuple(found), late


def _clamps(stage: Stage, shop: Shop) -> ClampRow | None:
    """Return the clamps over one copy, or None where its strips are drawn on with tape."""
    part = stage.part
    if all(lip.thickness <= shop.clamping["lip_taped"] for lip in stage.lips):
        return None
    across = part.length if stage.direction == LENGTH else part.width
    longest = max(covers(part, lip) for lip in stage.lips)
    count = clamps.along(longest, shop.clamping["lip_spacing"], shop)
    opening = clamps.opening(across, shop)
    if _there(opening, shop) < count:
        return None
    way = "end to end" if stage.direction == LENGTH else "edge to edge"
    each = f"{count} over each {part.name}" if len(part.copies) > 1 else f"over the {part.name}"
    return ClampRow(opening, count, f"{each} from {way}, the outer ones near the corners")


def _there(opening: Fraction, shop: Shop) -> int:
    return sum(clamp.count for clamp in shop.clamps if clamp.opens >= opening)


@dataclass(frozen=True, slots=True)
class _Closing:
    """How many tenths of a minute one copy takes to close, and the glue that leaves time for it."""

    tenths: int
    glue: Glue


def _glue_up(
    stage: Stage,
    name: str,
    copies: tuple[Copy, ...],
    row: ClampRow | None,
    closing: _Closing,
    shop: Shop,
) -> Operation:
    part, names = stage.part, tuple(copy.name for copy in copies)
    rows = () if row is None else (ClampRow(row.length, row.count * len(copies), row.at),)
    held, _ = clamps.taken(part.name, rows, None, shop)
    off, strips = closing.glue.lags["out of clamps"], len(stage.lips) * len(copies)
    clamped = sum(each.count for each in rows)
    exact = worked(shop, "glue up", each=1, per_edge_joint=strips, per_clamp=clamped, clean=1)
    if row is None:
        exact += _taped(stage, len(copies), shop)
    return Operation(
        id=name,
        kind="glue up",
        station="glue bench",
        part=part.name,
        settings=(),
        work=(Work(part.name, names, (), None, ()), *_strips(stage, names)),
        tenths=tenths(exact),
        sentence=f"Glue the {_strip_s(stage)} on {stage.where} of {_which(part, copies)}",
        after_tenths=off,
        splittable=False,
        held=tuple(Held(each, count, off) for each, count in held),
        check=CHECK,
        glue_up=_told(part.name, names, closing, rows),
        details=tuple(_manners(stage, row, shop)),
    )


def _told(
    stage: str, names: tuple[str, ...], closing: _Closing, rows: tuple[ClampRow, ...]
) -> GlueUp:
    glue = closing.glue
    return GlueUp(
        stage=stage,
        parts=names,
        open_tenths=glue.open,
        closing_tenths=closing.tenths,
        limit_tenths=glue.close_within,
        glue=glue.name,
        clamps=rows,
        lags=lags_of(glue),
        diagonals=(),
    )


def _strips(stage: Stage, names: tuple[str, ...]) -> tuple[Work, ...]:
    """Return the strips that are used up, one row for each kind of them."""
    own = {strip_name(name, lip.surface) for name in names for lip in stage.lips}
    rows = (
        (strip.name, tuple(copy.name for copy in strip.copies if copy.name in own))
        for strip in stage.strips
    )
    return tuple(Work(name, used, (), None, ()) for name, used in rows if used)


def _strip_s(stage: Stage) -> str:
    return "strips" if stage.many else "strip"


def _which(part: Part, copies: tuple[Copy, ...]) -> str:
    if len(copies) == len(part.copies):
        return all_of(part)
    if len(copies) == 1:
        return f"the {copies[0].name}"
    return f"{counted(part, len(copies))}, {listed(copy.name for copy in copies)}"


def _taped(stage: Stage, copies: int, shop: Shop) -> Fraction:
    strips = len(stage.lips) * copies
    return worked(shop, "tape lip", each=strips, per_metre=stage.metres(copies))


def _closing(stage: Stage, clamped: int, shop: Shop) -> int:
    """Return the tenths from first glue to last clamp on one copy: each is closed by itself."""
    strips = len(stage.lips)
    spread = worked(shop, "spread edge joint", each=strips, per_metre=stage.metres(1))
    shut = worked(shop, "close clamp", each=clamped) if clamped else _taped(stage, 1, shop)
    return tenths(spread + worked(shop, "place stave", each=strips) + shut)


def _unlike(stage: Stage) -> Detail:
    rows: list[str | Fraction] = ["They are not alike: "]
    for lip in stage.lips:
        rows += [f"{', ' if len(rows) > 1 else ''}at {lip.surface} ", lip.thickness, " thick"]
    return tuple(rows)


def _manners(stage: Stage, row: ClampRow | None, shop: Shop) -> list[Detail]:
    """Return how a strip lies, what presses it, and that each part is closed by itself."""
    found: list[Detail] = [
        (
            f"Let {'each' if stage.many else 'the'} strip stand ",
            shop.allowances["lip_proud"],
            " proud of both faces and ",
            shop.allowances["lip_over"],
            " past both ends, its truest face to the core",
        )
    ]
    if len({lip.thickness for lip in stage.lips}) > 1:
        found.append(_unlike(stage))
    if row is not None:
        found.append(
            ("Between clamps and work, at both sides, a straight batten as long as the strip",)
        )
    else:
        tape = "tape pulled tight from face to face over the strip, a hand's width apart"
        if any(lip.thickness > shop.clamping["lip_taped"] for lip in stage.lips):
            found.append(
                (f"The shop has no clamps for it: {tape}, and a batten pressed on with wedges",)
            )
        else:
            found.append((f"No clamps: {tape}",))
    if len(stage.part.copies) > 1:
        found.append(("Glue and close one part before the next is spread",))
    return found
