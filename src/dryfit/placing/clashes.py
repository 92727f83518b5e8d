"""Sizes that do not add up: what two chains of reasons say about one distance (TRADE H26, H29)."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from dryfit.diagnostics import Diagnostic, Hint, Note, Severity, Span
from dryfit.piece.sum_words import figure_words
from dryfit.placing.positions import Clash, Fact
from dryfit.placing.site import Site
from dryfit.placing.solving import Contradiction
from dryfit.placing.standstill import solve


def report_clashes(site: Site) -> None:
    """Report every clash once, however many copies it concerns.

    Findings: sizes-clash, shoulder-length-given.
    """
    for contradiction in site.equations.contradictions:
        site.findings.append(_contradiction(site, contradiction))
    told: set[tuple[str, Span | None, Fraction]] = set()
    for clash in site.positions.clashes:
        chain = site.positions.chain(clash.fact.start, clash.fact.end)
        finding = _shoulder_given(site, clash, chain) or _sizes_clash(site, clash, chain)
        # Every copy of a row differs by its own amount, for one and the same cause.
        in_a_row = clash.fact.reason.rule == "spread"
        difference = Fraction(0) if in_a_row else abs(clash.known - clash.fact.distance)
        cause = (finding.code, finding.span, difference)
        if cause not in told:
            told.add(cause)
            site.findings.append(finding)


def _sizes_clash(site: Site, clash: Clash, chain: Sequence[Fact]) -> Diagnostic:
    fact, difference = clash.fact, abs(clash.known - clash.fact.distance)
    said = _told_first(fact, chain)
    written = {step.reason.span: step.reason.words for step in chain if step.reason.span}
    return Diagnostic(
        "sizes-clash",
        Severity.ERROR,
        f"the sizes do not add up: {fact.reason.words}, but "
        f"{'; '.join(said[:3])}{'; ...' if len(said) > 3 else ''}: they differ by "
        f"{site.shown(difference)}",
        fact.reason.span,
        rule="H26",
        figures={"difference": difference},
        notes=tuple(Note(words, span) for span, words in list(written.items())[:6]),
        hints=(Hint("change one of these sizes, or leave one out so that it is worked out"),),
    )


def _contradiction(site: Site, found: Contradiction) -> Diagnostic:
    """Return that relations cannot all hold, with every line that has a share in it."""
    reason, difference = found.relation.reason, found.difference
    reasons = (each.reason for each in found.behind if each.reason.words)
    told = [each for each in reasons if each.words != reason.words]
    said = list(dict.fromkeys(each.words for each in told))
    written = {each.span: each.words for each in told if each.span}
    span = reason.span or next(iter(written), None)
    return Diagnostic(
        "sizes-clash",
        Severity.ERROR,
        f"the sizes do not add up: {reason.words}, but {'; '.join(said[:3])}"
        f"{'; ...' if len(said) > 3 else ''}: they differ by {site.shown(difference)}",
        span,
        rule="H26",
        figures={"difference": difference},
        notes=tuple(Note(words, at) for at, words in written.items()),
        hints=(Hint("change one of these sizes, or leave one out so that it is worked out"),),
    )


def report_circles(site: Site) -> None:
    """Report sizes that lean on each other so that none of them is ever known.

    Where no line has a sum that leans on a size, that two things are alike is no circle: some size
    is simply unknown.  Findings: sizes-in-a-circle.
    """
    leaning = (each for each in solve(site).circles() if any(r.leans for r in each.relations))
    for circle in leaning:
        reasons = list(dict.fromkeys(each.reason for each in circle.relations))
        words = list(dict.fromkeys(each.words for each in reasons))
        leans = dict.fromkeys(name for each in circle.relations for name in each.leans)
        open_ones = " and the ".join(figure_words(name) for name in leans)
        known = f", but the {open_ones} is known only from that" if leans else ""
        spans = {each.span: each.words for each in reasons if each.span}
        site.findings.append(
            Diagnostic(
                "sizes-in-a-circle",
                Severity.ERROR,
                f"sizes lean on each other in a circle: {'; '.join(words)}{known}",
                next(iter(spans), None),
                rule="H28",
                notes=tuple(Note(said, span) for span, said in spans.items()),
                hints=(Hint("write one of these sizes or places as a plain measure"),),
            )
        )


def _told_first(fact: Fact, chain: Sequence[Fact]) -> list[str]:
    # A size that the maker wrote for the part in question explains most.
    owner = fact.end.owner
    own = [step for step in chain if step.reason.rule == "size" and step.start.owner == owner]
    words = (step.reason.words for step in (*own, *chain) if step.reason.words)
    return list(dict.fromkeys(words))


def _shoulder_given(site: Site, clash: Clash, chain: Sequence[Fact]) -> Diagnostic | None:
    """H29: a written length that lacks just what the joints at its ends add."""
    steps = (clash.fact, *chain)
    for step in steps:
        figure = next(iter(step.reason.figures), "")
        part = figure.removesuffix(".length")
        if step.reason.rule != "size" or part == figure:
            continue
        enters = [abs(other.distance) for other in steps if other.reason.guest == part]
        adds, given = sum(enters, Fraction(0)), abs(step.distance)
        if not enters or adds != abs(clash.known - clash.fact.distance):
            continue
        cut = site.shown(given + adds)
        return Diagnostic(
            "shoulder-length-given",
            Severity.ERROR,
            f"{part} {site.shown(given)}: this looks like the length between its shoulders; "
            f"with its joints it is cut {cut}",
            step.reason.span,
            rule="H29",
            figures={"given": given, "cut length": given + adds},
            hints=(Hint(f"write {cut} long, or leave the length out"),),
        )
    return None
