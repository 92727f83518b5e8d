"""What is screwed down over a lap holds to the part whose wood lies there."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from dryfit.geometry.box import spanning
from dryfit.joinery.cut import Cut, Placed, bounded
from dryfit.placing.found import Found
from dryfit.placing.site import Site

Laps = Mapping[str, Sequence[tuple[Found, Cut]]]
"""By copy, its laps, each with the joint that it is cut for."""


def with_holes_in_wood(
    site: Site, found: Sequence[Found], placed: Mapping[str, Placed]
) -> tuple[Found, ...]:
    """Return the joints, with screws over a lap driven into the other part of that lap; list it.

    A slat that is screwed down over the corner of a lapped frame holds to that corner, whichever
    of its two parts the notes name: in the one that is cut away there a hole would be one in air.
    Screws that reach through the lap into the named part stay.
    """
    laps: dict[str, list[tuple[Found, Cut]]] = {}
    for joint in found:
        for cut in joint.cuts:
            if cut.role == "lap":
                laps.setdefault(cut.copy, []).append((joint, cut))
    made = tuple(
        _in_wood(joint, laps, placed) if joint.kind == "screws" else joint for joint in found
    )
    for before, after in zip(found, made, strict=True):
        if before.host != after.host:
            _list(site, before, after, placed)
    return made


def _list(site: Site, before: Found, after: Found, placed: Mapping[str, Placed]) -> None:
    copies = (before.guest, after.host, before.host)
    guest, host, named = (site.written(placed[copy].part) for copy in copies)
    words = f"at laps that take the wood of the {named}, the {guest} are screwed to the {host}"
    site.assume_line(words, before.span, None)


def _in_wood(joint: Found, laps: Laps, placed: Mapping[str, Placed]) -> Found:
    pilots = [cut for cut in joint.cuts if cut.role == "pilot hole"]
    others = {_part_there(cut, laps, placed) for cut in pilots}
    if len(others) != 1 or any(cut.copy != joint.host for cut in pilots):
        return joint
    (name,) = others
    touch = None if name is None else placed[joint.guest].box.contact(placed[name].box)
    if name is None or touch is None:
        return joint
    cuts = tuple(
        replace(cut, copy=name)
        if cut.role == "pilot hole"
        else replace(cut, mate=placed[name].part)
        for cut in joint.cuts
    )
    axis, region = touch
    # The hole for the shank is wider than the pilot, and may reach over the edge of the lap.
    reach = spanning((region, joint.region))
    reach = bounded(reach, axis, region.low[axis], region.high[axis])
    return replace(joint, host=name, region=reach, cuts=cuts)


def _part_there(hole: Cut, laps: Laps, placed: Mapping[str, Placed]) -> str | None:
    """Return the copy that fills the lap in which a hole would lie wholly, or None."""
    for joint, lap in laps.get(hole.copy, ()):
        other = joint.host if joint.guest == hole.copy else joint.guest
        cut_away = (cut.box for cut in joint.cuts if cut.copy == other)
        if not lap.box.contains(hole.box) or not placed[other].box.contains(hole.box):
            continue
        if not any(box.overlap(hole.box) for box in cut_away):
            return other
    return None
