"""Where the grooves of a floating panel end: open into one another, through where nothing is lost.

A groove in a stile is stopped a little beyond the panel's corner, by the gap that the panel has
there.  A groove in a rail runs through, since beyond the shoulders the tenon clears it (B3.3).
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from fractions import Fraction

from dryfit.diagnostics import Diagnostic, Hint, Severity, Span
from dryfit.geometry.box import Box
from dryfit.geometry.solid import Solid
from dryfit.joinery.cut import Cut, Placed, bounded
from dryfit.kinds.joints import is_panelled
from dryfit.piece.declared import PLACE_SIDE, Detail
from dryfit.placing.found import Found
from dryfit.placing.site import Site

Said = Mapping[Span, Sequence[Detail]]


def with_groove_ends(
    site: Site, found: Sequence[Found], placed: Mapping[str, Placed]
) -> tuple[Found, ...]:
    """Return the joints with each panel groove as long as it is cut.

    A line may say otherwise: `through` runs out at both ends, `stopped` at none, and `stopped 40
    from bottom` ends there.  Findings: groove-stops-short.
    """
    said: Said = {
        contact.span: contact.joint.details
        for contact in site.declared.contacts
        if contact.joint is not None and contact.joint.details
    }
    gaps: dict[tuple[str, tuple[int, int] | None], Fraction] = {
        (joint.guest, joint.end): joint.clearance
        for joint in found
        if is_panelled(joint.kind) and joint.end
    }
    cuts: dict[str, list[Box]] = {}
    for cut in (cut for joint in found if not is_panelled(joint.kind) for cut in joint.cuts):
        cuts.setdefault(cut.copy, []).append(cut.box)
    return tuple(
        replace(
            joint,
            cuts=tuple(
                _as_said(
                    site,
                    _ended(cut, joint.guest, gaps, placed, cuts, said.get(joint.span, ())),
                    placed[cut.copy],
                    said.get(joint.span, ()),
                )
                if cut.copy != joint.guest
                else cut
                for cut in joint.cuts
            ),
        )
        if is_panelled(joint.kind)
        else joint
        for joint in found
    )


def _ended(
    cut: Cut,
    panel: str,
    gaps: Mapping[tuple[str, tuple[int, int] | None], Fraction],
    placed: Mapping[str, Placed],
    cuts: Mapping[str, Sequence[Box]],
    said: Sequence[Detail],
) -> Cut:
    host = placed[cut.copy]
    axis, outer = host.axes[0], host.box
    none = Fraction(0)
    low = max(cut.box.low[axis] - gaps.get((panel, (axis, -1)), none), outer.low[axis])
    high = min(cut.box.high[axis] + gaps.get((panel, (axis, 1)), none), outer.high[axis])
    removed = tuple(cuts.get(cut.copy, ()))
    if any(each.kind == "stopped" for each in said):
        return replace(cut, box=bounded(cut.box, axis, low, high))
    if _is_gone(bounded(cut.box, axis, outer.low[axis], low), axis, removed):
        low = outer.low[axis]
    if _is_gone(bounded(cut.box, axis, high, outer.high[axis]), axis, removed):
        high = outer.high[axis]
    return replace(cut, box=bounded(cut.box, axis, low, high))


def _as_said(site: Site, cut: Cut, host: Placed, said: Sequence[Detail]) -> Cut:
    """Return the groove run out at both ends, or ended where the line says that it stops."""
    axis, outer = host.axes[0], host.box
    low, high = cut.box.low[axis], cut.box.high[axis]
    for each in said:
        if each.kind == "through":
            low, high = outer.low[axis], outer.high[axis]
        if each.kind != "stopped" or each.place is None or not each.sizes:
            continue
        along, side = PLACE_SIDE[each.place]
        if along != axis:
            continue
        at = dict(each.sizes)["length"]
        end = outer.low[axis] + at if side < 0 else outer.high[axis] - at
        if (end > low) if side < 0 else (end < high):
            reach = low - outer.low[axis] if side < 0 else outer.high[axis] - high
            _stops_short(site, host, each, at, reach)
        elif side < 0:
            low = end
        else:
            high = end
    return replace(cut, box=bounded(cut.box, axis, low, high))


def _stops_short(site: Site, host: Placed, said: Detail, at: Fraction, reach: Fraction) -> None:
    shown = site.shown
    finding = Diagnostic(
        "groove-stops-short",
        Severity.ERROR,
        f"{host.part}: a groove that stops {shown(at)} from the {said.place} stops short of its "
        f"panel, which needs it to {shown(reach)} from there",
        said.span,
        "B9",
        {"stop": at, "needed": reach},
        hints=(Hint(f"write `stopped {shown(reach)} from {said.place}`, or only `stopped`"),),
    )
    site.tell_once(finding)


def _is_gone(beyond: Box, axis: int, removed: tuple[Box, ...]) -> bool:
    return beyond.extent(axis) > 0 and not Solid(beyond, removed).cells()
