"""Which lines of wood can be laid out; of the others `piece.stock_checks` asks what they lack."""

from __future__ import annotations

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


def _sizes_left_out(line: Have) -> list[str]:
    """Return the sizes that a line does not give, or gives as nothing."""
    sizes = *line.sizes[:2], line.sizes[2] if line.measured is None else line.measured
    return [
        name for name, size in zip(PART_DIMENSIONS, sizes, strict=True) if size is None or size <= 0
    ]
