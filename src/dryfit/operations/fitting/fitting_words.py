"""How loose things go to their place: what they go on, what holds them, and where they stand."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from dryfit.kinds.roles import HINGE_RECESS
from dryfit.operations.board_deeds import boards_laid
from dryfit.operations.fitting.let_in import check_let_in, let_in
from dryfit.operations.fitting.loose_units import LooseUnit, box_of
from dryfit.operations.tenon_deeds import before_the_glue, wedges_driven_dry
from dryfit.operations.ways.hinging import hung
from dryfit.placing.model import Joint, Model
from dryfit.plan.operation import Detail

UP = 2


def screws_of(joints: Iterable[Joint], model: Model) -> int:
    """Return the screws of the joints: those that go through a copy, or into it, count once."""
    mates: dict[str, set[str]] = {}
    for joint in joints:
        if joint.kind in {"screws", "pocket screws"}:
            mates.setdefault(joint.guest, set()).add(model.part_of(joint.host).name)
    return sum(_holes(copy, hosts, model) for copy, hosts in mates.items())


def _holes(copy: str, mates: set[str], model: Model) -> int:
    hand = model.copy(copy).hand
    return sum(
        feature.role in {"screw hole", "pilot hole", "pocket hole"}
        and feature.mate in mates
        and hand in feature.hands
        for feature in model.part_of(copy).features
    )


def hinges_of(unit: LooseUnit, model: Model) -> int:
    """Return on how many hinges a unit hangs: the recesses in what it brings."""
    names = {joint.guest for joint in unit.joints if joint.kind == "hinges"}
    return sum(
        feature.role == HINGE_RECESS and model.copy(name).hand in feature.hands
        for name in names
        for feature in model.part_of(name).features
    )


def _loose(unit: LooseUnit, model: Model) -> str:
    """Return the sentence for what hangs on hinges or lies on pins."""
    if unit.kind == "hinges":
        return hung(unit.words, hinges_of(unit, model))
    pins = "Set four pins into holes at one height for each shelf"
    return f"{pins}, and lay {unit.words} on them: no glue"


def laid(unit: LooseUnit, screws: int, model: Model) -> str:
    """Return the sentence that brings a unit to its place."""
    if unit.kind == "pinned":
        each = " each" if unit.many > 1 else ""
        return f"Lay {unit.words} in place dry, and drive a pin at the middle{each}: no glue"
    if unit.kind in {"hinges", "shelf pins"}:
        return _loose(unit, model)
    if unit.kind == "bolted":
        return f"Put {unit.words} in place dry, and pull the bolts tight: no glue"
    if unit.kind in {"dry", "knock-down"}:
        again = ", so that it comes apart again" if unit.kind == "knock-down" else ""
        return f"Put {unit.words} in place dry: no glue{again}"
    screwed = ""
    if screws:
        screwed = ", and drive the screws" if screws > 1 else ", and drive the screw"
    panel = let_in(unit, screwed, model)
    if panel is not None:
        return panel
    if _stands_beside(unit):
        return f"Hold {unit.words} in place against {unit.onto}{screwed}"
    if in_a_row(unit, model):
        return f"Lay {unit.words} in place with spacers between{screwed}"
    return f"Lay {unit.words} in place on {unit.onto}{screwed}"


def check_of(unit: LooseUnit, model: Model) -> str:
    """Return what is looked at when a unit is in its place."""
    panel = check_let_in(unit, model)
    if panel is not None:
        return panel
    if unit.kind == "hinges":
        return "it opens and shuts freely, and lies where it was marked when it is shut"
    if in_a_row(unit, model):
        return "gaps equal"
    if _stands_beside(unit):
        return "heights against the marks, and each one square"
    if any(joint.tenon for joint in unit.joints):
        return "the shoulders close all round"
    return "it lies down all over, and stands even"


def in_a_row(unit: LooseUnit, model: Model) -> bool:
    """Return whether the copies lie side by side in one level row, so that spacers set them."""
    if unit.many < 2 or _stands_beside(unit):
        return False
    boxes = [model.copy(name).box for name in unit.copies]
    apart = [axis for axis in range(3) if len({box.low[axis] for box in boxes}) > 1]
    return len(apart) == 1 and apart != [UP]


def _stands_beside(unit: LooseUnit) -> bool:
    """Return whether every joint is on an upright face: nothing lies there by its weight."""
    flat = [joint for joint in unit.joints if joint.kind == "screws"]
    return bool(flat) and all(joint.region.extent(UP) > 0 for joint in flat)


def place_details(unit: LooseUnit, model: Model) -> tuple[Detail, ...]:
    """Return where a unit stands: its heights on an upright face, or how far it stands over."""
    deeds = (
        *before_the_glue(unit.joints, model),
        *wedges_driven_dry(unit.joints, model),
        *boards_laid(unit.copies, model),
    )
    if _stands_beside(unit):
        return (*_heights(unit, model), *deeds)
    return (*_overhang(unit, model), *deeds) if unit.glued else deeds


def _heights(unit: LooseUnit, model: Model) -> tuple[Detail, ...]:
    hosts = tuple(dict.fromkeys(joint.host for joint in unit.joints))
    foot = min(model.copy(name).box.low[UP] for name in hosts)
    heights = sorted({model.copy(name).box.low[UP] - foot for name in unit.copies})
    words: Detail = (f"Lower edge{'s' if unit.many > 1 else ''} ", heights[0])
    for index, height in enumerate(heights[1:], start=2):
        words = (*words, " and " if index == len(heights) else ", ", height)
    return ((*words, f" above the bottom of {unit.onto}"),)


def _overhang(unit: LooseUnit, model: Model) -> tuple[Detail, ...]:
    """Return how far an assembly stands over what carries it, where that is the same all round."""
    hosts = {name for joint in unit.joints for name in (joint.guest, joint.host)}
    around = box_of(sorted(hosts - set(unit.copies)), model)
    own = box_of(unit.copies, model)
    over: set[Fraction] = {around.low[axis] - own.low[axis] for axis in range(UP)}
    over |= {own.high[axis] - around.high[axis] for axis in range(UP)}
    if len(over) > 1:
        return ()
    (by,) = over
    if by == 0:
        return ((f"Flush with {unit.onto} all round",),)
    if by < 0:
        return ((f"{unit.onto[0].upper()}{unit.onto[1:]} stands out by ", -by, " all round"),)
    return (("It stands over by ", by, " all round"),)
