"""Which cuts move with a measurement that is still to be taken, and how far (TRADE C5.2).

The piece is placed once more with each open measurement a millimetre larger.  All places are
linear in it, so that what moved says exactly how often the measurement counts in each.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from dryfit.joinery.feature import Feature
from dryfit.piece.declared import PIECE_DIMENSIONS, Declared, Measured
from dryfit.placing.model import Drift, Measure, Model, Part
from dryfit.placing.place import place
from dryfit.shop.shop import Shop

STEP = Fraction(1)
STILL = (Fraction(0), Fraction(0))


def with_drifts(model: Model, declared: Declared, shop: Shop) -> Model:
    """Return the Model with the cuts of each part that move with an open measurement."""
    moved = {
        name: other
        for name in dict.fromkeys(_openings_awaited(model))
        if (other := _larger(model, declared, name, shop)) is not None
    }
    if not moved:
        return model
    return replace(model, parts=tuple(_drifting(part, moved) for part in model.parts))


def _awaited(part: Part) -> Iterator[Measure]:
    yield from (each for each in part.measures if each.walls and each.taken is None)


def _openings_awaited(model: Model) -> Iterator[str]:
    yield from (each.name for part in model.parts for each in _awaited(part))


def _larger(model: Model, declared: Declared, name: str, shop: Shop) -> Model | None:
    """Return the piece with one opening measured larger; None where it cannot be placed so."""
    opening, _, dimension = name.rpartition(" ")
    measure = next(each for part in model.parts for each in part.measures if each.name == name)
    known = next((each for each in declared.openings if each.name == opening), None)
    if known is None or dimension not in PIECE_DIMENSIONS:
        return None
    size = measure.nominal + STEP
    figure = f"{opening}.{dimension}"
    taken = Measured("opening", figure, None, None, (size,), size, known.span)
    placed, _ = place(replace(declared, measured=(*declared.measured, taken)), shop)
    return placed


def _drifting(part: Part, moved: dict[str, Model]) -> Part:
    drifts: list[Drift] = []
    for measure in _awaited(part):
        other = moved.get(measure.name)
        if other is None:
            continue
        features = {each.id: each for each in other.part(part.name).features}
        drifts += (
            drift
            for feature in part.features
            if feature.id in features
            and (drift := _drift(feature, features[feature.id], measure.name)) is not None
        )
    return replace(part, drifts=tuple(drifts))


def _drift(feature: Feature, other: Feature, name: str) -> Drift | None:
    along = _moved(feature.along, other.along)
    across = _moved(feature.across, other.across)
    return None if along == across == STILL else Drift(feature.id, name, along, across)


def _moved(
    before: tuple[Fraction, Fraction], after: tuple[Fraction, Fraction]
) -> tuple[Fraction, Fraction]:
    return (after[0] - before[0]) / STEP, (after[1] - before[1]) / STEP
