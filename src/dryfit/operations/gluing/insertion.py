"""In which order the members of a glue-up go together: each by a straight path (TRADE C1.2-3).

What can be taken off by a straight pull can be put on by a straight push.  So the glued whole is
taken apart in thought, along the six directions of the piece, and the order read backwards.  A
member that two others hold between them comes off after one of these, and so goes in before it.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction

import networkx as nx

from dryfit.geometry.box import Box
from dryfit.geometry.solid import Solid
from dryfit.operations.gluing.screwed_first import screwed_first
from dryfit.operations.members import all_copies, assembly_named
from dryfit.placing.model import Assembly, Model

Direction = tuple[int, int]
"""An axis of the piece, and +1 or -1 along it."""
DIRECTIONS: tuple[Direction, ...] = tuple((axis, side) for axis in range(3) for side in (-1, 1))
Blocked = Mapping[Direction, Mapping[str, frozenset[str]]]


@dataclass(frozen=True, slots=True)
class Insertion:
    """How the members of a glue-up go together.

    `order` are the members of the assembly, each with a straight path when its turn comes.
    `units` are members that are put together first and then go on as one.  `stuck` are members
    that no straight path brings together, empty for what can be built; `holders` are those that
    stop the first of them.
    """

    order: tuple[str, ...]
    units: tuple[tuple[str, ...], ...] = ()
    stuck: tuple[str, ...] = ()
    holders: tuple[str, ...] = ()


def insertion_of(assembly: Assembly, model: Model) -> Insertion:
    """Return the order in which the members of an assembly can be put together.

    The last one in closes its joints by the shortest way along glued faces; between equals the
    order of the notes decides.  The only glued whole waits for the loose parts;
    what is screwed on before the glue goes in with what it is on.
    """
    carriers = _screwed_first(assembly, model)
    held = {
        name: tuple(each for each, on in carriers.items() if on == name) for name in assembly.of
    }
    members = tuple(name for name in assembly.of if name not in carriers)
    shapes = {
        name: tuple(
            box
            for each in (name, *held[name])
            for box in _shape(_copies_of(each, model), assembly, model)
        )
        for name in members
    }
    mitred = tuple(_mitred(assembly, model))
    blocked = {way: _blockers(shapes, way, mitred) for way in DIRECTIONS}
    wholes = tuple(name for name in members if assembly_named(model, name) is not None)
    only = wholes[0] if len(wholes) == 1 else None
    found = put_together(members, blocked, _slides(assembly, model), only)
    order = (each for name in found.order for each in (name, *held[name]))
    return replace(found, order=tuple(order))


def _screwed_first(assembly: Assembly, model: Model) -> dict[str, str]:
    """Return the members that are screwed on before the glue is opened: each on which other."""
    member_of = {copy: name for name in assembly.of for copy in _copies_of(name, model)}
    found = {
        member_of[joint.guest]: member_of[joint.host] for joint in screwed_first(assembly, model)
    }
    return {name: on for name, on in found.items() if name != on and on not in found}


def _copies_of(member: str, model: Model) -> tuple[str, ...]:
    inner = assembly_named(model, member)
    return (member,) if inner is None else all_copies(inner, model)


def _shape(copies: tuple[str, ...], assembly: Assembly, model: Model) -> tuple[Box, ...]:
    """Return boxes that cover a member; cuts for parts outside the assembly do not matter."""
    inside = {model.part_of(name).name for name in all_copies(assembly, model)}
    boxes: list[Box] = []
    for name in copies:
        copy, part = model.copy(name), model.part_of(name)
        cuts = tuple(
            box
            for feature in part.features
            if copy.hand in feature.hands
            and (feature.mate is None or feature.mate in inside)
            # Of a form the wood that may stay counts, and what is cut later is still there.
            and feature.form is None
            and feature.after != assembly.stage
            for box in feature.boxes(copy.box, copy.frame)
        )
        boxes += Solid(copy.box, cuts).largest_boxes()
    # A dowel sits in what enters, and goes in with it.
    for joint in (model.joint(name) for name in assembly.joints):
        boxes += joint.loose_pieces if joint.guest in copies else ()
    return tuple(boxes)


def _mitred(assembly: Assembly, model: Model) -> Iterator[tuple[str, str, Direction]]:
    """Yield which member a mitre keeps another from, and on which way.

    The slanting faces shut two of the six directions: towards the corner along the member's own
    length, and towards the inside of the corner.
    """
    member_of = {copy: name for name in assembly.of for copy in _copies_of(name, model)}
    for joint in (model.joint(name) for name in assembly.joints):
        if joint.kind != "mitre":
            continue
        for name, other in ((joint.guest, joint.host), (joint.host, joint.guest)):
            inner, outward = _corner(other, joint.region, model)
            yield member_of[name], member_of[other], _corner(name, joint.region, model)
            yield member_of[name], member_of[other], (inner, -outward)


def _corner(copy: str, region: Box, model: Model) -> Direction:
    placed = model.copy(copy)
    axis = placed.frame.axes[0][0]
    return axis, 1 if region.high[axis] == placed.box.high[axis] else -1


def _blockers(
    shapes: Mapping[str, tuple[Box, ...]],
    way: Direction,
    mitred: tuple[tuple[str, str, Direction], ...],
) -> dict[str, frozenset[str]]:
    """Return, for each member, those that stand in its way when it is pulled off that way."""
    shut = {(name, other) for name, other, shut_way in mitred if shut_way == way}
    return {
        name: frozenset(
            other
            for other, others in shapes.items()
            if other != name
            and ((name, other) in shut or any(_stops(a, b, way) for a in own for b in others))
        )
        for name, own in shapes.items()
    }


def _stops(moving: Box, fixed: Box, way: Direction) -> bool:
    axis, side = way
    for across in range(3):
        if across != axis and not (
            moving.low[across] < fixed.high[across] and fixed.low[across] < moving.high[across]
        ):
            return False
    if side > 0:
        return fixed.low[axis] >= moving.high[axis]
    return fixed.high[axis] <= moving.low[axis]


def _slides(assembly: Assembly, model: Model) -> dict[tuple[str, str], tuple[Fraction, ...]]:
    """Return, for two members, how far glued faces rub along each axis when they are joined."""
    member_of = {copy: name for name in assembly.of for copy in _copies_of(name, model)}
    slides: dict[tuple[str, str], tuple[Fraction, ...]] = {}
    for joint in (model.joint(name) for name in assembly.joints):
        pair = (member_of[joint.guest], member_of[joint.host])
        rubbed = tuple(joint.region.extent(axis) for axis in range(3))
        for key in (pair, pair[::-1]):
            known = slides.get(key, (Fraction(0),) * 3)
            slides[key] = tuple(map(max, known, rubbed))
    return slides


def put_together(
    members: tuple[str, ...],
    blocked: Blocked,
    slides: Mapping[tuple[str, str], tuple[Fraction, ...]],
    whole: str | None = None,
) -> Insertion:
    """Return how members go together, of which `blocked` says what stops what on each way.

    `slides` are, for two members, the lengths that glued faces rub along each axis in mm; `whole`
    is the only member that is glued up itself, if there is one.
    """
    if len(members) < 2:
        return Insertion(members)
    offered = [(way, group) for way in DIRECTIONS for group in _movable(members, blocked[way])]
    if not offered:
        return _stuck(members, blocked)

    def worth(offer: tuple[Direction, tuple[str, ...]]) -> tuple[bool, int, Fraction, int]:
        (axis, _), group = offer
        rest = (name for name in members if name not in group)
        rubbed = (
            slides[pair][axis]
            for other in rest
            for name in group
            if (pair := (name, other)) in slides
        )
        last = max(members.index(name) for name in group)
        return whole in group, len(group), max(rubbed, default=Fraction(0)), -last

    _, group = min(offered, key=worth)
    before = put_together(tuple(n for n in members if n not in group), blocked, slides, whole)
    added = put_together(group, blocked, slides, whole)
    return Insertion(
        (*before.order, *added.order),
        (*before.units, *added.units, *([group] if len(group) > 1 else [])),
        (*before.stuck, *added.stuck),
        (*before.holders, *added.holders),
    )


def _movable(
    members: tuple[str, ...], blockers: Mapping[str, frozenset[str]]
) -> list[tuple[str, ...]]:
    """Return the groups of members that nothing outside the group stops."""
    inside = set(members)
    graph: nx.DiGraph[str] = nx.DiGraph()
    graph.add_nodes_from(members)
    graph.add_edges_from((name, other) for name in members for other in blockers[name] & inside)
    groups = [set(group) for group in nx.strongly_connected_components(graph)]
    free = [
        group
        for group in groups
        if len(group) < len(members) and all(blockers[name] & inside <= group for name in group)
    ]
    rows = (tuple(name for name in members if name in group) for group in free)
    return sorted(rows, key=lambda row: members.index(row[0]))


def _stuck(members: tuple[str, ...], blocked: Blocked) -> Insertion:
    """Return the members as they stand, and who holds the one that most others hold."""
    inside = set(members)
    held = {
        name: {other for way in DIRECTIONS for other in blocked[way][name]} & inside
        for name in members
    }
    first = max(members, key=lambda name: (len(held[name]), -members.index(name)))
    others = tuple(name for name in members if name != first)
    holders = tuple(name for name in members if name in held[first])
    return Insertion(members, (), (first, *others), holders)
