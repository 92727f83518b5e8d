"""Reference marks: which way each copy's R, E and F look, its hand, and the features between them.

All cuts of a copy are turned into its own frame.  Copies whose features are equal are the same
part: of one hand when a turn brings one onto the other, of two hands when only a mirror does
(TRADE 0.2, 0.9).
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import partial

from dryfit.geometry.frame import LENGTH, SURFACES, THICKNESS, WIDTH, Frame, frames_over
from dryfit.joinery.cut import Cut, Placed
from dryfit.joinery.feature import Feature, Range
from dryfit.joinery.flare import Flare
from dryfit.joinery.form import Form
from dryfit.joinery.splay import Slopes
from dryfit.kinds.roles import CORNER_ROLES, ROUND, TONGUE
from dryfit.placing.lip import CoveredEdge, seen_from

_BY_ROLE = frozenset({"biscuit slot", "screw slot", "counterbore", "hinge recess"})
"""Pockets that are called by their job, not by their kind."""

_HANDS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"
Shape = tuple[
    str,
    str,
    str,
    Range,
    Range,
    Fraction,
    "str | None",
    "str | None",
    "str | None",
    "Form | None",
    "Flare | None",
    Slopes,
]


@dataclass(frozen=True, slots=True)
class Marked:
    """The frames and hands of a part's copies, by copy name, and the part's features."""

    frames: Mapping[str, Frame]
    hands: Mapping[str, str]
    features: tuple[Feature, ...]


def mark(
    copies: Sequence[Placed],
    cuts: Mapping[str, Sequence[Cut]],
    waney: Sequence[int] = (),
    covered: Sequence[CoveredEdge] = (),
) -> Marked:
    """Return frames, hands and features of one part's copies.

    `waney` are the sides, -1 or 1 along the axis of the width, whose edge stays under bark.  Of a
    part with one such edge the other is the reference edge, E.  `covered` are the edges of a sheet
    with something on them: the same in every copy's marks.
    """
    frames: dict[str, Frame] = {}
    hands: dict[str, str] = {}
    classes: list[tuple[frozenset[Shape], int, str]] = []
    for copy in copies:
        own = cuts.get(copy.name, ())
        bark = waney[0] if len(waney) == 1 else 0
        preferred = _preferred(copy, bark or _edge_sign(copy, own))
        candidates = sorted(
            (frame for frame in frames_over(copy.axes) if bark in {0, frame.axes[WIDTH][1]}),
            key=partial(_differences, preferred=preferred),
        )
        if covered and frames:
            alike = seen_from(next(iter(frames.values())), covered)
            candidates = [each for each in candidates if seen_from(each, covered) == alike]
            preferred = candidates[0]
        chosen = _match(copy, own, candidates, classes)
        if chosen is None:
            shapes = _shapes(copy, own, preferred)
            # Hands go in pairs: a variant with its mirror, A with B, C with D.
            hand = _HANDS[min(2 * len(classes), len(_HANDS) - 2)]
            classes.append((shapes, preferred.handedness(), hand))
            chosen = (preferred, hand)
        frames[copy.name], hands[copy.name] = chosen
    return Marked(frames, hands, _features(copies, cuts, frames, hands))


def _preferred(copy: Placed, edge_sign: int) -> Frame:
    length, width, thickness = copy.axes
    return Frame(
        (
            (length, 1),
            (width, edge_sign),
            (thickness, -copy.outward[thickness]),
        )
    )


def _edge_sign(copy: Placed, cuts: Sequence[Cut]) -> int:
    # The reference edge is the one that a groove is measured from, so that it runs at the fence;
    # otherwise the outer edge of what stands upright, the lower one of what stands on edge.
    # Of several grooves the one nearest to an edge decides, whichever line comes first.
    width = copy.axes[WIDTH]
    near: list[tuple[Fraction, int]] = []
    for cut in cuts:
        if cut.role == TONGUE:
            # The rabbets beside a tongue are measured from its own edge, so that it is as long
            # whatever the width of the board came out as.
            return 1 if cut.box.low[width] == copy.box.low[width] else -1
        runs = cut.kind == "long slot" or (cut.kind == "rabbet" and cut.fit == "free")
        if runs and cut.axis == copy.axes[THICKNESS]:
            below = cut.box.low[width] - copy.box.low[width]
            above = copy.box.high[width] - cut.box.high[width]
            if below != above:
                near.append((min(below, above), 1 if below < above else -1))
    if near:
        return min(near)[1]
    if width == 2:
        return 1
    return -copy.outward[width]


def _match(
    copy: Placed,
    cuts: Sequence[Cut],
    candidates: Sequence[Frame],
    classes: Sequence[tuple[frozenset[Shape], int, str]],
) -> tuple[Frame, str] | None:
    shapes: dict[Frame, frozenset[Shape]] = {}
    for turned_only in (True, False):
        for known, handedness, hand in classes:
            for frame in candidates:
                if (frame.handedness() == handedness) != turned_only:
                    continue
                if frame not in shapes:
                    shapes[frame] = _shapes(copy, cuts, frame)
                if shapes[frame] == known:
                    return frame, hand if turned_only else _HANDS[_HANDS.index(hand) + 1]
    return None


def _differences(frame: Frame, preferred: Frame) -> tuple[int, int, int]:
    # Keep the face mark first; then the end of what stands upright, whose foot is its reference,
    # and the edge of what lies, which has a top and a bottom; then the third.
    order = [THICKNESS, LENGTH, WIDTH] if frame.axes[LENGTH][0] == 2 else [THICKNESS, WIDTH, LENGTH]
    first, second, third = (int(frame.axes[i] != preferred.axes[i]) for i in order)
    return (first, second, third)


def _shapes(copy: Placed, cuts: Sequence[Cut], frame: Frame) -> frozenset[Shape]:
    return frozenset(_shape(copy, cut, frame) for cut in cuts)


def _shape(copy: Placed, cut: Cut, frame: Frame) -> Shape:
    surface = frame.surface_facing(cut.axis, cut.side)
    ranges = frame.to_part(copy.box, cut.box)
    normal, side = SURFACES[surface]
    size = copy.box.extent(frame.axes[normal][0])
    depth = size - ranges[normal][0] if side else ranges[normal][1]
    if normal == THICKNESS:
        along, across = ranges[LENGTH], ranges[WIDTH]
    elif normal == WIDTH:
        along, across = ranges[LENGTH], ranges[THICKNESS]
    else:
        along, across = ranges[WIDTH], ranges[THICKNESS]
    form = None if cut.form is None else cut.form.seen_from(frame)
    flare = None if cut.flare is None else cut.flare.seen_from(frame)
    slopes = () if cut.splay is None else cut.splay.seen_from(frame)
    words = (cut.fit, cut.mate, cut.after)
    return (cut.kind, cut.role, surface, along, across, depth, *words, form, flare, slopes)


def _features(
    copies: Sequence[Placed],
    cuts: Mapping[str, Sequence[Cut]],
    frames: Mapping[str, Frame],
    hands: Mapping[str, str],
) -> tuple[Feature, ...]:
    first: dict[Shape, Cut] = {}
    carried: dict[Shape, set[str]] = {}
    for copy in copies:
        for cut in cuts.get(copy.name, ()):
            shape = _shape(copy, cut, frames[copy.name])
            first.setdefault(shape, cut)
            carried.setdefault(shape, set()).add(hands[copy.name])
    shapes = sorted(first, key=_sort_key)
    names = _names(shapes, copies)
    features = []
    for shape, name in zip(shapes, names, strict=True):
        kind, role, surface, along, across, depth, fit, mate, after, form, flare, slopes = shape
        features.append(
            Feature(
                id=name,
                kind=kind,
                role=role,
                surface=surface,
                along=along,
                across=across,
                depth=depth,
                fit=fit,
                mate=mate,
                hands=tuple(sorted(carried[shape])),
                after=after,
                span=first[shape].span,
                form=form,
                flare=flare,
                slopes=slopes,
            )
        )
    return tuple(features)


def _sort_key(shape: Shape) -> tuple[str, str, Range, Range, str, Fraction, str, str]:
    # Whatever tells two shapes apart tells their order, so that the order of the lines does not.
    kind, role, surface, along, across, depth, fit, mate, after, form, _, slopes = shape
    told = "/".join(word or "" for word in (fit, mate, after))
    leans = ", ".join(f"{toward} {slope}" for toward, slope in slopes)
    return (role, kind, along, across, surface, depth, told, _told(form) + leans)


def _told(form: Form | None) -> str:
    if form is None:
        return ""
    sizes = ", ".join(f"{name} {size}" for name, size in form.sizes)
    return f"{form.kind}/{sizes}/{form.toward}/{form.profile}"


def _names(shapes: Sequence[Shape], copies: Sequence[Placed]) -> list[str]:
    # Names grow by end, mate, surface and number until they are unique (CONTRACTS, ids).
    length = copies[0].box.extent(copies[0].axes[LENGTH])
    names = [_first_name(shape, length) for shape in shapes]
    for more in (_with_surface, _with_mate):
        names = [
            more(name, shape) if names.count(name) > 1 else name
            for name, shape in zip(names, shapes, strict=True)
        ]
    numbered = []
    for index, name in enumerate(names):
        alike = names[:index].count(name) + 1
        numbered.append(f"{name} {alike}" if names.count(name) > 1 else name)
    return numbered


def _first_name(shape: Shape, length: Fraction) -> str:
    kind, role, surface, along, mate = *shape[:4], shape[7]
    if role in CORNER_ROLES:
        return f"{role} at {surface}"
    end = " at R" if along[0] == 0 else " at R2" if along[1] == length else ""
    if role in {"tenon cheek", "tenon shoulder", "button tongue", ROUND}:
        return f"{role}{end}"
    if role == "mitre":
        return f"mitre at {shape[2]}"
    if kind == "end lap":
        return f"end lap{end}"
    if role == "haunch":
        return f"haunch for {mate}"
    if kind in {"mortise", "cross slot"} and mate and role not in _BY_ROLE:
        return f"{kind} for {mate}"
    if kind == "long slot":
        return f"{role} for {mate}" if mate else role
    return f"{role} for {mate}" if mate else role


def _with_mate(name: str, shape: Shape) -> str:
    role, mate = shape[1], shape[7]
    plain = role in CORNER_ROLES or " for " in name
    return name if plain or not mate else f"{name} for {mate}"


def _with_surface(name: str, shape: Shape) -> str:
    # The sockets of one end are told apart by their number.
    return name if shape[1] in CORNER_ROLES else f"{name} on {shape[2]}"
