"""The stage: tree of the notes -> declared piece."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import TypeVar

from dryfit.diagnostics import Diagnostic, Findings, Hint, Severity, Span
from dryfit.notes.tree import (
    BareLine,
    DoneLine,
    FeatureLine,
    FinishLine,
    GlueLine,
    HaveLine,
    JointLine,
    LimitLine,
    NoteLine,
    Notes,
    OpeningLine,
    OrderLine,
    OverallLine,
    PartsLine,
    PieceLine,
    PlaceLine,
    Sizes,
    SizeWord,
    SpoiledLine,
    Sum,
    TimberLine,
    UnitsLine,
    ValueLine,
)
from dryfit.piece.bought import as_bought, as_it_stands, is_only_listed, supplies
from dryfit.piece.declared import Amount, Declared, DeclaredPart, Have, Instance
from dryfit.piece.features import declared_features
from dryfit.piece.finishing import declared_bare, declared_finishes
from dryfit.piece.joint_keys import with_keys
from dryfit.piece.joints import contacts_of_lines
from dryfit.piece.limits import declared_limits
from dryfit.piece.measured import with_measured
from dryfit.piece.names import Names
from dryfit.piece.openings import declared_openings
from dryfit.piece.parts import WholePiece, declared_part, size_words
from dryfit.piece.patterns import as_box, as_pattern, inner_names, instance_of, without_sizes
from dryfit.piece.progress import done_deeds, spoiled_copies
from dryfit.piece.readings import sums_read
from dryfit.piece.stages import stage_of
from dryfit.piece.sums import Sums
from dryfit.piece.unit_slips import unit_slips
from dryfit.piece.wishes import circles, wish_of
from dryfit.quantities import Display

Line = TypeVar("Line")

OVERALL = ("width", "depth", "height")
MOST_COPIES = 3000
MOST_PARTS = 300
_OVERALL_WORDS = {"width": 0, "depth": 1, "height": 2, "length": 0}


def declare(notes: Notes) -> tuple[Declared, Findings]:
    """Return what the notes declare, and the findings about names, kinds and sums.

    Findings: unknown-part, circle, mixed-kinds, wrong-kind, number-too-long, size-not-positive,
    size-huge, size-not-written, not-linear, value-has-no-size, joined-to-itself, in-no-opening,
    opening-is-no-part, no-piece, no-parts, too-many-parts, finish-twice, thicker-than-wide,
    wishes-in-a-circle, unit-mixed, unit-slip, inch-fractions, and those of `features`.
    """
    units, overall_line = _first(notes, UnitsLine), _first(notes, OverallLine)
    names = Names(
        {line.name: line for line in _all(notes, PartsLine)},
        {line.name: line for line in _all(notes, GlueLine)},
        notes.unreadable,
        inner=inner_names(notes),
        openings=frozenset(line.name for line in _all(notes, OpeningLine)),
    )
    first = units.first if units else "length"
    planned = _sums(notes, units, overall_line, names)
    notes, measured = with_measured(notes, planned, first)
    sums = _sums(notes, units, overall_line, names) if measured else planned
    overall = _overall(overall_line, sums)
    title, timber = _first(notes, PieceLine), _first(notes, TimberLine)
    whole = WholePiece(first, timber.timber if timber else None, _wider(overall))
    parts, instances, broken = _parts(notes, sums, names, whole)
    contacts = contacts_of_lines(_all(notes, PartsLine), _all(notes, JointLine), sums, names)
    wishes = tuple(wish for line in _all(notes, OrderLine) for wish in wish_of(line, names))
    declared = Declared(
        piece=title.name if title else notes.source.name.rsplit("/", 1)[-1],
        source=notes.source,
        display=display_of(units),
        overall=overall,
        overall_span=overall_line.span if overall_line else None,
        timber=whole.timber,
        parts=parts,
        contacts=contacts,
        features=declared_features(_all(notes, FeatureLine), sums, names),
        stages=tuple(stage_of(line, sums, names) for line in _all(notes, GlueLine)),
        finishes=declared_finishes(_all(notes, FinishLine), sums, names),
        bare=declared_bare(_all(notes, BareLine), names),
        wishes=wishes,
        stock=tuple(_have(line, sums, first) for line in _all(notes, HaveLine)),
        notes=tuple(line.text for line in _all(notes, NoteLine)),
        broken=notes.unreadable | broken,
        instances=instances,
        supplies=supplies(_all(notes, PartsLine), names),
        openings=declared_openings(_all(notes, OpeningLine), names),
        measured=measured,
        done=done_deeds(_all(notes, DoneLine), names),
        spoiled=spoiled_copies(_all(notes, SpoiledLine), parts, names),
        limits=declared_limits(_all(notes, LimitLine), _all(notes, PartsLine), sums, names),
        outdoors=next((line.span for line in _all(notes, PlaceLine)), None),
    )
    slips = tuple(unit_slips(sums, parts, overall, units_said=units is not None))
    told = {slip.span for slip in slips}
    others = tuple(each for each in sums.findings if each.span not in told)
    findings = (*_lines_missing_or_twice(notes, title), *circles(wishes, declared.stages), *slips)
    if measured:
        findings += tuple(each for each in planned.findings if each not in others)
    declared = replace(with_keys(declared, names), sums=sums_read(notes, sums, first))
    return declared, findings + others + tuple(names.findings)


def display_of(units: UnitsLine | None) -> Display:
    """Return how lengths are shown: mm to 1/2 unless the ``units`` line says otherwise."""
    if units is None:
        return Display()
    if units.unit == "in":
        return Display("in", units.step) if units.step else Display.inches()
    scale = {"mm": 1, "cm": 10, "m": 1000}[units.unit]
    return Display("mm", units.step * scale) if units.step else Display()


def _all(notes: Notes, kind: type[Line]) -> list[Line]:
    return [line for line in notes.statements if isinstance(line, kind)]


def _first(notes: Notes, kind: type[Line]) -> Line | None:
    return next(iter(_all(notes, kind)), None)


def _parts(
    notes: Notes, sums: Sums, names: Names, whole: WholePiece
) -> tuple[tuple[DeclaredPart, ...], tuple[Instance, ...], frozenset[str]]:
    # A part whose line holds a sum that failed is broken: its place cannot be found, and the
    # reader has been told why.
    parts: list[DeclaredPart] = []
    instances: list[Instance] = []
    broken: set[str] = set()
    for line in _all(notes, PartsLine):
        failures = sums.failures
        if is_only_listed(line):
            continue
        if line.bought:
            parts.append(as_bought(declared_part(as_it_stands(line), sums, names, whole)))
        elif as_pattern(line) is None:
            parts.append(declared_part(line, sums, names, whole))
        elif made := instance_of(line, notes, sums):
            instance, sizes = made
            part = declared_part(without_sizes(line), sums, names, whole)
            parts.append(as_box(part, instance, sizes))
            instances.append(instance)
        else:
            broken.add(line.name)
        if sums.failures > failures:
            broken.add(line.name)
    return tuple(_within_limit(parts, sums)), tuple(instances), frozenset(broken)


def _within_limit(parts: Sequence[DeclaredPart], sums: Sums) -> list[DeclaredPart]:
    total = sum(part.count for part in parts)
    if total <= MOST_COPIES and len(parts) <= MOST_PARTS:
        return list(parts)
    many = f"{total} copies" if total > MOST_COPIES else f"{len(parts)} different parts"
    most = MOST_COPIES if total > MOST_COPIES else MOST_PARTS
    sums.findings.append(
        Diagnostic(
            "too-many-parts",
            Severity.ERROR,
            f"the piece has {many}; at most {most} are planned",
            parts[-1].name_span,
            hints=(Hint("plan the piece in sections, each in its own file"),),
        )
    )
    return [replace(part, count=1) for part in parts[:1]]


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
        display=display_of(units),
        values={line.name: line for line in _all(notes, ValueLine)},
        sizes=sizes,
        overall=sums_of_overall,
        parts=frozenset(names.first_line),
        unreadable=notes.unreadable,
        spaces=names.openings | frozenset(names.inner),
    )


def _overall(
    line: OverallLine | None, sums: Sums
) -> tuple[Amount | None, Amount | None, Amount | None]:
    if line is None:
        return (None, None, None)
    amounts = [_overall_size(sums, dimension) for dimension in OVERALL]
    return (amounts[0], amounts[1], amounts[2])


def _overall_size(sums: Sums, dimension: str) -> Amount | None:
    written = sums.overall.get(dimension)
    value = sums.size(written) if written is not None else None
    if written is None or value is None:
        return None
    return Amount(value, written.span, sums.behind(written))


def _wider(overall: tuple[Amount | None, Amount | None, Amount | None]) -> bool:
    width, depth, _ = overall
    return width is None or depth is None or width.value >= depth.value


def _lines_missing_or_twice(notes: Notes, title: PieceLine | None) -> list[Diagnostic]:
    opening = Span(notes.source, 1, 1, 1)
    found: list[Diagnostic] = []
    if title is None and "piece" not in notes.unreadable:
        found.append(
            Diagnostic(
                "no-piece",
                Severity.QUESTION,
                "the piece has no name; the file's name is printed instead",
                opening,
                hints=(Hint("begin with a line such as `piece Step stool`"),),
            )
        )
    if not _all(notes, PartsLine) and not notes.unreadable:
        found.append(
            Diagnostic(
                "no-parts",
                Severity.ERROR,
                "the notes name no part",
                title.span if title else opening,
                hints=(Hint("add a line such as `4 legs, upright, 40 x 40, at corners`"),),
            )
        )
    return found


def _have(line: HaveLine, sums: Sums, first: str) -> Have:
    words: dict[str, SizeWord] = size_words(line.sizes, first)
    sizes = [
        sums.size(words[dimension].amount) if dimension in words else None
        for dimension in ("length", "width", "thickness")
    ]
    return Have(
        line.count,
        line.kind,
        line.timber,
        (sizes[0], sizes[1], sizes[2]),
        line.rough,
        line.text,
        line.span,
    )
