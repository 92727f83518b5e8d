"""What is carried to the place: the whole, or what it comes apart into, and how that gets in.

Two copies are of one load where a joint holds them for good.  What is screwed, hinged or buttoned
on after the finish, knock-down or bolted, or only lies there, comes off again.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction

from dryfit.geometry.box import Box, spanning
from dryfit.geometry.passing import goes_round, leaning_width, stands_up
from dryfit.kinds.joints import RUNNERS
from dryfit.piece.declared import INSIDE, own_name, thing_of
from dryfit.piece.declared.site import PlaceWords, WayIn
from dryfit.placing.model import Assembly, Copy, Model
from dryfit.placing.stages import copies_inside

_LOOSE = RUNNERS | {"rest"}
_STAYS_ON = frozenset({"screws", "back rabbet"})
"""Fittings that are left on where they make their load no larger: a ledger, a back; ours."""

_UPRIGHT = "upright"


@dataclass(frozen=True, slots=True)
class Load:
    """Equal loads: what one is called, how many there are, its copies, and width, depth, height.

    `ways` says for each way in how it goes through, None where it does not.  `stands` tells whether
    it can be stood up under the ceiling, or needs not be.
    """

    title: str
    count: int
    copies: tuple[str, ...]
    size: tuple[Fraction, Fraction, Fraction]
    ways: tuple[str | None, ...]
    stands: bool

    @property
    def goes(self) -> bool:
        """Whether it gets to its place."""
        return self.stands and None not in self.ways


def carried(model: Model) -> tuple[Load, ...]:
    """Return the loads in which the piece gets in: one if all of it does, else all that come off.

    With the word that the piece is built in place, glue-ups that do not get in are left apart.
    """
    place = model.place or PlaceWords()
    every = tuple(copy.name for copy in _copies(model))
    if not every:
        return ()
    whole = _load("the whole piece", every, model, place)
    if whole.goes:
        return (whole,)
    groups = comes_apart_into(model)
    if place.built is not None:
        groups = tuple(
            piece for group in groups for piece in left_apart(group, model, place) or (group,)
        )
    return _alike([_load(titled(group, model), group, model, place) for group in groups])


def comes_apart_into(model: Model) -> tuple[tuple[str, ...], ...]:
    """Return the groups of copies that hold together for good, in the order of the cut list."""
    fitted = {name for fitting in model.fittings for name in fitting.joints}
    order = {copy.name: n for n, copy in enumerate(_copies(model))}
    boxes = {copy.name: copy.box for copy in _copies(model)}
    group_of = {name: [name] for name in order}
    joints = [joint for joint in model.joints if {joint.guest, joint.host} <= order.keys()]
    for joint in joints:
        apart = joint.id in fitted or joint.fastened is not None or joint.kind in _LOOSE
        if not apart:
            _join(group_of, joint.guest, joint.host)
    for joint in joints:
        if joint.id in fitted and joint.kind in _STAYS_ON and joint.fastened is None:
            one, two = group_of[joint.guest], group_of[joint.host]
            round_one, round_two = (
                spanning(tuple(boxes[n] for n in group)) for group in (one, two)
            )
            if round_one.contains(round_two) or round_two.contains(round_one):
                _join(group_of, joint.guest, joint.host)
    groups = {id(group): tuple(sorted(group, key=order.__getitem__)) for group in group_of.values()}
    return tuple(sorted(groups.values(), key=lambda group: order[group[0]]))


def left_apart(
    group: tuple[str, ...], model: Model, place: PlaceWords
) -> tuple[tuple[str, ...], ...]:
    """Return into what a group must stay apart to get in, by its glue-ups; empty: nothing helps.

    The last glue-up is left for the site first, then those that it takes up.
    """
    if _load("", group, model, place).goes:
        return (group,)
    assembly = last_glue_up(group, model)
    if assembly is None:
        return ()
    known = {each.name: each for each in model.assemblies}
    pieces: list[tuple[str, ...]] = []
    for name in assembly.of:
        inner = tuple(copies_of(known[name], model)) if name in known else (name,)
        kept = left_apart(inner, model, place)
        if not kept:
            return ()
        pieces += kept
    # A panel that the glue-up captures goes along with what it lies nearest to: by itself.
    held = {name for piece in pieces for name in piece}
    return (*pieces, *((name,) for name in group if name not in held))


def last_glue_up(group: Iterable[str], model: Model) -> Assembly | None:
    """Return the largest glue-up that lies wholly in the group, if any."""
    wanted = set(group)
    inside = [each for each in model.assemblies if wanted.issuperset(copies_of(each, model))]
    return max(inside, key=lambda each: len(copies_of(each, model)), default=None)


def copies_of(assembly: Assembly, model: Model) -> frozenset[str]:
    """Return the copies that a glue-up holds, those of the glue-ups in it among them."""
    return copies_inside(model.assemblies)[assembly.name]


def titled(group: tuple[str, ...], model: Model) -> str:
    """Return what a group is called: after its glue-up, its thing, or its parts."""
    parts = list(dict.fromkeys(model.part_of(name).name for name in group))
    things = {thing_of(name) for name in parts}
    if len(things) == 1 and INSIDE in parts[0] and _is_whole(group, model):
        return things.pop()
    assembly = last_glue_up(group, model)
    if assembly is None:
        return " with ".join(own_name(name) for name in parts[:2])
    return own_name(assembly.stage)


def _is_whole(group: tuple[str, ...], model: Model) -> bool:
    """Return whether all copies of an instance of a pattern are in the group."""
    thing = thing_of(group[0])
    names = (copy.name for copy in _copies(model))
    return all(name in group for name in names if thing_of(name) == thing)


def through(way: WayIn, size: tuple[Fraction, Fraction, Fraction]) -> str | None:
    """Return how a box of this width, depth and height goes through a way in, or None."""
    for axis in (2, 1, 0):
        plan = sorted(size[other] for other in range(3) if other != axis)
        if size[axis] <= way.height and _in_plan(way, plan[1], plan[0]):
            return _held(axis, size)
    for axis in range(3):
        thick, long = sorted(size[other] for other in range(3) if other != axis)
        leaning = leaning_width(long, thick, way.height)
        if leaning is None:
            continue
        if way.turn is None and leaning <= way.width:
            return "leaning to one side"
        if way.turn is not None:
            plan = sorted((leaning, size[axis]))
            if _in_plan(way, plan[1], plan[0]):
                return "tilted, one end up under the lintel"
    return None


def _held(axis: int, size: tuple[Fraction, Fraction, Fraction]) -> str:
    """Return how that is said, with this axis of the piece upright."""
    wide, deep, high = size
    if 4 * high < min(wide, deep):
        return "flat" if axis == 2 else "on edge"
    if axis == 2:
        return _UPRIGHT
    if axis == 1:
        return "on its back"
    return "on its end" if wide > high else "on its side"


def _in_plan(way: WayIn, long: Fraction, thick: Fraction) -> bool:
    if way.turn is None:
        return thick <= way.width
    return goes_round(long, thick, way.width, way.turn)


def _load(title: str, group: tuple[str, ...], model: Model, place: PlaceWords) -> Load:
    box = _box(group, model)
    size = (box.extent(0), box.extent(1), box.extent(2))
    ways = tuple(through(way, size) for way in place.ways)
    ceiling = place.room.ceiling[0] if place.room and place.room.ceiling else None
    comes_upright = bool(ways) and all(way == _UPRIGHT for way in ways)
    stands = ceiling is None or comes_upright or stands_up(size[2], min(size[:2]), ceiling)
    return Load(title, 1, group, size, ways, stands)


def _alike(loads: list[Load]) -> tuple[Load, ...]:
    """Return the loads, those of one name and size together."""
    rows: dict[tuple[object, ...], list[Load]] = {}
    for load in loads:
        rows.setdefault((load.title, load.size), []).append(load)
    return tuple(
        Load(same[0].title, len(same), same[0].copies, same[0].size, same[0].ways, same[0].stands)
        for same in rows.values()
    )


def _box(group: Iterable[str], model: Model) -> Box:
    wanted = set(group)
    boxes = (box for copy in _copies(model) if copy.name in wanted for box in ends_of(copy))
    return spanning(tuple(boxes))


def ends_of(copy: Copy) -> tuple[Box, ...]:
    """Return the box of a copy; of one that leans those of its two ends, placed."""
    return (copy.box,) if copy.lean is None else copy.lean.ends(copy.box)


def _copies(model: Model) -> Iterator[Copy]:
    # Buttons and such, which the program adds itself, travel in the bag with the screws.
    return (copy for part in model.parts if not part.made for copy in part.copies)


def _join(group_of: dict[str, list[str]], one: str, two: str) -> None:
    if group_of[one] is group_of[two]:
        return
    group_of[one] += group_of[two]
    for name in group_of[two]:
        group_of[name] = group_of[one]
