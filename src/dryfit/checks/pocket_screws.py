"""H18, B3.5: pocket screws that meet inside a part, as those of two rails in a slender leg."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from itertools import combinations

from dryfit.checks.finding import finding
from dryfit.diagnostics import Diagnostic, Severity
from dryfit.geometry.box import Box
from dryfit.geometry.frame import SURFACES
from dryfit.joinery.cut import bounded
from dryfit.joinery.feature import Feature
from dryfit.joinery.pocket_screws import drift, penetration
from dryfit.kinds.roles import POCKET
from dryfit.placing.model import Copy, Joint, Model

_HALF = Fraction(5, 2)
"""Half of a pocket screw's thread, rounded up: sold as #7 and #8, 4 to 4.5 mm (from memory)."""

Screw = tuple[Joint, Box]


def check_pocket_screws(model: Model) -> Iterator[Diagnostic]:
    """Yield, once for two lines, that their pocket screws meet.  Findings: pocket-screws-meet."""
    inside: dict[str, list[Screw]] = {}
    for joint in model.joints:
        if joint.kind == "pocket screws":
            for mate, screw in _screws(joint, model):
                inside.setdefault(mate, []).append((joint, screw))
    told: set[frozenset[str]] = set()
    for mate, screws in inside.items():
        for (one, first), (two, second) in combinations(screws, 2):
            pair = frozenset(model.part_of(each.guest).name for each in (one, two))
            if pair not in told and first.overlap(second) is not None:
                told.add(pair)
                yield _met(mate, one, two)


def _met(mate: str, one: Joint, two: Joint) -> Diagnostic:
    return finding(
        "H18",
        "pocket-screws-meet",
        Severity.WARNING,
        f"{mate}: the pocket screws of {one.guest} and of {two.guest} meet in it",
        two.span,
        figures={},
        remedy="set the parts at unequal heights or thicknesses, write `pockets outside` for one "
        "of them, or join one of them with `dowels`",
    )


def _screws(joint: Joint, model: Model) -> Iterator[tuple[str, Box]]:
    """Yield, for each pocket of a joint, the mate and a box around the screw's end in it."""
    for name, mate in ((joint.guest, joint.host), (joint.host, joint.guest)):
        copy, other = model.copy(name), model.copy(mate)
        for feature in model.part_of(name).features:
            if feature.role != POCKET or copy.hand not in feature.hands:
                continue
            pocket = feature.box(copy.box, copy.frame)
            touch = pocket.contact(other.box)
            if touch is not None:
                yield mate, _end_of_screw(feature, copy, touch[0], touch[1], other)


def _end_of_screw(feature: Feature, copy: Copy, axis: int, mouth: Box, mate: Copy) -> Box:
    assert feature.form is not None
    length = dict(feature.form.sizes)["screw"]
    deep, sign = copy.frame.axes[2]
    far = SURFACES[feature.surface][1]
    away = -sign if far else sign
    # It goes on from the middle of the thickness, away from the face that it was bored from.
    middle = (copy.box.low[deep] + copy.box.high[deep]) / 2
    ends = sorted((middle, middle + away * drift(length)))
    row = ({0, 1, 2} - {axis, deep}).pop()
    along = (mouth.low[row] + mouth.high[row]) / 2
    plane = mouth.low[axis]
    side = 1 if mate.box.high[axis] > plane else -1
    reach = sorted((plane, plane + side * penetration(length)))
    box = bounded(mouth, axis, reach[0], reach[1])
    box = bounded(box, row, along - _HALF, along + _HALF)
    return bounded(box, deep, ends[0] - _HALF, ends[1] + _HALF)
