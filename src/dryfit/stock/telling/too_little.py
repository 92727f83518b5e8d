"""The finding that wood is missing; what checks without a layout told already is not repeated."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from dryfit.diagnostics import Diagnostic, Findings, Hint, Note, Severity, Span
from dryfit.placing.model import Model
from dryfit.quantities import Display
from dryfit.stock.laid_out import Bought, LaidOut
from dryfit.stock.laying.reasons import listed
from dryfit.stock.telling.in_words import priced, written_names
from dryfit.stock.telling.said import spoken, times
from dryfit.stock.telling.short import NOT_PROVED, short_in_words

_BOARDS = ("no-board-fits", "board-too-warped", "no-waney-edge")
_WOOD = "wood-short"


def too_little(laid: LaidOut, model: Model, before: Findings) -> Findings:
    """Return ``wood-not-enough`` or ``wood-not-found`` for parts that lack wood.

    `before` are the findings of the checks: parts of which they say that no board is large enough,
    or that there is too little of their wood, are told already.
    """
    missing = [one for one in laid.missing if one.part not in _told(model, before)]
    if not missing:
        return ()
    written = written_names(model)
    span = next((one.span for one in missing if one.span is not None), None)
    elsewhere = {one.why for one in laid.missing if one not in missing}
    notes = [proof for proof in laid.proofs if proof not in elsewhere]
    code = "wood-not-enough"
    if laid.verdict != "not enough":
        code = "wood-not-found"
        notes.append(NOT_PROVED)
    buy = listed([_bought(one, model.display) for one in laid.buy])
    remedy = f"buy {buy}" if buy else "buy more, or make the piece smaller"
    return (
        Diagnostic(
            code,
            Severity.WARNING,
            short_in_words(laid, written, missing),
            span,
            rule="H43",
            notes=tuple(Note(words) for words in notes),
            hints=(Hint(remedy),),
        ),
    )


def _bought(one: Bought, display: Display) -> str:
    line = one.line
    kind = f"{line.kind}{'s' if one.count > 1 else ''}"
    of = f" of {line.timber}" if line.timber else ""
    price = priced(one.price, (one,))
    costs = f" for {price}" if price else ""
    bark = {1: ", waney one edge", 2: ", waney both edges"}.get(line.waney, "")
    return f"{one.count} {kind}{of}, {spoken(times(line.sizes), display)}{bark}{costs}"


def _told(model: Model, before: Findings) -> set[str]:
    return {name for finding in before for name in _named(model, finding)}


def _named(model: Model, finding: Diagnostic) -> Iterator[str]:
    if finding.code in _BOARDS:
        spans: Sequence[Span | None] = [finding.span, *(note.span for note in finding.notes)]
        yield from (part.name for part in model.parts if part.spans and part.spans[0] in spans)
    if finding.code == _WOOD:
        line = next((line for line in model.stock if line.span == finding.span), None)
        if line is not None:
            sheet = line.kind == "sheet"
            yield from (
                part.name
                for part in model.parts
                if (part.stock == "sheet") == sheet and line.timber in {part.timber, None}
            )
