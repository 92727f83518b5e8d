"""How a top goes on with clips, plates or slotted screws, and what is bored for them (B22)."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from fractions import Fraction

from dryfit.joinery.panel import edge_movement
from dryfit.joinery.top_fixings import (
    CLIP_GAP,
    CLIPS,
    COUNTERBORE,
    HEAD,
    KINDS,
    PLATE_RECESS,
    PLATES,
    SCREW_SLOT,
)
from dryfit.operations.cut import Site
from dryfit.placing.model import Joint, Model
from dryfit.plan.operation import Detail

BY_HAND = frozenset({PLATE_RECESS, SCREW_SLOT, COUNTERBORE})
"""Cut on marks at the bench: they stand in a narrow edge, a few in each rail."""

_ASKEW = (
    "Where the rail runs with the grain of the top, set each plate askew, half-way between along "
    "and across, so that it can swing: each edge of the top moves by "
)
_TIGHT = (
    "Pull the screws in round holes tight, and those in slots only so far that the top can move: "
    "each of its edges does by "
)


def is_top_fixing(kind: str | None) -> bool:
    """Return whether a kind of joint holds a top so that it can move, and is no button."""
    return kind in KINDS


def fixed_with(kind: str, words: str, many: int) -> str:
    """Return the sentence that fits a top; `words` are those for it."""
    laid = f"Lay {words} in its place, even all round"
    if kind == PLATES:
        laid = f"Screw the plates into their recesses so that they just swing. {laid}"
    if kind == CLIPS:
        screwed = "set the clips in their kerfs, bore a pilot hole for each, and screw them to it"
    elif kind == PLATES:
        screwed = "swing the plates out under it, bore a pilot hole for each, and screw them to it"
    else:
        screwed = "bore a pilot hole through the middle of each slot, and drive the screws with a "
        screwed += "washer under each head" if many > 1 else "washer under its head"
    return f"{laid}, {screwed}: no glue, it has to move"


def fixing_details(joints: Iterable[Joint], model: Model) -> tuple[Detail, ...]:
    """Return where each fixing stands, and what lets the top move."""
    rows = tuple(joints)
    return (*_places(rows, model), *_play(rows, model))


def _places(joints: Iterable[Joint], model: Model) -> Iterator[Detail]:
    """Yield, for each rail, the middles of its clips from end R; the rest is told where cut."""
    rails: dict[str, list[Fraction]] = {}
    for joint in joints:
        if joint.kind == CLIPS:
            copy = model.copy(joint.host)
            axis, sign = copy.frame.axes[0]
            middle = (joint.region.low[axis] + joint.region.high[axis]) / 2
            start = copy.box.low[axis] if sign > 0 else copy.box.high[axis]
            rails.setdefault(joint.host, []).append(abs(middle - start))
    for name, middles in rails.items():
        words: Detail = (f"{name}: middles of the clips ",)
        for turn, middle in enumerate(sorted(middles)):
            words = (*words, *((", ",) if turn else ()), middle)
        yield (*words, " from R")


def _play(joints: tuple[Joint, ...], model: Model) -> Iterator[Detail]:
    if not joints:
        return
    kind, top = joints[0].kind, model.part_of(joints[0].guest)
    moves = Fraction(0) if top.stock == "sheet" else edge_movement(top.width, top.moving)
    if kind == CLIPS:
        yield ("Each clip stands about ", CLIP_GAP, " off the top before its screw pulls it down")
        if moves:
            yield (
                "Where the kerf runs with the grain of the top, leave each clip ",
                moves,
                " short of the bottom of the kerf, so that the top can move to either side",
            )
    elif kind == PLATES and moves:
        yield (
            _ASKEW,
            moves,
        )
    elif moves:
        yield (
            _TIGHT,
            moves,
        )


def bored_details(site: Site) -> tuple[Detail, ...]:
    """Return where a recess, slot or counterbore for a fixing stands, and how big it is."""
    feature = site.feature
    (start, end), (near, far) = feature.along, feature.across
    middle = (start + end) / 2
    edge = f"{feature.id}, in edge {feature.surface}: middle "
    if feature.role == PLATE_RECESS:
        assert feature.form is not None
        assert feature.form.toward is not None
        sizes = dict(feature.form.sizes)
        return (
            (edge, middle, " from R and ", sizes["inset"], f" from {feature.form.toward}"),
            (
                "Forstner bit ",
                sizes["diameter"],
                ", bored as deep as the plate is thick, about ",
                feature.depth,
                (
                    ": try the plate in it, it has to lie flush and to swing; wider with a chisel "
                    "where it does not"
                ),
            ),
        )
    where: Detail = (edge, middle, " from R and ", (near + far) / 2, " from F")
    long, wide = max(end - start, far - near), min(end - start, far - near)
    way = "along" if end - start > far - near else "across"
    size: Detail = (", ", wide, " across")
    if long > wide:
        size = (", ", long, f" long {way} the part, ", wide, " wide")
    deep: Detail = (", ", feature.depth, " deep") if feature.role == COUNTERBORE else ()
    head: Detail = (": it takes a washer of ", HEAD) if feature.role == COUNTERBORE else ()
    return ((*where, *size, *deep, *head),)
