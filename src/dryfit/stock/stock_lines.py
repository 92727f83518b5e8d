"""Which lines of wood can be laid out, and what is asked of those that cannot."""

from __future__ import annotations

from collections.abc import Iterator

from dryfit.diagnostics import Diagnostic, Findings, Hint, Severity
from dryfit.piece.declared import PART_DIMENSIONS, Have
from dryfit.placing.model import Model
from dryfit.stock.pricing import price_of


def usable_lines(model: Model) -> tuple[tuple[Have, ...], tuple[Have, ...]]:
    """Return the lines on hand and those of the yard that have all that a layout needs.

    Where the yard's lines have prices, one without cannot be weighed against them.
    """
    lines = tuple(line for line in model.stock if not _sizes_left_out(line))
    yard = tuple(line for line in model.yard if not _sizes_left_out(line))
    if any(price_of(line) is not None for line in yard):
        yard = tuple(line for line in yard if price_of(line) is not None)
    return lines, yard


def findings_of(model: Model) -> Findings:
    """Return ``board-not-laid-out`` and ``yard-without-price`` for the other lines."""
    return tuple(_findings(model))


def _findings(model: Model) -> Iterator[Diagnostic]:
    for line in (*model.stock, *model.yard):
        left_out = _sizes_left_out(line)
        if left_out:
            what = " and ".join(left_out)
            yield Diagnostic(
                "board-not-laid-out",
                Severity.QUESTION,
                f"what {what} has this {line.kind}? without it, it is left out of the layout",
                line.span,
                hints=(Hint("write length, width and thickness, such as `1800 x 160 x 27`"),),
            )
    _, usable = usable_lines(model)
    for line in model.yard:
        if not _sizes_left_out(line) and line not in usable:
            yield Diagnostic(
                "yard-without-price",
                Severity.QUESTION,
                f"what does this {line.kind} cost? the others have prices, so it is not weighed "
                "against them",
                line.span,
                hints=(Hint("write what one costs, such as `48.00 each`, or `at 14 a metre`"),),
            )


def _sizes_left_out(line: Have) -> list[str]:
    return [name for name, size in zip(PART_DIMENSIONS, line.sizes, strict=True) if size is None]
