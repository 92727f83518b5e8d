"""The cut list as a table for the terminal, the sums behind its figures beneath it."""

from __future__ import annotations

from dryfit.placing.model import Model, Part
from dryfit.placing.sum_shown import sum_shown

_UNIT_WORDS = {"mm": "millimetres", "in": "inches"}
_HEAD = ("part", "n", "length", "width", "thick", "timber")


def parts_table(model: Model) -> str:
    """Return the parts, sizes as the booklet prints them, with the sums behind them."""
    show = model.display.plain.shown
    rows = [
        (
            part.name,
            str(len(part.copies)),
            _size(part, "length", show(part.cut_length if part.sloped else part.length)),
            _size(part, "width", show(part.width)),
            show(part.thickness, fitted=part.stock == "sheet"),
            part.timber or "",
        )
        for part in model.parts
    ]
    widths = [max(len(row[column]) for row in (_HEAD, *rows)) for column in range(len(_HEAD))]
    lines = [
        f"{model.piece}: sizes in {_UNIT_WORDS[model.display.plain.unit]}",
        "",
        _row(_HEAD, widths),
    ]
    for part, row in zip(model.parts, rows, strict=True):
        lines.append(_row(row, widths))
        lines += [f"    {words}" for words in sums_behind(part, model)]
    for bought in model.hardware:
        lines.append(f"{bought.count} x {bought.item} {bought.size}: {bought.purpose}")
    return "\n".join(lines) + "\n"


def _row(cells: tuple[str, ...], widths: list[int]) -> str:
    name, *rest = cells
    numbers = [cell.rjust(width) for cell, width in zip(rest[:-1], widths[1:-1], strict=True)]
    return "  ".join([name.ljust(widths[0]), *numbers, rest[-1]]).rstrip()


def sums_behind(part: Part, model: Model) -> list[str]:
    """Return the sums behind the sizes of a part, as lines such as ``length 350 = ...``."""
    said = []
    for what in ("length", "shoulder length", "width"):
        figure = model.figures.get(f"{part.name}.{what}")
        if figure is not None and figure.terms and not part.made:
            said.append(f"{what} {sum_shown(figure, model.display.plain)}")
    if part.staves:
        staves = part.staves
        wide = ", ".join(
            model.display.plain.shown(width) for width in staves.widths or (staves.width,)
        )
        said.append(f"glued from {staves.count} of {wide}")
    if part.sloped:
        show = model.display.plain.shown
        said.append(f"sawn along its slope to {show(part.cut_length)}, upright {show(part.length)}")
    if part.lips:
        from dryfit.placing.lip_words import lip_remarks

        said += lip_remarks(part, model.display)
    said += part.asked
    said += [f"{each.dimension} = {each.formula}, as measured" for each in part.measures]
    return said


def _size(part: Part, dimension: str, shown: str) -> str:
    """Return a size, marked as about right while it waits for a measurement."""
    return f"~{shown}" if part.untaken(dimension) else shown
