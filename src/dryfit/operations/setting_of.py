"""Settings of each kind of axis; an axis that the station lacks is not asked for."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from fractions import Fraction

from dryfit.placing.model import Measure
from dryfit.plan.operation import Detail
from dryfit.plan.setting import Setting
from dryfit.shop.shop import Shop

SQUARE = Fraction(0)


def named(axis: str, name: str) -> Setting:
    """Return a cutter, an accessory or a product by its name."""
    return Setting(axis, name, unit="name")


def angle(axis: str, degrees: Fraction = SQUARE) -> Setting:
    """Return an angle in degrees; square unless another one is given."""
    return Setting(axis, degrees, unit="deg")


def height(above_table: Fraction) -> Setting:
    """Return the cutter's height above the table, as the depth of the cut asks for it."""
    return Setting("height", above_table, above="table")


def high_enough(least: Fraction, most: Fraction) -> Setting:
    """Return the cutter's height for a cut right through: any from `least` to `most` will do."""
    return Setting("height", least, above="table", at_least=least, at_most=most)


def distance(axis: str, near: Fraction, cutter: Fraction, origin: str | None) -> Setting:
    """Return a fence or stop by the cutter's near face; the far face is one cutter further.

    `origin` is the edge or end that touches, or None where the wood is still rough.
    """
    return Setting(axis, near, to="near", far=near + cutter, origin=origin)


def waiting(settings: Iterable[Setting], axis: str, measure: Measure | None) -> tuple[Setting, ...]:
    """Return the settings, the one on an axis labelled with what it waits for, if anything."""
    if measure is None:
        return tuple(settings)
    return tuple(
        replace(
            each,
            measure=measure.name,
            formula=measure.formula,
            worked=measure.worked,
            taken=measure.taken is not None,
        )
        if each.axis == axis
        else each
        for each in settings
    )


def by_formula(measure: Measure | None) -> tuple[Detail, ...]:
    """Return what a size is worked to by hand that waits for a measurement."""
    if measure is None or measure.formula == measure.name:
        return ()
    return ((f"{measure.dimension.capitalize()}: ", *measure.worked, ", as measured"),)


def limits(start: Fraction, end: Fraction, origin: str, side: str) -> Setting:
    """Return a pair of stops, one for each limit of a stopped cut, on one side of the machine."""
    return Setting("stop", start, to="both", far=end, origin=origin, side=side)


def plain(axis: str, value: Fraction) -> Setting:
    """Return a depth or a thickness."""
    return Setting(axis, value)


def known_to(shop: Shop, station: str, settings: Iterable[Setting]) -> tuple[Setting, ...]:
    """Return the settings whose axes the station has, in the station's order of setting."""
    order = [axis.name for axis in shop.stations[station].axes]
    return tuple(
        sorted((s for s in settings if s.axis in order), key=lambda s: order.index(s.axis))
    )
