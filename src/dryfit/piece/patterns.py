"""Lines that use a pattern: which pattern, with which settings, and the box that they stand for."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from difflib import get_close_matches
from fractions import Fraction

from dryfit.diagnostics import Diagnostic, Hint, Severity, Span
from dryfit.notes.tree import (
    AsPattern,
    GlueLine,
    Notes,
    PartsLine,
    PatternBlock,
    Sizes,
    SizeWord,
    UnitsLine,
)
from dryfit.piece.declared import PIECE_DIMENSIONS, Amount, Declared, DeclaredPart, Instance
from dryfit.piece.statements import first_line, lines_of
from dryfit.piece.sums import Sums

_UNNAMED = "size without a word"
_NOT_OF_A_WHOLE = frozenset({"length", "thickness", _UNNAMED})


def inner_names(notes: Notes) -> Mapping[str, frozenset[str]]:
    """Return, by the part whose line uses a pattern, what the pattern calls its own."""
    found: dict[str, frozenset[str]] = {}
    for line in lines_of(notes, PartsLine):
        clause = as_pattern(line)
        block = block_of(clause, notes) if clause else None
        if block is not None:
            found[line.name] = _names_in(block)
    return found


def as_pattern(line: PartsLine) -> AsPattern | None:
    """Return the clause by which a line uses a pattern, or None."""
    return next((each for each in line.clauses if isinstance(each, AsPattern)), None)


def block_of(clause: AsPattern, notes: Notes) -> PatternBlock | None:
    """Return the pattern of that name, or None; one in the notes themselves goes first."""
    named = [block for block in notes.patterns if block.name == clause.pattern]
    own = [block for block in named if block.notes.source == notes.source]
    return next(iter((*own, *named)), None)


def instances_in(declared: Declared) -> int:
    """Return how many lines make something by a pattern, those inside of patterns too.

    What is inside of a pattern counts for every line that uses the pattern.
    """
    inside: dict[int, int] = {}
    return sum(1 + _instances_inside(each.block, inside) for each in declared.instances)


def _instances_inside(block: PatternBlock, known: dict[int, int]) -> int:
    if id(block) not in known:
        lines = (line for line in block.notes.statements if isinstance(line, PartsLine))
        clauses = (clause for line in lines if (clause := as_pattern(line)))
        blocks = (made for clause in clauses if (made := block_of(clause, block.notes)))
        known[id(block)] = sum(1 + _instances_inside(each, known) for each in blocks)
    return known[id(block)]


def without_sizes(line: PartsLine) -> PartsLine:
    """Return the line with nothing that only an instance of a pattern says."""
    kept = (each for each in line.clauses if not isinstance(each, Sizes | AsPattern))
    return replace(line, clauses=tuple(kept))


def instance_of(
    line: PartsLine, notes: Notes, sums: Sums
) -> tuple[Instance, Mapping[str, Amount]] | None:
    """Return what a line makes by its pattern, and its sizes in words of the whole.

    Findings: unknown-pattern, parameter-unknown, parameter-missing, parameter-twice.
    """
    clause = as_pattern(line)
    if clause is None:
        return None
    block = block_of(clause, notes)
    if block is None:
        if clause.pattern not in notes.unreadable:
            _unknown_pattern(clause, notes, sums)
        return None
    given = _given(line, clause, block, sums)
    sizes = {name: amount for name, amount in given.items() if name in PIECE_DIMENSIONS}
    settings = tuple(
        (name, amount) for name, amount in given.items() if name not in PIECE_DIMENSIONS
    )
    for parameter in block.parameters:
        missing = parameter.default is None and parameter.name not in PIECE_DIMENSIONS
        if missing and parameter.name not in given:
            _add(
                sums,
                "parameter-missing",
                f"`{block.written}` needs its {parameter.name}",
                clause.span,
                f"add `{parameter.name} {sums.display.example(Fraction(20))}` with your own figure",
            )
    own = block.notes.source == notes.source
    units = first_line(notes, UnitsLine) if own else None
    return Instance(line.name, block, settings, units, line.span), sizes


def as_box(part: DeclaredPart, instance: Instance, sizes: Mapping[str, Amount]) -> DeclaredPart:
    """Return the part that an instance is in the piece that holds it: a box without wood."""
    return replace(
        part,
        run="across",
        axes=(0, 1, 2),
        sizes=(sizes.get("width"), sizes.get("depth"), sizes.get("height")),
        assumed=(),
        stock="pattern",
        instance=instance.block.name,
    )


def _given(
    line: PartsLine, clause: AsPattern, block: PatternBlock, sums: Sums
) -> dict[str, Amount]:
    known = {parameter.name for parameter in block.parameters} | set(PIECE_DIMENSIONS)
    written = [(name, amount, amount.span) for name, amount in clause.settings]
    words = [word for each in line.clauses if isinstance(each, Sizes) for word in each.sizes]
    written += [(_word_of(word), word.amount, word.span) for word in words]
    given: dict[str, Amount] = {}
    for name, total, span in written:
        if name not in known:
            _unknown_parameter(name, block, span, sums)
        elif name in given:
            _add(sums, "parameter-twice", f"the {name} is given twice", span, "keep one of them")
        else:
            amount = sums.amount(total, span)
            if amount is not None:
                given[name] = amount
    return given


def _word_of(word: SizeWord) -> str:
    return word.dimension or _UNNAMED


def _names_in(block: PatternBlock) -> frozenset[str]:
    return frozenset(
        line.name for line in block.notes.statements if isinstance(line, PartsLine | GlueLine)
    )


def _unknown_pattern(clause: AsPattern, notes: Notes, sums: Sums) -> None:
    known = sorted({block.written for block in notes.patterns})
    near = get_close_matches(clause.pattern, [block.name for block in notes.patterns], n=1)
    listed = ", ".join(f"`{name}`" for name in known) or "none"
    hint = f"did you mean `{near[0]}`?" if near else f"the patterns are: {listed}"
    _add(sums, "unknown-pattern", f"no pattern is called `{clause.pattern}`", clause.span, hint)


def _unknown_parameter(name: str, block: PatternBlock, span: Span, sums: Sums) -> None:
    words = ", ".join(parameter.name for parameter in block.parameters)
    if name in _NOT_OF_A_WHOLE:
        hint = "a pattern's whole has a width, a depth and a height"
    else:
        hint = f"it knows: {words}"
    _add(sums, "parameter-unknown", f"`{block.written}` knows no {name}", span, hint)


def _add(sums: Sums, code: str, message: str, span: Span, hint: str) -> None:
    finding = Diagnostic(code, Severity.ERROR, message, span, hints=(Hint(hint),))
    if finding not in sums.findings:
        sums.findings.append(finding)
