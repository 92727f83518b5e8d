"""Parts of the Model: sizes, what joints add at the ends, measurements that they wait for."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from fractions import Fraction

from dryfit.geometry.frame import LENGTH
from dryfit.joinery.cut import Cut, Placed
from dryfit.joinery.feature import Feature
from dryfit.kinds.joints import overlaps_mate
from dryfit.notes.names import plural
from dryfit.piece.declared import DeclaredPart, own_name
from dryfit.placing.fastenings import Button
from dryfit.placing.found import Found
from dryfit.placing.handed import report_not_handed
from dryfit.placing.in_openings import fillings
from dryfit.placing.lips import covered_edges, lips_of
from dryfit.placing.marks import Marked, mark
from dryfit.placing.model import Copy, EndAdd, Part
from dryfit.placing.ripped_boards import by_width
from dryfit.placing.site import Site
from dryfit.placing.staves import staves_of
from dryfit.placing.waney import kept_sides


def build_parts(
    site: Site,
    placed: Mapping[str, Placed],
    buttons: Sequence[Button],
    found: Sequence[Found],
    cuts: Mapping[str, Sequence[Cut]],
) -> tuple[Part, ...]:
    """Return the parts in the order of the notes, those that the tool adds last.

    Feature and end joints still carry no joint ids: `numbered` gives them.  Findings: not-handed.
    """
    parts = []
    for declared in site.parts():
        copies = [placed[seat.name] for seat in site.seats(declared.name)]
        for named, own in by_width(site, declared, copies):
            parts.append(_part(site, named, own, found, cuts))
            report_not_handed(site, named, parts[-1])
    for kind in dict.fromkeys(button.placed.part for button in buttons):
        own = [button.placed for button in buttons if button.placed.part == kind]
        parts.append(_buttons(site, kind, own, cuts))
    return tuple(parts)


def _written(declared: DeclaredPart, count: int) -> str:
    """Return the name as typed; of what a pattern has once in each of its copies, for several."""
    name = own_name(declared.name)
    once = declared.within is not None and declared.written.lower() == name
    return plural(declared.written) if once and count > 1 else declared.written


def _part(
    site: Site,
    declared: DeclaredPart,
    copies: Sequence[Placed],
    found: Sequence[Found],
    cuts: Mapping[str, Sequence[Cut]],
) -> Part:
    waney = kept_sides(declared)
    covered = tuple(covered_edges(site, declared)) if declared.lips else ()
    marked = mark(copies, cuts, waney, covered)
    length, width, thickness = (copies[0].box.extent(axis) for axis in declared.axes)
    adds = _adds(copies[0], marked, found)
    seats = {seat.name: seat for seat in site.seats(copies[0].part)}
    return Part(
        name=declared.name,
        written=_written(declared, len(copies)),
        timber=declared.timber or site.declared.timber,
        stock=declared.stock,
        length=length,
        width=width,
        thickness=thickness,
        shoulder_length=_shoulder_length(length, adds),
        adds=adds,
        staves=staves_of(site, declared, width),
        measures=(),
        copies=tuple(
            _copy(copy, seats[copy.name].places, seats[copy.name].number, marked) for copy in copies
        ),
        features=marked.features,
        spans=(declared.span,),
        run=declared.run,
        asked=tuple(wish.span.text() for wish in declared.wood),
        wishes=frozenset(word for wish in declared.wood for word in (wish.kind, *wish.words)),
        opening=next((filling.opening for filling in fillings(site, declared)), None),
        cut=declared.cut or site.declared.cut,
        moisture=site.moisture,
        carries=declared.carries,
        spare=declared.spare,
        rested=None if declared.rested is None else 10 * declared.rested,
        lips=lips_of(marked.frames[copies[0].name], covered),
        horns=(site.amount(declared.horns) if declared.horns else None) or Fraction(0),
        waney=("E", "E2")[-len(waney) :] if waney else (),
    )


def _shoulder_length(length: Fraction, adds: tuple[EndAdd, ...]) -> Fraction | None:
    # A part lapped at one end only has one shoulder: there is nothing to measure it to.
    if not adds or (len(adds) == 1 and overlaps_mate(adds[0].joint)):
        return None
    return length - sum((add.length for add in adds), Fraction(0))


def _copy(copy: Placed, places: tuple[str, ...], number: int | None, marked: Marked) -> Copy:
    hand = marked.hands[copy.name]
    return Copy(copy.name, places, number, hand, copy.box, marked.frames[copy.name])


def _adds(copy: Placed, marked: Marked, found: Sequence[Found]) -> tuple[EndAdd, ...]:
    axis, sign = marked.frames[copy.name].axes[LENGTH]
    adds: dict[str, EndAdd] = {}
    for joint in found:
        if joint.shares is None or copy.name not in {joint.guest, joint.host}:
            continue
        if overlaps_mate(joint.kind):
            sides = _ends_touched(copy, joint, axis)
        elif joint.guest == copy.name and joint.end and joint.end[0] == axis:
            sides = [joint.end[1]]
        else:
            continue
        for side in sides:
            end = "R" if side != sign else "R2"
            proud, floats = (
                (joint.tenon.proud, joint.tenon.floats) if joint.tenon else (Fraction(0),) * 2
            )
            length = joint.shares.extent(axis) + proud + floats
            adds.setdefault(end, EndAdd(end, _joint_word(joint.kind), length, proud, floats))
    return tuple(adds[end] for end in sorted(adds))


def _ends_touched(copy: Placed, joint: Found, axis: int) -> list[int]:
    at_low = joint.region.low[axis] == copy.box.low[axis]
    at_high = joint.region.high[axis] == copy.box.high[axis]
    return [side for side, touches in ((-1, at_low), (1, at_high)) if touches]


def _joint_word(kind: str) -> str:
    return "tenon" if kind == "mortise and tenon" else kind


def _buttons(
    site: Site, kind: str, copies: Sequence[Placed], cuts: Mapping[str, Sequence[Cut]]
) -> Part:
    # A button is used the same way round under front and back rail, so one set of marks serves.
    marked = mark(copies, cuts)
    axes = copies[0].axes
    return Part(
        name=kind,
        written=kind.replace("button", "buttons"),
        timber=site.declared.timber,
        stock="solid",
        length=copies[0].box.extent(axes[0]),
        width=copies[0].box.extent(axes[1]),
        thickness=copies[0].box.extent(axes[2]),
        shoulder_length=None,
        adds=(),
        staves=None,
        measures=(),
        copies=tuple(
            _copy(copy, (), number, marked) for number, copy in enumerate(copies, start=1)
        ),
        features=marked.features,
        spans=(),
        run="across",
        made=True,
        cut=site.declared.cut,
        moisture=site.moisture,
    )


def numbered(part: Part, joint_ids: Mapping[tuple[str, str], str]) -> Part:
    """Return the part with each feature naming the first joint instance that it serves.

    `joint_ids` maps (copy, mate part) to a joint id.
    """

    def joint_of(feature: Feature) -> str | None:
        for copy in part.copies:
            if copy.hand in feature.hands and feature.mate is not None:
                found = joint_ids.get((copy.name, feature.mate))
                if found is not None:
                    return found
        return None

    features = tuple(replace(feature, joint=joint_of(feature)) for feature in part.features)
    return replace(part, features=features)
