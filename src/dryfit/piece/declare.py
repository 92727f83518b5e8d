"""The stage: tree of the notes -> declared piece."""

from __future__ import annotations

from fractions import Fraction
from typing import TypeVar

from dryfit.diagnostics import Diagnostic, Findings, Hint, Note, Severity, Span
from dryfit.notes.tree import (
    FeatureLine,
    FinishLine,
    GlueLine,
    HaveLine,
    JointLine,
    NoteLine,
    Notes,
    OrderLine,
    OverallLine,
    PartsLine,
    PieceLine,
    Sizes,
    SizeWord,
    Sum,
    TimberLine,
    UnitsLine,
    ValueLine,
)
from dryfit.piece.declared import Amount, Declared, FinishWords, Have
from dryfit.piece.joints import contacts_of_line, declared_feature
from dryfit.piece.names import Names
from dryfit.piece.parts import declared_part, size_words
from dryfit.piece.stages import stage_of, wish_of
from dryfit.piece.sums import Sums
from dryfit.quantities import Display

Line = TypeVar("Line")

OVERALL = ("width", "depth", "height")
_OVERALL_WORDS = {"width": 0, "depth": 1, "height": 2, "length": 0}


def declare(notes: Notes) -> tuple[Declared, Findings]:
    """Return what the notes declare, and the findings about names, kinds and sums.

    Findings: unknown-part, duplicate-name, circle, mixed-kinds, wrong-kind, size-not-positive,
    size-not-written, no-overall, no-piece, twice, thicker-than-wide.
    """
    findings: list[Diagnostic] = []
    units = _last(notes, UnitsLine)
    overall_line = _last(notes, OverallLine)
    names = _names(notes, findings)
    sums = _sums(notes, units, overall_line, names)
    overall = _overall(overall_line, sums)
    first = units.first if units else "length"
    lines = [line for line in notes.statements if isinstance(line, PartsLine)]
    wider = _wider_than_deep(overall)
    parts, contacts = [], []
    for line in lines:
        if names.first_line.get(line.name) is not line:
            continue
        part = declared_part(line, sums, names, first=first, wider_than_deep=wider)
        parts.append(part)
        contacts.extend(contacts_of_line(line, sums, names))
    for statement in notes.statements:
        if isinstance(statement, JointLine):
            contacts.extend(contacts_of_line(statement, sums, names))
    title, timber = _last(notes, PieceLine), _last(notes, TimberLine)
    _missing_lines(notes, title, overall_line, findings)
    declared = Declared(
        piece=title.name if title else notes.source.name.rsplit("/", 1)[-1],
        source=notes.source,
        display=display_of(units),
        overall=overall,
        overall_span=overall_line.span if overall_line else None,
        timber=timber.timber if timber else None,
        parts=tuple(parts),
        contacts=tuple(contacts),
        features=tuple(
            feature
            for line in notes.statements
            if isinstance(line, FeatureLine)
            and (feature := declared_feature(line, sums, names)) is not None
        ),
        stages=tuple(
            stage_of(line, sums, names) for line in notes.statements if isinstance(line, GlueLine)
        ),
        finish=_finish(_last(notes, FinishLine), sums),
        wishes=tuple(
            wish
            for line in notes.statements
            if isinstance(line, OrderLine)
            for wish in wish_of(line, names)
        ),
        stock=tuple(
            _have(line, sums, first) for line in notes.statements if isinstance(line, HaveLine)
        ),
        notes=tuple(line.text for line in notes.statements if isinstance(line, NoteLine)),
        broken=notes.unreadable,
    )
    return declared, tuple(findings) + tuple(sums.findings) + tuple(names.findings)


def display_of(units: UnitsLine | None) -> Display:
    """Return how lengths are shown: mm to 1/2 unless the ``units`` line says otherwise."""
    if units is None:
        return Display()
    if units.unit == "in":
        return Display("in", units.step) if units.step else Display.inches()
    scale = {"mm": 1, "cm": 10, "m": 1000}[units.unit]
    return Display("mm", units.step * scale) if units.step else Display()


def _last(notes: Notes, kind: type[Line]) -> Line | None:
    found = [line for line in notes.statements if isinstance(line, kind)]
    return found[-1] if found else None


def _names(notes: Notes, findings: list[Diagnostic]) -> Names:
    parts: dict[str, PartsLine] = {}
    stages: dict[str, GlueLine] = {}
    for line in notes.statements:
        if isinstance(line, PartsLine):
            if line.name in parts:
                findings.append(_twice(line.written, line.name_span, parts[line.name].name_span))
            else:
                parts[line.name] = line
        elif isinstance(line, GlueLine):
            if line.name in stages:
                findings.append(_twice(line.written, line.name_span, stages[line.name].name_span))
            else:
                stages[line.name] = line
    return Names(parts, stages, notes.unreadable)


def _twice(written: str, span: Span, first: Span) -> Diagnostic:
    return Diagnostic(
        "duplicate-name",
        Severity.ERROR,
        f"`{written}` is already on line {first.line}; singular and plural count as one name",
        span,
        rule="H38",
        notes=(Note("first written here", first),),
        hints=(Hint("give one of them another name"),),
    )


def _sums(notes: Notes, units: UnitsLine | None, overall: OverallLine | None, names: Names) -> Sums:
    first = units.first if units else "length"
    sizes: dict[tuple[str, str], Sum] = {}
    for name, line in names.first_line.items():
        for clause in line.clauses:
            if isinstance(clause, Sizes):
                for dimension, word in size_words(clause.sizes, first).items():
                    sizes.setdefault((name, dimension), word.amount)
    sums_of_overall: dict[str, Sum] = {}
    for index, word in enumerate(overall.sizes if overall else ()):
        axis = _OVERALL_WORDS.get(word.dimension or "", index)
        if axis < len(OVERALL):
            sums_of_overall.setdefault(OVERALL[axis], word.amount)
    return Sums(
        unit=units.unit if units else "mm",
        values={line.name: line for line in notes.statements if isinstance(line, ValueLine)},
        sizes=sizes,
        overall=sums_of_overall,
        parts=frozenset(names.first_line),
    )


def _overall(
    line: OverallLine | None, sums: Sums
) -> tuple[Amount | None, Amount | None, Amount | None]:
    if line is None:
        return (None, None, None)
    amounts: list[Amount | None] = []
    for dimension in OVERALL:
        written = sums.overall.get(dimension)
        value = sums.size(written) if written is not None else None
        amounts.append(None if value is None or written is None else Amount(value, written.span))
    return (amounts[0], amounts[1], amounts[2])


def _wider_than_deep(overall: tuple[Amount | None, Amount | None, Amount | None]) -> bool:
    width, depth, _ = overall
    return width is None or depth is None or width.value >= depth.value


def _missing_lines(
    notes: Notes,
    title: PieceLine | None,
    overall: OverallLine | None,
    findings: list[Diagnostic],
) -> None:
    opening = Span(notes.source, 1, 1, 1)
    if overall is None and "overall" not in notes.unreadable:
        findings.append(
            Diagnostic(
                "no-overall",
                Severity.ERROR,
                "the overall size is missing; the parts are worked out from it",
                title.span if title else opening,
                hints=(Hint("add a line such as `overall 420 wide, 300 deep, 240 high`"),),
            )
        )
    if title is None and "piece" not in notes.unreadable:
        findings.append(
            Diagnostic(
                "no-piece",
                Severity.QUESTION,
                "the piece has no name; the file's name is printed instead",
                opening,
                hints=(Hint("begin with a line such as `piece Step stool`"),),
            )
        )


def _finish(line: FinishLine | None, sums: Sums) -> FinishWords | None:
    if line is None:
        return None
    apart = sums.minutes(line.apart) if line.apart is not None else None
    return FinishWords(line.product, line.coats, apart, line.span)


def _have(line: HaveLine, sums: Sums, first: str) -> Have:
    words: dict[str, SizeWord] = size_words(line.sizes, first)
    sizes: list[Fraction | None] = []
    for dimension in ("length", "width", "thickness"):
        word = words.get(dimension)
        sizes.append(sums.size(word.amount) if word else None)
    return Have(
        line.count,
        line.kind,
        line.timber,
        (sizes[0], sizes[1], sizes[2]),
        line.rough,
        line.text,
        line.span,
    )
