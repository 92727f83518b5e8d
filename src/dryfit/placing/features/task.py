"""A declared cut on one copy, and the small questions that every kind asks of it."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction

from dryfit.geometry.box import Box
from dryfit.joinery.cut import Cut, Placed, bounded, from_side
from dryfit.joinery.form import PlacedForm, Side
from dryfit.piece.declared import PLACE_SIDE, DeclaredFeature, PlacedAmount
from dryfit.placing.features.surroundings import Surroundings
from dryfit.placing.site import SIDE_WORDS, Site

ENDS = "end"
MIDDLE = "middle"


@dataclass(frozen=True, slots=True)
class Misfit:
    """Why a cut cannot be put on a copy, as a clause; what to write instead; lengths in mm."""

    why: str
    remedy: str = "name a face and a distance from an edge, such as `inside`, `{12} from top`"
    figures: tuple[tuple[str, Fraction], ...] = ()


Made = tuple[Cut, ...] | Misfit


@dataclass(frozen=True, slots=True)
class Task:
    """A declared cut on one copy, or on a glued whole taken for one.

    `inward` holds, for each axis, the side on which the rest of its frame or case lies.  `placed`
    are all copies, by name, and `around` the same by where they are.
    """

    site: Site
    feature: DeclaredFeature
    copy: Placed
    inward: tuple[int, int, int]
    placed: Mapping[str, Placed]
    around: Surroundings

    @property
    def box(self) -> Box:
        """Return the outside of the copy."""
        return self.copy.box

    @property
    def name(self) -> str:
        """Return the kind and the part, for a sentence: ``groove in box side``."""
        return f"{self.feature.kind} in {self.copy.part}"

    def size(self, dimension: str) -> Fraction | None:
        """Return a size that is written, in mm."""
        return self.feature.size(dimension)

    def assume(self, text: str, phrase: str | None) -> None:
        """List what was taken for granted; `phrase` at the end of the line says it outright."""
        if phrase is None:
            self.site.assume_line(text, self.feature.span, None)
        else:
            self.site.assume(text, self.feature.span, phrase)


def third_axis(first: int, second: int) -> int:
    """Return the axis that is neither of two."""
    return 3 - first - second


def box_of(outer: Box, layers: Iterable[tuple[int, Fraction, Fraction]]) -> Box:
    """Return the outer box with its bounds replaced on some axes."""
    for axis, low, high in layers:
        outer = bounded(outer, axis, low, high)
    return outer


def under(task: Task, face: Side, depth: Fraction) -> Box:
    """Return the layer of the copy under one of its faces."""
    return from_side(task.box, *face, depth)


def cut_of(task: Task, box: Box, kind: str, face: Side, form: PlacedForm | None = None) -> Made:
    """Return the one cut with that box, or a misfit where it does not lie wholly on the copy."""
    if not task.box.contains(box):
        return _beyond(task, box, face)
    if not all(box.extent(axis) > 0 for axis in range(3)):
        return Misfit("nothing of it lies on the part")
    feature = task.feature
    role = "key slot" if feature.kind == "keys" else feature.kind
    fit = "free" if role == "groove" else None
    return (
        Cut(
            task.copy.name,
            box,
            kind,
            role,
            *face,
            fit,
            None,
            feature.span,
            feature.after,
            form,
        ),
    )


def _beyond(task: Task, box: Box, face: Side) -> Misfit:
    """Return by how much a cut is deeper than the wood, or how far it reaches beyond a side."""
    show, outer = task.site.shown, task.box
    deep, wood = box.extent(face[0]), outer.extent(face[0])
    if deep > wood:
        return Misfit(
            f"it is {show(deep)} deep in {show(wood)} of wood",
            f"make it less than {show(wood)} deep, or write it on another face",
            (("depth", deep), ("wood", wood)),
        )
    reaches = {
        (axis, side): box.high[axis] - outer.high[axis]
        if side > 0
        else outer.low[axis] - box.low[axis]
        for axis in range(3)
        for side in (-1, 1)
    }
    beyond = max(reaches, key=lambda side: reaches[side])
    far = reaches[beyond]
    return Misfit(
        f"it reaches {show(far)} beyond the {SIDE_WORDS[beyond]} of the part",
        "move it, or make it smaller",
        (("beyond", far),),
    )


def gathered(made: Iterable[Made]) -> Made:
    """Return the cuts of several places, or the first misfit among them."""
    cuts: list[Cut] = []
    for each in made:
        if isinstance(each, Misfit):
            return each
        cuts += each
    return tuple(dict.fromkeys(cuts))


def axis_of(amount: PlacedAmount) -> int | None:
    """Return the axis that an amount speaks of, or None where it only speaks of ends."""
    side = PLACE_SIDE.get(amount.place)
    return None if side is None else side[0]


def position(task: Task, amount: PlacedAmount) -> tuple[int, Fraction, int] | Misfit:
    """Return the axis that an amount speaks of, the coordinate, and the way it leads from there.

    ``12 from top`` leads downwards, ``15 below rails`` too.
    """
    if amount.place == MIDDLE:
        return Misfit("it can be centred only along one way of the part")
    if amount.place not in PLACE_SIDE:
        return Misfit(f"a distance from the {amount.place} does not say where it lies")
    axis, side = PLACE_SIDE[amount.place]
    box = task.box
    if amount.of:
        boxes = hosts_of(task, amount)
        if not boxes:
            return Misfit(
                f"no {amount.of[0].part} stands beside it to measure from",
                "measure from a side of the part itself, such as `{12} from top`",
            )
        faces = [each.low[axis] if side < 0 else each.high[axis] for each in boxes]
        start = min(faces) if side < 0 else max(faces)
        way = side if amount.beyond else -side
    else:
        start, way = (box.low[axis] if side < 0 else box.high[axis]), -side
    return axis, start + way * amount.value, way


def hosts_of(task: Task, amount: PlacedAmount) -> list[Box]:
    """Return the copies that an amount is measured from: those that the part meets, if any."""
    named = [
        task.placed[seat.name].box
        for host in amount.of
        for seat in task.site.named(host)
        if seat.name in task.placed
    ]
    near = [each for each in named if each.overlap(task.box) or each.contact(task.box)]
    return near or named
