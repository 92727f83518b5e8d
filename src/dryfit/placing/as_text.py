"""The cut list as a table for the terminal, the sum behind each length beneath it."""

from __future__ import annotations

from dryfit.placing.model import Model, Part

_UNIT_WORDS = {"mm": "millimetres", "in": "inches"}
_HEAD = ("part", "n", "length", "width", "thick", "timber")


def parts_table(model: Model) -> str:
    """Return the parts, sizes as the booklet prints them, with the sums of their lengths."""
    show = model.display.shown
    rows = [
        (
            part.name,
            str(len(part.copies)),
            f"~{show(part.length)}" if part.measure else show(part.length),
            show(part.width),
            show(part.thickness),
            part.timber or "",
        )
        for part in model.parts
    ]
    widths = [max(len(row[column]) for row in (_HEAD, *rows)) for column in range(len(_HEAD))]
    lines = [f"{model.piece}: sizes in {_UNIT_WORDS[model.display.unit]}", "", _row(_HEAD, widths)]
    for part, row in zip(model.parts, rows, strict=True):
        lines.append(_row(row, widths))
        lines += [f"    {words}" for words in _sums(part, model)]
    for bought in model.hardware:
        lines.append(f"{bought.count} x {bought.item} {bought.size}: {bought.purpose}")
    return "\n".join(lines) + "\n"


def _row(cells: tuple[str, ...], widths: list[int]) -> str:
    name, *rest = cells
    numbers = [cell.rjust(width) for cell, width in zip(rest[:-1], widths[1:-1], strict=True)]
    return "  ".join([name.ljust(widths[0]), *numbers, rest[-1]]).rstrip()


def _sums(part: Part, model: Model) -> list[str]:
    said = []
    for name in (f"{part.name}.length", f"{part.name}.shoulder length"):
        figure = model.figures.get(name)
        if figure is None or not figure.terms:
            continue
        show = model.display.shown
        terms = " ".join(
            f"{'-' if term.amount < 0 else '+'} {term.label} {show(abs(term.amount))}"
            for term in figure.terms
        )
        what = name.removeprefix(f"{part.name}.")
        said.append(f"{what} {model.display.shown(figure.value)} = {terms.removeprefix('+ ')}")
    if part.staves:
        staves = part.staves
        said.append(f"glued from {staves.count} of {model.display.shown(staves.width)}")
    if part.measure:
        said.append(f"cut to the measured {part.measure.name}")
    return said
