"""Whether a splayed leg runs into something on its way down: exact, on the sheared boxes."""

from __future__ import annotations

from fractions import Fraction

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.geometry.lean import UP
from dryfit.placing.model import Copy, Joint, Part
from dryfit.placing.site import Site

_ZERO = Fraction(0)


def report_in_the_way(site: Site, parts: tuple[Part, ...], joints: tuple[Joint, ...]) -> None:
    """Report what stands where a splayed leg leans to, but for what it is joined to.

    Findings: splay-in-the-way.
    """
    copies = [copy for part in parts for copy in part.copies]
    joined = {frozenset((joint.guest, joint.host)) for joint in joints}
    leaning = [copy for copy in copies if copy.lean is not None]
    names = {copy.name: part for part in parts for copy in part.copies}
    for leg in leaning:
        for other in copies:
            if other is leg or frozenset((leg.name, other.name)) in joined:
                continue
            if share_space(leg, other):
                part = names[leg.name]
                site.tell_once(
                    Diagnostic(
                        "splay-in-the-way",
                        Severity.ERROR,
                        f"{other.name} stands where {leg.name} leans to",
                        part.spans[0],
                        hints=(
                            Hint("splay the legs less, set them in further, or move the other"),
                        ),
                    )
                )
                return


def share_space(one: Copy, two: Copy) -> bool:
    """Return whether two copies where they really stand have room in common, exactly."""
    low = max(one.box.low[UP], two.box.low[UP])
    high = min(one.box.high[UP], two.box.high[UP])
    for axis in (0, 1):
        for near, far in ((one, two), (two, one)):
            # The far side of the one must lie beyond the near side of the other: start + rise * z.
            start = _at_floor(near, axis, 1) - _at_floor(far, axis, -1)
            rise = _per_up(near, axis) - _per_up(far, axis)
            if rise > 0:
                low = max(low, -start / rise)
            elif rise < 0:
                high = min(high, -start / rise)
            elif start <= 0:
                return False
    return low < high


def _at_floor(copy: Copy, axis: int, side: int) -> Fraction:
    """Return where a side of a copy would be at the height 0."""
    bound = copy.box.high[axis] if side > 0 else copy.box.low[axis]
    return bound if copy.lean is None else bound + copy.lean.per_down[axis] * copy.lean.level


def _per_up(copy: Copy, axis: int) -> Fraction:
    return _ZERO if copy.lean is None else -copy.lean.per_down[axis]
