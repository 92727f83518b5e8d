"""A line of its own for spares: `1 spare leg` says what `1 spare` says on the line of the legs."""

from __future__ import annotations

from dataclasses import replace

from dryfit.notes.tree import Notes, PartsLine, Spare

SPARE = "spare "


def with_spares(notes: Notes) -> Notes:
    """Return the notes with the spares of such lines on the lines of their parts.

    A line that says more than a count and a name is a part of its own, whatever it is called.
    """
    lines = {line.name: line for line in notes.statements if isinstance(line, PartsLine)}
    spares = {
        line.name.removeprefix(SPARE): line
        for line in lines.values()
        if line.name.startswith(SPARE) and not line.clauses and not line.bought
    }
    told = {name: line for name, line in spares.items() if name in lines and not lines[name].bought}
    if not told:
        return notes
    names = {line.name for line in told.values()}
    statements = tuple(
        _with(each, told[each.name]) if isinstance(each, PartsLine) and each.name in told else each
        for each in notes.statements
        if not (isinstance(each, PartsLine) and each.name in names)
    )
    return replace(notes, statements=statements)


def _with(line: PartsLine, spare: PartsLine) -> PartsLine:
    """Return a part's line with the spares of the other line, besides those that it has."""
    own = sum(each.count for each in line.clauses if isinstance(each, Spare))
    others = tuple(each for each in line.clauses if not isinstance(each, Spare))
    return replace(line, clauses=(*others, Spare(own + spare.count, spare.span)))
