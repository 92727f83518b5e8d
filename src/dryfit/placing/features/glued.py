"""Cuts in what is glued together: round the whole of it, or along the inside of its members."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from fractions import Fraction

from dryfit.geometry.box import Box, spanning
from dryfit.geometry.solid import Solid
from dryfit.joinery.cut import Cut, Placed, bounded
from dryfit.piece.declared import DeclaredFeature, Stretch
from dryfit.placing.features.everywhere import KINDS, tell
from dryfit.placing.features.keys import keys
from dryfit.placing.features.late import known_features
from dryfit.placing.features.surroundings import surroundings
from dryfit.placing.features.task import Misfit, Task, third_axis
from dryfit.placing.model import Assembly
from dryfit.placing.site import Site

_INNER = frozenset({"inner", "inside"})
_OF_MEMBERS = _INNER | {"outer", "outside"}
_A_TOUCH = Fraction(1)


def names_glue_ups(site: Site) -> bool:
    """Return whether a line about a cut names a glue-up."""
    stages = {stage.name for stage in site.declared.stages}
    return any(host.part in stages for each in site.declared.features for host in each.parts)


def glued_cuts(
    site: Site,
    placed: Mapping[str, Placed],
    assemblies: Sequence[Assembly],
    before: Mapping[str, Sequence[Cut]],
) -> tuple[Cut, ...]:
    """Return the cuts of all lines that name glue-ups, for each copy that is glued there.

    A cut that no line gives a moment waits for the glue-up that it names.  `before` are the cuts
    of each copy that come first: what they leave nothing of is not cut again.
    Findings: feature-off-part, taper-start.
    """
    cuts: list[Cut] = []
    around = surroundings(placed.values())
    for feature in known_features(site):
        for host in feature.parts:
            for assembly in assemblies:
                if host.part in {assembly.stage, assembly.name}:
                    members = members_of(assembly, placed, assemblies)
                    whole = _whole(assembly)
                    inward = (-whole.outward[0], -whole.outward[1], -whole.outward[2])
                    timed = _timed(site, feature, assembly)
                    cuts += _in_whole(Task(site, timed, whole, inward, placed, around), members)
    left = (_left_of(cut, before.get(cut.copy, ())) for cut in cuts)
    return tuple(dict.fromkeys(cut for cut in left if cut is not None))


def members_of(
    assembly: Assembly, placed: Mapping[str, Placed], assemblies: Sequence[Assembly]
) -> tuple[Placed, ...]:
    """Return the copies in a glue-up, those of the glue-ups inside it among them."""
    inner = {each.name: each for each in assemblies}
    found: list[Placed] = []
    for name in assembly.of:
        if name in placed:
            found.append(placed[name])
        elif name in inner:
            found += members_of(inner[name], placed, assemblies)
    return tuple(found)


def _whole(assembly: Assembly) -> Placed:
    # A glued whole is as long as its longest side and as thick as its shortest.
    longest = sorted(range(3), key=lambda axis: (-assembly.box.extent(axis), axis))
    axes = (longest[0], longest[1], longest[2])
    return Placed(assembly.name, assembly.stage, assembly.box, axes, (-1, -1, 1))


def _timed(site: Site, feature: DeclaredFeature, assembly: Assembly) -> DeclaredFeature:
    if feature.after is not None:
        return feature
    stage = assembly.stage
    text = f"the {feature.kind} in {stage}: cut when it is glued"
    site.assume(text, feature.span, f"after glue up {stage}")
    return replace(feature, after=stage)


def _in_whole(task: Task, members: Sequence[Placed]) -> tuple[Cut, ...]:
    make = KINDS.get(task.feature.kind)
    of_members = any(_OF_MEMBERS & set(surface.words) for surface in task.feature.surfaces)
    if make is not None and of_members:
        # The inner edges of a frame are those of its stiles and rails; it has none of its own.
        return tuple(cut for member in members for cut in _in_member(task, member, members))
    made = keys(task, members) if make is None else make(task)
    if isinstance(made, Misfit):
        tell(task, made)
        return ()
    return tuple(
        _limited(replace(cut, copy=member.name), common)
        for cut in made
        for member in members
        if (common := cut.box.overlap(member.box))
    )


def _left_of(cut: Cut, before: Sequence[Cut]) -> Cut | None:
    """Return a cut less the ends of it where earlier cuts, such as a tenon's, left no wood."""
    earlier = [each.box for each in before if each.form is None and each.box.overlap(cut.box)]
    cells = Solid(cut.box, tuple(earlier)).cells()
    return _limited(cut, spanning(cells)) if cells else None


def _limited(cut: Cut, box: Box) -> Cut:
    """Return a cut less what lies outside a box.

    Of a form whose section is then no longer whole, nothing is known but the box.
    """
    form = cut.form
    if form is not None and form.toward is not None:
        section = (cut.axis, form.toward[0])
        if any(box.extent(axis) != cut.box.extent(axis) for axis in section):
            form = replace(form, toward=None)
    return replace(cut, box=box, form=form)


def _in_member(task: Task, member: Placed, members: Sequence[Placed]) -> list[Cut]:
    inward = [
        1
        if member.box.low[axis] + member.box.high[axis] < task.box.low[axis] + task.box.high[axis]
        else -1
        for axis in range(3)
    ]
    through = Stretch("through", None, None, task.feature.span)
    own = replace(
        task,
        feature=replace(task.feature, extent=task.feature.extent or through),
        copy=replace(member, outward=(-inward[0], -inward[1], -inward[2])),
        inward=(inward[0], inward[1], inward[2]),
    )
    made = KINDS[task.feature.kind](own)
    if isinstance(made, Misfit):
        tell(own, made)
        return []
    inside = any(_INNER & set(surface.words) for surface in task.feature.surfaces)
    if task.feature.extent is not None or not inside:
        return list(made)
    return [_between_mates(own, cut, members) for cut in made]


def _between_mates(task: Task, cut: Cut, members: Sequence[Placed]) -> Cut:
    """Return a cut along an inner edge, ended where other members of the frame stand.

    A rabbet goes on beyond them by its own width, so that its corners come out square.
    """
    along, outer = task.copy.axes[0], task.box
    if cut.axis == along:
        return cut
    # A groove opens at the inner edge itself, what is cut into a face lies beside that edge.
    beside = cut.axis if cut.kind == "long slot" else third_axis(cut.axis, along)
    side = task.inward[beside]
    low, high = cut.box.low[beside], cut.box.high[beside]
    strip = bounded(
        cut.box,
        beside,
        low - _A_TOUCH if side < 0 else low,
        high + _A_TOUCH if side > 0 else high,
    )
    taken = [
        common
        for member in members
        if member.name != task.copy.name and (common := member.box.overlap(strip))
    ]
    start, end = _longest_free(cut.box, along, taken)
    beyond = cut.box.extent(beside) if cut.kind == "rabbet" else Fraction(0)
    start, end = max(start - beyond, outer.low[along]), min(end + beyond, outer.high[along])
    return replace(cut, box=bounded(cut.box, along, start, end))


def _longest_free(box: Box, axis: int, taken: Sequence[Box]) -> tuple[Fraction, Fraction]:
    free: list[tuple[Fraction, Fraction]] = []
    at = box.low[axis]
    for each in sorted(taken, key=lambda each: each.low[axis]):
        if each.low[axis] > at:
            free.append((at, each.low[axis]))
        at = max(at, each.high[axis])
    if at < box.high[axis]:
        free.append((at, box.high[axis]))
    whole = (box.low[axis], box.high[axis])
    return max(free, key=lambda each: each[1] - each[0], default=whole)
