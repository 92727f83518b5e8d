"""Boxes whose four sides slope out: mitred all round, without a bottom, each side of one slope.

They are placed and joined upright, as wide as the boards are along their slope; turned about its
top outer edge each board keeps its sizes, and the overall size across is true at that edge.  What
can slope is a ring of boards on edge that meet in mitres and carry no other joint and no other
cut: all of those would need angles that are not planned, and are refused.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from fractions import Fraction

from dryfit.diagnostics import Diagnostic, Hint, Severity, Span
from dryfit.geometry.frame import OPPOSITE
from dryfit.geometry.lean import UP, angle_of
from dryfit.joinery.feature import Feature
from dryfit.joinery.sloping import sloping_end
from dryfit.piece.declared import SplayWords
from dryfit.placing.model import Joint, Part
from dryfit.placing.site import Site
from dryfit.placing.splay_words import plain, ratio

_ENDS = 2
_NEAR = Fraction(1, 10)
"""Degrees that a bevel may be off the slope whose edge it makes level: no saw is set nearer."""
_NEEDED = "sides that slope meet in glued mitres: `short sides crossing long sides: mitre`"


def sloping(site: Site, parts: tuple[Part, ...], joints: tuple[Joint, ...]) -> tuple[Part, ...]:
    """Return the parts, the mitres of boards that slope out with that slope.

    Findings: splay-way-unclear, splay-joint, splay-unlike, splay-in-the-way.
    """
    words = {
        part.name: part.splay
        for part in site.parts()
        if part.splay is not None and part.splay.boards
    }
    own = [part for part in parts if part.name in words]
    for part in own:
        for finding in _wrong(site, part, words, parts, joints):
            site.tell_once(finding)
            return parts
    _list(site, own, words)
    return tuple(
        _with_slope(part, _slope(words[part.name])) if part.name in words else part
        for part in parts
    )


def _slope(words: SplayWords) -> Fraction:
    return max(words.across, words.deep)


def _with_slope(part: Part, slope: Fraction) -> Part:
    down = part.copies[0].frame.surface_facing(UP, -1)
    features = tuple(
        replace(each, slopes=((down, slope),)) if each.role == "mitre" else each
        for each in part.features
    )
    # Between shoulders a compound mitre has no one length.
    return replace(part, features=features, slopes_out=slope, adds=(), shoulder_length=None)


def _wrong(
    site: Site,
    part: Part,
    words: Mapping[str, SplayWords],
    parts: tuple[Part, ...],
    joints: tuple[Joint, ...],
) -> Iterator[Diagnostic]:
    said = words[part.name]
    if not said.way_unsaid:
        yield _error(
            "splay-way-unclear",
            f"{part.name}: the sides of a box slope out each to its own side",
            said.span,
            "leave out which way: `sloping out 1 in 4`",
        )
    yield from _not_mitred(part, words, parts, joints)
    yield from _cut_otherwise(part, said)
    if _bevelled(part) != _bevelled(next(each for each in parts if each.name in words)):
        yield _error(
            "splay-unlike",
            f"{part.name}: the edges of sides that meet in a mitre are bevelled alike",
            said.span,
            "write the bevels of all four sides, or of none",
        )
    for opening in site.declared.openings:
        if any(host.part in words for host in opening.between):
            yield _error(
                "splay-joint",
                f"{opening.name}: between sides that slope an opening has no one size",
                opening.span,
                "bound it by what stands upright, or leave out that they slope",
            )
    yield from _in_the_way(part, said, words, parts)


def _not_mitred(
    part: Part, words: Mapping[str, SplayWords], parts: tuple[Part, ...], joints: tuple[Joint, ...]
) -> Iterator[Diagnostic]:
    part_of = {copy.name: each.name for each in parts for copy in each.copies}
    said = words[part.name]
    for joint in joints:
        pair = {part_of.get(joint.guest, ""), part_of.get(joint.host, "")}
        if part.name not in pair:
            continue
        if joint.kind != "mitre" or not joint.glued or not pair <= set(words):
            what = f"a {joint.kind}" if joint.kind != "mitre" else "this mitre"
            yield _error(
                "splay-joint",
                f"{part.name}: {what} with a side that slopes is not planned, since all its cuts "
                "would lean",
                joint.span,
                f"{_NEEDED}; leave other members out, or leave out that they slope",
            )
        elif len({_slope(words[name]) for name in pair}) > 1:
            yield _error(
                "splay-unlike",
                f"{part.name}: sides that meet in a mitre slope alike",
                said.span,
                "write the same slope on both lines",
            )
    for copy in part.copies:
        if sum(copy.name in {joint.guest, joint.host} for joint in joints) != _ENDS:
            yield _error(
                "splay-joint",
                f"{copy.name}: it slopes, and is not mitred at both ends",
                said.span,
                f"{_NEEDED}, or leave out that they slope",
            )


def _bevelled(part: Part) -> frozenset[str]:
    """Return which edges are bevelled, E and E2."""
    return frozenset(each.surface for each in part.features if each.role == "bevel")


def _is_level(feature: Feature, part: Part, slope: Fraction) -> bool:
    """Return whether a cut is the bevel that makes an edge of a sloping side level."""
    form = feature.form
    if feature.role != "bevel" or form is None or feature.after is not None:
        return False
    up = part.copies[0].frame.surface_facing(UP, 1)
    (inner,) = {_inward(each) for each in part.features if each.role == "mitre"} or {""}
    toward = inner if feature.surface == up else OPPOSITE.get(inner)
    near = abs(dict(form.sizes)["angle"] - angle_of(slope)) <= _NEAR
    return near and form.toward == toward and feature.along == (Fraction(0), part.length)


def _cut_otherwise(part: Part, said: SplayWords) -> Iterator[Diagnostic]:
    inward = {_inward(each) for each in part.features if each.role == "mitre"}
    if len(inward) != 1 or not inward <= {"F", "B"}:
        yield _error(
            "splay-joint",
            f"{part.name}: both ends of a side that slopes are mitred to the inside of one box",
            said.span,
            f"{_NEEDED}, at both ends",
        )
        return
    for feature in part.features:
        if _is_level(feature, part, _slope(said)):
            continue
        if feature.role != "mitre" or feature.mate is None:
            yield _error(
                "splay-joint",
                f"{part.name}: cuts in sides that slope are not planned, and this is one "
                f"({feature.id})",
                feature.span or said.span,
                "level edges are bevelled so: " + "; ".join(_bevel_lines(part.name, _slope(said))),
            )
    if part.horns or part.measures:
        yield _error(
            "splay-joint",
            f"{part.name}: with horns or a size that is measured it cannot slope",
            said.span,
            "leave that out, or leave out that they slope",
        )


def _inward(feature: Feature) -> str:
    assert feature.form is not None
    return feature.form.toward or ""


def _in_the_way(
    part: Part, said: SplayWords, words: Mapping[str, SplayWords], parts: tuple[Part, ...]
) -> Iterator[Diagnostic]:
    """Yield what is level with the sides: inside they come in on it, outside they go out to it."""
    low = min(copy.box.low[UP] for copy in part.copies)
    high = max(copy.box.high[UP] for copy in part.copies)
    for other in parts:
        for copy in other.copies:
            level = copy.box.low[UP] <= high and copy.box.high[UP] >= low
            if other.name not in words and level:
                yield _error(
                    "splay-in-the-way",
                    f"{copy.name} stands beside the {part.name}, which slopes to it or from it: "
                    "what a box with sloping sides holds is not planned",
                    said.span,
                    "leave it out, or leave out that they slope",
                )


def _list(site: Site, own: list[Part], words: Mapping[str, SplayWords]) -> None:
    """List how the sides are counted: across at the top, their width along the slope."""
    if not own:
        return
    first, said = own[0], words[own[0].name]
    slope, show = _slope(said), site.declared.display.with_unit
    up = first.copies[0].frame.surface_facing(UP, 1)
    bevelled = _bevelled(first)
    # A level edge at the bottom ends the outer face higher up, where the sides stand farther out.
    level = bool(bevelled - {up})
    end = sloping_end(slope, first.width, first.thickness)
    low = sloping_end(slope, first.width - level * first.thickness * slope, first.thickness)
    copies = [copy for part in own for copy in part.copies]
    across = [
        max(copy.box.high[axis] for copy in copies) - min(copy.box.low[axis] for copy in copies)
        for axis in (0, 1)
    ]
    wide, deep = (site.shown(size - 2 * low.lower) for size in across)
    names = " and ".join(site.written(part.name) for part in own)
    steep = f"{ratio(slope)}, {float(angle_of(slope)):.1f} degrees off plumb"
    high = end.high - len(bevelled) * end.stands_off
    site.assume_line(
        f"the {names} slope out at the top by {steep}: the overall size across is counted at the "
        f"top, outside; at the bottom they stand {wide} x {deep} apart, from outside to outside",
        said.span,
        None,
    )
    site.assume_line(
        f"the width of the {names}, {show(first.width)}, is counted along their slope, as the "
        f"boards are cut: they stand {show(high)} high",
        said.span,
        None,
    )
    lines = _bevel_lines(names, slope)
    for place, surface in enumerate((OPPOSITE[up], up)):
        if surface not in bevelled:
            which = ("lower", "upper")[place]
            site.assume_line(
                f"the {which} edges of the {names} are left square, not level: "
                f"{show(end.stands_off, fitted=True)} lower at the outer corner than at the inner",
                said.span,
                lines[place],
            )
    for angle, taken in {each for part in own for each in words[part.name].rounded}:
        text = f"{plain(angle)} degrees is taken for a slope of {ratio(taken)}, rounded"
        site.assume_line(text, said.span, None)


def _bevel_lines(name: str, slope: Fraction) -> tuple[str, str]:
    """Return the lines of the notes that make the lower and the upper edges of sides level."""
    angle = f"{float(angle_of(slope)):.1f} degrees"
    return (
        f"bevel in {name}: outside bottom edge, {angle}",
        f"bevel in {name}: inside top edge, {angle}",
    )


def _error(code: str, message: str, span: Span, hint: str) -> Diagnostic:
    return Diagnostic(code, Severity.ERROR, message, span, hints=(Hint(hint),))
