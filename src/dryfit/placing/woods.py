"""Woods that no table holds: most are mistyped, and movement and shopping rest on the name."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from dryfit.diagnostics import Assumption, Diagnostic, Hint, Severity, Span
from dryfit.notes.reading.near import nearest
from dryfit.piece.sheet_words import is_sheet
from dryfit.placing.lines import with_phrase
from dryfit.placing.site import Site
from dryfit.wood import species, wood_names

_JOINED = ("and", "or")


def report_unknown_woods(site: Site) -> None:
    """Report, once a wood, solid parts of a wood that the tables do not hold.

    Nearly the name of a known one it is a warning, else a notice: there are more woods than the
    tables hold.  Findings: wood-unknown.
    """
    told: set[str] = set()
    for timber, span in _woods(site):
        several = [word for word in _JOINED if f" {word} " in timber]
        if timber in told or species(timber) is not None:
            continue
        told.add(timber)
        near = () if several else nearest(timber, wood_names())
        severity = Severity.WARNING if near or several else Severity.NOTICE
        site.findings.append(
            Diagnostic(
                "wood-unknown",
                severity,
                f"no table holds a wood called `{timber}`: where its movement counts, it is taken "
                "to move as much as beech",
                span,
                hints=tuple(_hints(timber, near, several)),
            )
        )


def report_unknown_stock(site: Site) -> None:
    """Report, once a wood, wood on hand or of the yard that may be that of parts by another name.

    Mistyped it is a warning, a fuller or a shorter name a question: nothing is made of it.  Of
    others nothing is told: a rack holds much that one piece does not need.
    Findings: wood-unknown, wood-called-otherwise.
    """
    used = sorted({timber for timber in _timbers(site) if timber is not None})
    told: set[str] = set(used)
    for line in (*site.declared.stock, *site.declared.yard):
        if line.timber is None or line.timber in told:
            continue
        told.add(line.timber)
        site.findings += _of_stock(line.timber, line.span, used)


def taken_of_boards(site: Site) -> Iterator[Assumption]:
    """Yield, for each line of boards for the parts that does not say how they are, how it is.

    With its bark on it comes from the saw, and is rough (common practice).  A sheet with a grain
    has it along the size that is written first, and one to buy is as thick as that on hand.
    """
    used = set(_timbers(site))
    for line in (*site.declared.stock, *site.declared.yard):
        if line.timber is not None and line.timber not in used:
            continue
        one = line.count == 1 and line.price is None
        what = f"the {line.kind}" if one else f"the {line.kind}s"
        of = f" of {line.timber}" if line.timber else ""
        long = line.sizes[0]
        if line.grain and not line.grain_said and long is not None:
            yield Assumption(
                f"the grain of {what}{of} runs along the {site.shown(long)}",
                line.span,
                with_phrase(line.span, "grain along"),
            )
        if line.measured is not None and not line.measure_said:
            show = site.declared.display
            yield Assumption(
                f"{what}{of} to buy {'is' if one else 'are'} taken to measure "
                f"{show.with_unit(line.measured, fitted=True)}, as the one on hand does",
                line.span,
                with_phrase(line.span, f"measures {show.shown(line.measured, fitted=True)}"),
            )
        if line.state_said:
            continue
        state, other = ("planed", "rough") if not line.rough else ("rough", "planed")
        yield Assumption(
            f"{what}{of} {'is' if one else 'are'} {state}, and not {other}",
            line.span,
            with_phrase(line.span, state),
        )


def _of_stock(timber: str, span: Span, used: Sequence[str]) -> Iterator[Diagnostic]:
    other = next((each for each in used if _is_shorter(timber, each)), None)
    if other is not None:
        yield Diagnostic(
            "wood-called-otherwise",
            Severity.QUESTION,
            f"is this {timber} what the parts call {other}? nothing is made of it",
            span,
            hints=(Hint("call the wood the same on both lines"),),
        )
        return
    if is_sheet(timber) or species(timber) is not None:
        return
    near = nearest(timber, used) or nearest(timber, wood_names())
    if near:
        yield Diagnostic(
            "wood-unknown",
            Severity.WARNING,
            f"no part is of `{timber}`, and no table holds it: nothing is made of it",
            span,
            hints=tuple(Hint(f"did you mean `{name}`?") for name in near),
        )


def _is_shorter(timber: str, other: str) -> bool:
    """Return whether one is the other by a shorter name: oak and white oak, ply and birch ply."""
    first, second = (_plain(each) for each in (timber, other))
    return first == second or first.endswith(f" {second}") or second.endswith(f" {first}")


def _plain(timber: str) -> str:
    return timber.lower().replace("plywood", "ply")


def _timbers(site: Site) -> Iterator[str | None]:
    for part in site.parts():
        yield part.timber or site.declared.timber


def _woods(site: Site) -> Iterator[tuple[str, Span | None]]:
    """Yield the wood of each solid part, and where it is named."""
    for part in site.parts():
        if part.stock != "solid" or part.instance is not None:
            continue
        if part.timber is not None:
            yield part.timber, part.span
        elif site.declared.timber is not None:
            yield site.declared.timber, site.declared.timber_span


def _hints(timber: str, near: tuple[str, ...], several: list[str]) -> Iterator[Hint]:
    if several:
        first, _, other = timber.partition(f" {several[0]} ")
        yield Hint(
            f"one line names one wood: write `timber {first}`, and `of {other}` in the line of "
            "each part that is made of it"
        )
    for name in near:
        yield Hint(f"did you mean `{name}`?")
    if not near and not several:
        yield Hint("if it is a kind of a known wood, put that last, such as `brown ash`")
