"""What was measured: it takes the place of what the notes planned, before any sum is worked out."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from fractions import Fraction

from dryfit.diagnostics import Diagnostic, Hint, Note, Severity
from dryfit.notes.tree import (
    MeasuredLine,
    Notes,
    Number,
    OfTimber,
    OpeningLine,
    PartClause,
    PartsLine,
    Reference,
    Sizes,
    Statement,
    TimberLine,
    ValueLine,
)
from dryfit.piece.declared import Host, Measured
from dryfit.piece.names import full_name
from dryfit.piece.statements import first_line, lines_of
from dryfit.piece.sums import Sums
from dryfit.piece.written_sizes import size_words, sizes_on
from dryfit.quantities import LENGTH, Quantity

FAR_OFF = Fraction(1, 10)
"""A measurement that differs by more than this part of what was planned is asked about; ours."""
LEAST_FAR_OFF = Fraction(3)
"""A difference up to this, in mm, is never asked about; ours."""


@dataclass(slots=True)
class _Taken:
    """The measurements taken up so far, by what they replace, and the notes as planned."""

    notes: Notes
    sums: Sums
    first: str
    values: dict[str, Number] = field(default_factory=dict)
    sizes: dict[tuple[str, str], Number] = field(default_factory=dict)
    measured: list[Measured] = field(default_factory=list)


def with_measured(
    notes: Notes, sums: Sums, first: str, sheets: Sequence[Measured] = ()
) -> tuple[Notes, tuple[Measured, ...]]:
    """Return the notes with written sizes and values as measured, and all that was measured.

    `sums` are those of the notes as planned, `first` the size that stands first in a bare triple.
    `sheets` are measured where they are listed as wood on hand; a ``measured`` line outdoes that.
    Sizes that the piece works out are not replaced: they are compared with the placed piece.
    Findings (in `sums`): measured-unknown, measured-twice, measured-far-off, measured-one-copy,
    measured-several.
    """
    lines = lines_of(notes, MeasuredLine)
    if not lines and not sheets:
        return notes, ()
    taken = _Taken(notes, sums, first)
    for line in lines:
        amounts = [sums.size(amount) for amount in line.amounts]
        known = tuple(amount for amount in amounts if amount is not None)
        if known and len(known) == len(amounts):
            _take(line, known, taken)
    for sheet in sheets:
        _take_listed(sheet, taken)
    statements = tuple(_replaced(each, taken, first) for each in notes.statements)
    return replace(notes, statements=statements), tuple(taken.measured)


def _take(line: MeasuredLine, amounts: tuple[Fraction, ...], taken: _Taken) -> None:
    sums = taken.sums
    amount = Number(min(amounts), Quantity(min(amounts), LENGTH), line.amounts[0].span)
    kind, name, subject, planned = "measurement", line.phrase or "", None, None
    if line.value is not None:
        kind, name = "value", line.value
        planned = sums.length(sums.values[name].amount) if name in sums.values else None
        taken.values[name] = amount
    elif line.timber is not None:
        kind, name = "sheet", line.timber
        planned = None if line.nominal is None else sums.size(line.nominal)
        if not _take_sheet(line, planned, amount, taken):
            return
    elif line.part is not None and line.dimension is not None:
        part, dimension = line.part, line.dimension
        subject = Host(full_name(part), part.places, part.span)
        kind, name = _kind(taken.notes, part), f"{subject.part}.{dimension}"
        written = sums.sizes.get((subject.part, dimension))
        planned = sums.length(written) if written is not None else None
        if kind == "copy":
            _ask_which(line, part, sums)
        elif kind == "part" and written is not None:
            taken.sizes[subject.part, dimension] = amount
    if _is_twice(taken, (kind, name, subject), line):
        return
    if len(amounts) > 1 and kind != "opening":
        _several(line, kind, sums)
    measured = Measured(kind, name, subject, planned, amounts, min(amounts), line.span)
    taken.measured.append(measured)
    _ask_if_far_off(measured, sums)


def _kind(notes: Notes, part: Reference) -> str:
    if any(line.name == part.name for line in lines_of(notes, OpeningLine)):
        return "opening"
    return "copy" if part.places else "part"


def _take_sheet(
    line: MeasuredLine, planned: Fraction | None, amount: Number, taken: _Taken
) -> bool:
    """Take up a measured thickness of sheets or boards; False when no part is of them."""
    sums = taken.sums
    found = _parts_of(line.timber, planned, taken)
    for name in found:
        taken.sizes[name, "thickness"] = amount
    if not found:
        thick = "" if planned is None else f" {sums.display.with_unit(planned)} thick"
        sums.findings.append(
            Diagnostic(
                "measured-unknown",
                Severity.ERROR,
                f"no part is of {line.timber}{thick}",
                line.span,
                hints=(Hint("write the timber and the thickness as on the parts' lines"),),
            )
        )
    return bool(found)


def _take_listed(sheet: Measured, taken: _Taken) -> None:
    """Take up what a sheet on hand measures, unless a line says how thick such sheets are."""
    if any((each.name, each.planned) == (sheet.name, sheet.planned) for each in taken.measured):
        return
    found = _parts_of(sheet.name, sheet.planned, taken)
    number = Number(sheet.taken, Quantity(sheet.taken, LENGTH), sheet.span)
    for name in found:
        taken.sizes.setdefault((name, "thickness"), number)
    if found:
        taken.measured.append(sheet)


def _parts_of(timber: str | None, planned: Fraction | None, taken: _Taken) -> list[str]:
    return [
        part.name
        for part in lines_of(taken.notes, PartsLine)
        if _timber_of(taken.notes, part) == timber
        and (planned is None or _thickness(part, taken.sums, taken.first) == planned)
    ]


def _timber_of(notes: Notes, part: PartsLine) -> str | None:
    own = (each for each in part.clauses if isinstance(each, OfTimber))
    said = next(own, None) or first_line(notes, TimberLine)
    return said.timber if said else None


def _thickness(part: PartsLine, sums: Sums, first: str) -> Fraction | None:
    written = sizes_on(part, first).get("thickness")
    return None if written is None else sums.length(written.amount)


def _replaced(statement: Statement, taken: _Taken, first: str) -> Statement:
    if isinstance(statement, ValueLine) and statement.name in taken.values:
        return replace(statement, amount=taken.values[statement.name])
    if isinstance(statement, PartsLine):
        own = {
            size: number for (name, size), number in taken.sizes.items() if name == statement.name
        }
        if own:
            clauses = tuple(_resized(each, own, first) for each in statement.clauses)
            return replace(statement, clauses=clauses)
    return statement


def _resized(clause: PartClause, own: dict[str, Number], first: str) -> PartClause:
    if not isinstance(clause, Sizes):
        return clause
    words = size_words(clause.sizes, first)
    amounts = {id(words[size]): number for size, number in own.items() if size in words}
    sizes = tuple(
        replace(word, amount=amounts[id(word)]) if id(word) in amounts else word
        for word in clause.sizes
    )
    return replace(clause, sizes=sizes)


def _is_twice(taken: _Taken, what: tuple[str, str, Host | None], line: MeasuredLine) -> bool:
    kind, name, subject = what
    for other in taken.measured:
        same = (other.kind, other.name) == (kind, name)
        if same and _places(other.subject) == _places(subject):
            taken.sums.findings.append(
                Diagnostic(
                    "measured-twice",
                    Severity.ERROR,
                    f"{name} is measured on line {other.span.line} too",
                    line.span,
                    notes=(Note("measured here first", other.span),),
                    hints=(Hint("keep the one that holds"),),
                )
            )
            return True
    return False


def _places(subject: Host | None) -> tuple[str, ...]:
    return subject.places if subject else ()


def _several(line: MeasuredLine, kind: str, sums: Sums) -> None:
    sums.findings.append(
        Diagnostic(
            "measured-several",
            Severity.QUESTION,
            f"several figures for one {kind}: the smallest is taken",
            line.span,
            hints=(Hint("only an opening is measured at several places; write one figure"),),
        )
    )


def _ask_which(line: MeasuredLine, part: Reference, sums: Sums) -> None:
    figures = ", ".join(amount.span.text() for amount in line.amounts)
    whole = f"measured {part.name}.{line.dimension} = {figures}"
    sums.findings.append(
        Diagnostic(
            "measured-one-copy",
            Severity.QUESTION,
            f"all copies of {part.name}, or only this one? it is kept for this one, and the plan "
            "goes on with the planned size for all",
            line.span,
            hints=(Hint("where all came out so, write them all", whole),),
        )
    )


def _ask_if_far_off(measured: Measured, sums: Sums) -> None:
    if measured.planned is None:
        return
    off = abs(measured.taken - measured.planned)
    if off <= max(LEAST_FAR_OFF, measured.planned * FAR_OFF):
        return
    shown = sums.display.with_unit
    sums.findings.append(
        Diagnostic(
            "measured-far-off",
            Severity.QUESTION,
            f"{measured.name}: measured {shown(measured.taken)}, planned {shown(measured.planned)}",
            measured.span,
            figures={"measured": measured.taken, "planned": measured.planned},
            hints=(Hint("is it the right figure, in the right unit?"),),
        )
    )
