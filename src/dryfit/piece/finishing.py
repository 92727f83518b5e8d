"""Finishes and what stays bare, with the parts and glue-ups that they name."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from dryfit.diagnostics import Diagnostic, Hint, Note, Severity
from dryfit.notes.tree import BareLine, FinishLine, Surface
from dryfit.piece.declared import BareWords, Coats, FinishWords, SurfaceWords
from dryfit.piece.names import Names
from dryfit.piece.sums import Sums


def declared_finishes(
    lines: Iterable[FinishLine], sums: Sums, names: Names
) -> tuple[FinishWords, ...]:
    """Return the finishes in the order of the notes.

    Findings: unknown-part, finish-twice, and those of sums.
    """
    found: list[FinishWords] = []
    for line in lines:
        products = tuple(
            Coats(
                words.product,
                words.coats,
                None if words.apart is None else sums.minutes(words.apart),
                words.span,
            )
            for words in line.products
        )
        subjects = names.subjects(line.subjects)
        if line.subjects and not subjects:
            continue
        finish = FinishWords(subjects, surfaces_of(line.surfaces), products, line.span)
        names.findings += _twice(finish, found)
        found.append(finish)
    return tuple(found)


def declared_bare(lines: Iterable[BareLine], names: Names) -> tuple[BareWords, ...]:
    """Return what gets no finish and what is masked.  Findings: unknown-part."""
    return tuple(
        BareWords(line.verb, subjects, surfaces_of(line.surfaces), line.span)
        for line in lines
        if (subjects := names.subjects(line.subjects))
    )


def surfaces_of(surfaces: Iterable[Surface]) -> tuple[SurfaceWords, ...]:
    """Return the words for surfaces as declared."""
    return tuple(SurfaceWords(s.words, s.noun, s.every, s.span) for s in surfaces)


def _twice(finish: FinishWords, earlier: Sequence[FinishWords]) -> Iterator[Diagnostic]:
    for other in earlier:
        same = _named(finish) & _named(other)
        if not same or _surfaces(finish) != _surfaces(other):
            continue
        what = " and ".join(sorted(name or "the whole piece" for name, _ in same))
        yield Diagnostic(
            "finish-twice",
            Severity.ERROR,
            f"there is already a finish for {what}",
            finish.span,
            notes=(Note("first written here", other.span),),
            hints=(
                Hint("keep one of the two, or write the products in one line: `primer then paint`"),
            ),
        )
        return


def _named(finish: FinishWords) -> frozenset[tuple[str, tuple[str, ...]]]:
    return frozenset((host.part, host.places) for host in finish.subjects) or frozenset({("", ())})


def _surfaces(finish: FinishWords) -> tuple[tuple[tuple[str, ...], str | None], ...]:
    return tuple((surface.words, surface.noun) for surface in finish.surfaces)
