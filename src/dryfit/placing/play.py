"""The play of what goes between others without a joint: what its line leaves at each end."""

from __future__ import annotations

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.piece.declared import Amount, Contact, DeclaredPart, GapAround
from dryfit.placing.directions import bounded_axis, spread_axis
from dryfit.placing.gaps import gap_at
from dryfit.placing.positions import Face, Reason
from dryfit.placing.site import SIDE_WORDS, Site

_WAYS = ("across", "front to back", "up and down")
_WAYS_OUT = ("at left and right", "at front and back", "above or below")


def play_at(part: DeclaredPart, contact: Contact, axis: int, side: int) -> Amount | None:
    """Return what a line leaves between an end of a part and the host there, or None.

    A joint leaves nothing.  The lone gap of a spread row is that between its copies.
    """
    if contact.preposition != "between" or not _is_loose(contact):
        return None
    of_a_row = part.spread is not None and part.apart is None
    return gap_at(part, axis, side, general=not of_a_row)


def _is_loose(contact: Contact) -> bool:
    """Return whether no joint holds the ends: a shelf on pins is as loose as one without any."""
    return contact.joint is None or contact.joint.kind == "shelf pins"


def state_play(site: Site, beside: Face, own: Face, play: Amount) -> None:
    """Tell that a face of a copy stops short, by its play, of the face beside it."""
    reason = Reason(
        "gap",
        f"gap at {beside.owner}",
        f"{own.owner} stands {site.said(play, fitted=True)} from {beside.owner}",
        play.span,
        figures=play.behind.figures,
        also=play.behind.spans,
    )
    site.state(beside, own, play, reason, sign=-own.side)


def report_idle_play(site: Site, part: DeclaredPart) -> None:
    """Report each gap of what goes between others that lies where nothing stands beside it.

    Findings: gap-of-nothing.
    """
    loose = [each for each in site.contacts(part.name, "between") if _is_loose(each)]
    if not loose or site.contacts(part.name, "in") or site.declared.broken:
        return
    axes = {bounded_axis(site, part, each) for each in loose} - {spread_axis(part)}
    for gap in part.gaps:
        of_the_row = gap.axis is None and part.spread is not None and part.apart is None
        if not of_the_row and not (axes if gap.axis is None else gap.axis in axes):
            free = " and ".join(_WAYS[axis] for axis in sorted(axes))
            only = f"it has play {free} only: `gap {gap.amount.span.text()}`"
            hint = only if axes else "leave it out"
            site.findings.append(_idle(part, gap.amount, f"nothing stands {_where(gap)}", hint))
    if part.apart is not None and part.spread is None:
        said = "for copies in a row add `spread`, for play at the ends write `gap {2}`"
        hint = site.declared.display.examples(said)
        site.findings.append(_idle(part, part.apart, "its copies stand in no row", hint))


def _idle(part: DeclaredPart, gap: Amount, why: str, hint: str) -> Diagnostic:
    return Diagnostic(
        "gap-of-nothing",
        Severity.ERROR,
        f"{part.name}: {why}, so nothing is made of this gap",
        gap.span,
        hints=(Hint(hint),),
    )


def _where(gap: GapAround) -> str:
    if gap.axis is None:
        return "beside it but what bounds its row"
    if gap.side:
        return f"at its {SIDE_WORDS[gap.axis, gap.side]}"
    return f"beside it {_WAYS_OUT[gap.axis]}"
