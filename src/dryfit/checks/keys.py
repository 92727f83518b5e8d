"""Keys across the corners of a frame stay clear of its inside (TRADE B12)."""

from __future__ import annotations

from collections.abc import Iterator

from dryfit.checks.finding import finding
from dryfit.checks.regions import solid_parts
from dryfit.checks.slots import LEAST_WALL
from dryfit.diagnostics import Diagnostic, Severity, Span
from dryfit.joinery.feature import Feature
from dryfit.joinery.slopes import DIAGONAL
from dryfit.placing.model import Model, Part


def check_keys(model: Model) -> Iterator[Diagnostic]:
    """Yield, once for a line of the notes, slots for keys that come through on the inside.

    Findings: key-shows-inside.
    """
    lines: dict[Span | None, list[tuple[Part, Feature]]] = {}
    for part in solid_parts(model):
        for feature in part.features:
            if feature.role == "key slot":
                lines.setdefault(feature.span, []).append((part, feature))
    for rows in lines.values():
        # From the outer corner to the inner one it is the diagonal of both widths.
        widths = sorted({part.name: part.width for part, _ in rows}.values())
        across = (widths[0] + widths[min(1, len(widths) - 1)]) / DIAGONAL
        feature = rows[0][1]
        deep = dict(feature.form.sizes)["depth"] if feature.form else feature.depth
        most = across - LEAST_WALL
        if deep <= most:
            continue
        show = model.display.shown
        yield finding(
            "B12",
            "key-shows-inside",
            Severity.ERROR if deep >= across else Severity.WARNING,
            f"keys {show(deep)} deep: the corner is {show(across)} from outside to inside, so that "
            f"they {'come through' if deep >= across else 'leave too little wood'} there",
            feature.span,
            figures={"depth": deep, "corner": across},
            remedy=f"make them {show(most)} deep or less",
        )
