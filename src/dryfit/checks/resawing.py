"""TRADE A8.1, H44: the slab on hand holds its leaves, the kerf between them, and their planing."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.checks.finding import finding
from dryfit.diagnostics import Diagnostic, Severity
from dryfit.joinery.resawing import (
    LEAVES,
    SCARCE,
    WARP,
    resaw_kerf,
    sawn_leaf,
    thickest_leaf,
    thickness_for,
)
from dryfit.piece.declared import Have
from dryfit.placing.model import Model, Part
from dryfit.shop import Shop


def check_resawing(model: Model, shop: Shop) -> Iterator[Diagnostic]:
    """Yield each panel of bookmatched leaves that no slab on hand is thick enough for.

    Only slabs that the notes name, with their thickness, are looked at.
    Findings: slab-too-thin, slab-barely-thick.
    """
    for part in model.parts:
        if not part.bookmatched:
            continue
        slabs = [
            (thick - (WARP if line.rough else 0), line)
            for line in model.stock
            if (thick := line.sizes[2]) is not None and _is_slab_for(line, part)
        ]
        if slabs:
            trued, line = max(slabs, key=lambda slab: slab[0])
            yield from _told(model, shop, part, trued, line)


def _is_slab_for(line: Have, part: Part) -> bool:
    known = line.timber is None or part.timber is None or line.timber == part.timber
    return line.kind == "slab" and known


def _told(
    model: Model, shop: Shop, part: Part, trued: Fraction, line: Have
) -> Iterator[Diagnostic]:
    sawn, kerf = sawn_leaf(part.thickness, shop), resaw_kerf(shop)
    needed = thickness_for(LEAVES, part.thickness, sawn - part.thickness, kerf)
    left = trued - needed
    if left >= SCARCE:
        return

    def say(length: Fraction) -> str:
        return model.display.with_unit(length, fitted=True)

    loss = (line.sizes[2] or trued) - trued
    lost = f"{say(loss)} for truing it, " if loss else ""
    sums = (
        f"{lost}two leaves of {say(sawn)} as sawn and {say(kerf)} of kerf take {say(needed + loss)}"
    )
    thickest = thickest_leaf(trued, LEAVES, sawn - part.thickness, kerf)
    figures = {"have": trued + loss, "needed": needed + loss, "leaf": thickest}
    if left < 0:
        yield finding(
            "A8.1",
            "slab-too-thin",
            Severity.ERROR,
            f"{part.name}: a slab {say(trued + loss)} thick does not hold its leaves: {sums}",
            line.span,
            figures=figures,
            remedy=f"make the {part.name} {say(thickest)} thick at most, or take a thicker slab"
            if thickest > 0
            else "take a thicker slab",
        )
        return
    yield finding(
        "A8.1",
        "slab-barely-thick",
        Severity.WARNING,
        f"{part.name}: a slab {say(trued + loss)} thick holds its leaves with {say(left)} to "
        f"spare: {sums}",
        line.span,
        figures={**figures, "left": left},
        remedy=f"make the {part.name} a little thinner, or take a thicker slab: a blade that "
        "drifts spoils a leaf",
    )
