"""The first pages: what the piece is and takes, and what to read before the first cut."""

from __future__ import annotations

from dataclasses import dataclass

from dryfit.booklet.bench import Bench
from dryfit.booklet.drawing import Svg
from dryfit.booklet.text import Text, capital, closed
from dryfit.booklet.wording import many, roughly, time_of_day, to_five
from dryfit.diagnostics import Diagnostic, Findings, Severity, Span
from dryfit.geometry.box import spanning
from dryfit.placing.loads import ends_of
from dryfit.placing.model import Model
from dryfit.placing.weights import whole_weight
from dryfit.plan.plan import Plan
from dryfit.plan.totals_text import ENDED_IN_WORDS, bound_in_words, saved_in_words
from dryfit.wood.weight import weight_words


@dataclass(frozen=True, slots=True)
class Total:
    """One figure of the cover in large type, and what it counts."""

    value: str
    label: str


@dataclass(frozen=True, slots=True)
class Cover:
    """The piece, its overall sizes, its weight where the wood tells it, and what it takes.

    `stands` says how far out splayed legs stand, which the overall sizes leave out; else empty.
    `short` says what wood is missing and what to buy.
    """

    piece: str
    drawing: Svg | None
    width: Text
    depth: Text
    height: Text
    stands: Text
    weight: str
    totals: tuple[Total, ...]
    saved: str
    bound: str
    short: tuple[Text, ...] = ()


@dataclass(frozen=True, slots=True)
class AssumptionView:
    """What was taken for granted, and the line to write if it is wrong."""

    text: str
    line: int | None
    instead: str | None


@dataclass(frozen=True, slots=True)
class FindingView:
    """A warning or a question of the run, with its place in the notes."""

    question: bool
    message: str
    line: int | None
    written: str | None
    remarks: tuple[str, ...]


def cover(bench: Bench, drawing: Svg | None, short: tuple[Text, ...] = ()) -> Cover:
    """Return the cover."""
    wide, deep, high = bench.model.overall
    say, heavy = bench.say, whole_weight(bench.model).kilograms
    return Cover(
        piece=bench.model.piece,
        drawing=drawing,
        width=(say.size(wide),),
        depth=(say.size(deep),),
        height=(say.size(high),),
        stands=_stands(bench),
        weight=weight_words(heavy, bench.model.display.unit) if heavy else "",
        totals=_totals(bench.plan),
        saved=closed(saved_in_words(bench.plan.totals, to_five)),
        bound=capital(closed(bound_in_words(bench.plan.totals))),
        short=short,
    )


def _stands(bench: Bench) -> Text:
    """Return how far apart the feet of leaning copies stand outside, and the greatest size."""
    say, copies = bench.say, [copy for part in bench.model.parts for copy in part.copies]
    feet = tuple(ends_of(copy)[0] for copy in copies if copy.lean is not None)
    if not feet:
        return ()
    apart, whole = spanning(feet), spanning(tuple(box for copy in copies for box in ends_of(copy)))
    sizes = [[say.size(box.extent(axis)) for axis in (0, 1)] for box in (apart, whole)]
    text: Text = ("with its splay: the feet stand ", sizes[0][0], " × ", sizes[0][1])
    if sizes[0] == sizes[1]:
        return (*text, " over all, the most that it takes")
    return (*text, " over all; the most that it takes is ", sizes[1][0], " × ", sizes[1][1])


def assumptions(model: Model, plan: Plan) -> tuple[AssumptionView, ...]:
    """Return the assumptions as sentences, in the order in which they were made.

    That a search was ended by hand stands first: the pages of two runs may then differ.
    """
    ended = (AssumptionView(_sentence(ENDED_IN_WORDS), None, None),) if plan.ended_early else ()
    return ended + tuple(
        AssumptionView(_sentence(row.text), _line(row.span), row.instead)
        for row in model.assumptions
    )


def warnings(findings: Findings) -> tuple[FindingView, ...]:
    """Return what a maker must know before cutting: warnings first, then questions."""
    told = {Severity.WARNING: 0, Severity.QUESTION: 1}
    rows = [row for row in findings if row.severity in told]
    rows.sort(key=lambda row: (told[row.severity], row.sort_key()))
    return tuple(_finding(row) for row in rows)


def _finding(finding: Diagnostic) -> FindingView:
    span = finding.span
    remarks = [_sentence(note.message) for note in finding.notes]
    for hint in finding.hints:
        line = f" Write: {hint.corrected_line}" if hint.corrected_line else ""
        remarks.append(_sentence(hint.message) + line)
    return FindingView(
        question=finding.severity is Severity.QUESTION,
        message=_sentence(finding.message),
        line=_line(span),
        written=None if span is None else span.text(),
        remarks=tuple(remarks),
    )


def _line(span: Span | None) -> int | None:
    return None if span is None else span.line


def _sentence(words: str) -> str:
    return closed(capital(words))


def _totals(plan: Plan) -> tuple[Total, ...]:
    totals = plan.totals
    rows = [
        Total(str(len(plan.steps)), "steps"),
        Total(str(len(plan.visits())), "visits to a station"),
        Total(roughly(totals.work), "work"),
        Total(roughly(totals.setup), "setting up"),
        Total(roughly(totals.waiting) if totals.waiting else "none", "waiting in work hours"),
    ]
    if plan.done is not None:
        by = f"to done, on {plan.done_on} at {time_of_day(plan.done)}"
        rows.append(Total(many(plan.done.day, "day"), by))
    return tuple(rows)
