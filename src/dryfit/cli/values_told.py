"""What `why` says of the values that the notes give names to: ``reveal = 3``."""

from __future__ import annotations

from collections.abc import Iterator

from dryfit.editor.sums import sums_in, value_text
from dryfit.notes import parse
from dryfit.notes.tree import Notes, Number, UnitsLine, ValueLine, ValueName
from dryfit.piece.readings import sum_as_read
from dryfit.workshop import Checked


def values_told(checked: Checked) -> dict[str, str]:
    """Return, by canonical name, what each value comes to, its sum, and the lines that use it."""
    notes, _ = parse(checked.source)
    lines = [line for line in notes.statements if isinstance(line, ValueLine)]
    return {line.name: "\n".join(_told(line, notes, checked)) for line in lines}


def _told(line: ValueLine, notes: Notes, checked: Checked) -> Iterator[str]:
    units = [each.unit for each in notes.statements if isinstance(each, UnitsLine)]
    amount, words = line.amount, sum_as_read(line.amount)
    value = value_text(amount, notes, units[0] if units else "mm", checked.model) or words
    written = isinstance(amount, Number) or value == words
    shown = value if written else f"{value} = {words}"
    yield f"  {line.name} {shown}, as written in line {line.span.told().line}"
    used = sorted(set(_used_in(line.name, notes)))
    if used:
        plural = "s" if len(used) > 1 else ""
        yield f"      used in line{plural} {', '.join(map(str, used))}"


def _used_in(name: str, notes: Notes) -> Iterator[int]:
    for amount in sums_in(notes.statements):
        if isinstance(amount, ValueName) and amount.name == name:
            yield amount.span.told().line
