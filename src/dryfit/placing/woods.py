"""Woods that no table holds: most are mistyped, and movement and shopping rest on the name."""

from __future__ import annotations

from collections.abc import Iterator

from dryfit.diagnostics import Diagnostic, Hint, Severity, Span
from dryfit.notes.reading.near import nearest
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
