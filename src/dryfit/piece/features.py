"""Lines about cuts with no mate: names resolved, sizes by dimension, what is missing told."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.notes.tree import Extent, FeatureLine, Offset, Reference, Row, SizeWord, StageName
from dryfit.piece.declared import (
    Amount,
    DeclaredFeature,
    PlacedAmount,
    RowOfCuts,
    Stretch,
    SurfaceWords,
)
from dryfit.piece.feature_unused import unused_words
from dryfit.piece.feature_words import BARE_ORDER, EDGE_KINDS, SAME_SIZE, WRITTEN, example, missing
from dryfit.piece.names import Names
from dryfit.piece.sums import Sums

_NO_TURN = 90


def declared_features(
    lines: Sequence[FeatureLine], sums: Sums, names: Names
) -> tuple[DeclaredFeature, ...]:
    """Return the cuts with no mate of all lines that can be made out, in their order."""
    features = [declared_feature(line, sums, names) for line in lines]
    return tuple(feature for feature in features if feature is not None)


def declared_feature(line: FeatureLine, sums: Sums, names: Names) -> DeclaredFeature | None:
    """Return a cut with no mate, or None with a finding when a size or place is missing.

    Findings: feature-unfinished, feature-size-unused, angle-too-steep; unknown-part and those of
    sums.
    """
    failures = sums.failures
    for words in unused_words(line):
        _unused(line, f"`{words}`", sums)
    sizes = _sizes(line, sums)
    known = {name: each for name, each in sizes.items() if isinstance(each, Fraction)}
    late = {name: each for name, each in sizes.items() if isinstance(each, Amount)}
    feature = DeclaredFeature(
        kind=line.kind,
        parts=names.subjects(line.parts),
        surfaces=_surfaces(line),
        sizes=tuple(known.items()),
        late=tuple(late.items()),
        ranges=_ranges(line, sums),
        places=tuple(placed for each in line.places if (placed := _placed(each, sums, names))),
        extent=_stretch(line.extent, sums, names) if line.extent else None,
        rows=tuple(row for each in line.rows if (row := _row(each, sums))),
        count=line.count,
        each=line.each,
        profile=line.profile,
        after=_stage(line.after, names),
        span=line.span,
        behind=sums.behind(
            *(word.amount for word in line.sizes), *(offset.amount for offset in line.places)
        ),
    )
    if sums.failures > failures:
        # A size is there, only wrong: that has been told.
        return None
    lacking = missing(feature)
    if lacking:
        _unfinished(line, lacking, sums)
        return None
    return None if _too_steep(line, feature, sums) else feature


def _sizes(line: FeatureLine, sums: Sums) -> dict[str, Fraction | Amount]:
    found: dict[str, Fraction | Amount] = {}
    bare = iter(BARE_ORDER[line.kind])
    for word in line.sizes:
        dimension = word.dimension or next(bare, None)
        if dimension is None:
            _unused(line, f"`{word.span.text()}`", sums)
            continue
        dimension = SAME_SIZE.get((line.kind, dimension), dimension)
        value = _size(word, dimension, sums)
        if dimension == "radius" and line.kind == "hole" and value is not None:
            dimension = "diameter"
            value = value.times(Fraction(2)) if isinstance(value, Amount) else 2 * value
        if dimension not in WRITTEN[line.kind]:
            _unused(line, f"a {word.dimension or dimension}", sums)
        elif dimension in found:
            _unused(line, f"a second {dimension}", sums)
        elif value is not None:
            found[dimension] = value
    return found


def _size(word: SizeWord, dimension: str, sums: Sums) -> Fraction | Amount | None:
    if dimension == "angle":
        return sums.degrees(word.amount)
    told = sums.size_amount(word.amount, word.span)
    return told if told is None or told.leans else told.value


def _surfaces(line: FeatureLine) -> tuple[SurfaceWords, ...]:
    if not line.surfaces and line.each == "end" and line.kind in EDGE_KINDS:
        return (SurfaceWords((), "end", every=True, span=line.span),)
    return tuple(
        SurfaceWords(each.words, each.noun, each.every, each.span) for each in line.surfaces
    )


def _ranges(line: FeatureLine, sums: Sums) -> tuple[tuple[Fraction, Fraction], ...]:
    pairs = ((sums.size(start), sums.size(end)) for start, end in line.ranges)
    return tuple((start, end) for start, end in pairs if start is not None and end is not None)


def _placed(offset: Offset, sums: Sums, names: Names) -> PlacedAmount | None:
    told = sums.amount(offset.amount, offset.span)
    if told is None:
        return None
    of = names.hosts(offset.of)
    beyond = bool(of) and offset.on_host
    return PlacedAmount(told.value, offset.place, offset.span, of, beyond, told.leans)


def _stretch(extent: Extent, sums: Sums, names: Names) -> Stretch:
    start = _placed(extent.start, sums, names) if extent.start else None
    end = _placed(extent.end, sums, names) if extent.end else None
    return Stretch(extent.kind, start, end, extent.span)


def _row(row: Row, sums: Sums) -> RowOfCuts | None:
    pitch = sums.size(row.pitch)
    start = sums.length(row.start) if row.start is not None else None
    return None if pitch is None else RowOfCuts(row.count, pitch, start, row.place, row.span)


def _stage(after: StageName | None, names: Names) -> str | None:
    if after is None:
        return None
    return names.stage(after.assembly, Reference(after.assembly, (), after.span))


def _unfinished(line: FeatureLine, lacking: Sequence[str], sums: Sums) -> None:
    sums.findings.append(
        Diagnostic(
            "feature-unfinished",
            Severity.ERROR,
            sums.display.examples(f"{line.kind}: missing is {', '.join(lacking)}"),
            line.span,
            hints=(Hint(sums.display.examples(f"write for example `{example(line.kind)}`")),),
        )
    )


def _unused(line: FeatureLine, words: str, sums: Sums) -> None:
    sums.failures += 1
    listed = ", ".join(WRITTEN[line.kind].values())
    sums.findings.append(
        Diagnostic(
            "feature-size-unused",
            Severity.ERROR,
            f"{line.kind}: {words} says nothing about it",
            line.span,
            hints=(Hint(sums.display.examples(f"its sizes are written {listed}")),),
        )
    )


def _too_steep(line: FeatureLine, feature: DeclaredFeature, sums: Sums) -> bool:
    angle = feature.size("angle")
    if angle is None or 0 < angle < _NO_TURN:
        return False
    sums.findings.append(
        Diagnostic(
            "angle-too-steep",
            Severity.ERROR,
            f"{line.kind}: {angle} degrees is no slope; it is more than 0 and less than {_NO_TURN}",
            line.span,
            hints=(Hint("give the angle to the square cut: `10 degrees` is nearly square"),),
        )
    )
    return True
