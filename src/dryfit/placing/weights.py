"""What copies, glue-ups and the whole piece weigh, from the solids as they are cut.

Volumes in exact mm3: of round holes and round-overs with a close fraction for pi, of a moulding,
whose outline nobody has written, with half of its box.  Weights in exact kg.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction

from dryfit.geometry.box import Box
from dryfit.geometry.solid import Solid
from dryfit.joinery.feature import Feature
from dryfit.placing.model import Copy, Model, Part
from dryfit.placing.stages import copies_inside
from dryfit.wood.weight import density_of, weight

_PI = Fraction(355, 113)
"""Within 3 parts in ten million."""

_SHARES = {"round-over": 1 - _PI / 4, "curve": Fraction(2, 3)}
"""How much of its box a form takes: outside a quarter circle, under a parabola."""

_HALF = Fraction(1, 2)
"""Slants take just half of their box; of a moulding it is a guess."""


@dataclass(frozen=True, slots=True)
class Weight:
    """A weight in kg, and what is not in it: parts and bought things that nothing weighs."""

    kilograms: Fraction
    unknown: tuple[str, ...] = ()


def weight_of(model: Model, names: Iterable[str], untold: str = "") -> Weight:
    """Return what copies and glue-ups of these names weigh together, each copy counted once.

    A wood that no table tells the weight of counts as `untold`; without that word it weighs nothing
    here.  Parts of it are among the unknown ones either way.
    """
    inside = copies_inside(model.assemblies)
    wanted = {copy for name in names for copy in inside.get(name, (name,))}
    kilograms, unknown = Fraction(0), []
    for part in model.parts:
        copies = [copy for copy in part.copies if copy.name in wanted]
        told = density_of(part.timber or "", model.moisture.now)
        dense = told if told is not None else density_of(untold, model.moisture.now)
        if copies and told is None:
            unknown.append(part.name)
        if dense is not None:
            by_hand: dict[str, Fraction] = {}
            for copy in copies:
                if copy.hand not in by_hand:
                    by_hand[copy.hand] = weight(volume(part, copy), dense)
                kilograms += by_hand[copy.hand]
    return Weight(kilograms, tuple(unknown))


def whole_weight(model: Model, untold: str = "") -> Weight:
    """Return what the whole piece weighs, without the bought things that nothing weighs.

    `untold` is as in `weight_of`.
    """
    made = weight_of(model, (copy.name for part in model.parts for copy in part.copies), untold)
    bought = sum(
        (thing.count * thing.kilograms for thing in model.bought if thing.kilograms is not None),
        Fraction(0),
    )
    unknown = (thing.written for thing in model.bought if thing.kilograms is None)
    return Weight(made.kilograms + bought, (*made.unknown, *dict.fromkeys(unknown)))


def volume(part: Part, copy: Copy) -> Fraction:
    """Return the volume of a copy as it comes from the bench.

    Where forms overlap, as two tapers at the corner of a leg do, what both take counts twice.
    """
    features = [feature for feature in part.features if copy.hand in feature.hands]
    square = tuple(box for each in features for box in _square_boxes(each, copy))
    left = Solid(copy.box, square).volume()
    for feature in features:
        share = _share(feature)
        common = feature.box(copy.box, copy.frame).overlap(copy.box)
        if share is not None and common is not None:
            left -= share * Solid(common, square).volume()
    return left


def _square_boxes(feature: Feature, copy: Copy) -> tuple[Box, ...]:
    return () if _share(feature) is not None else feature.boxes(copy.box, copy.frame)


def _share(feature: Feature) -> Fraction | None:
    """Return how much of its box a cut takes that is no box, else None."""
    if feature.form is not None:
        return _SHARES.get(feature.form.kind, _HALF)
    return _PI / 4 if feature.kind == "hole" else None
