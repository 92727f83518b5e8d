"""Cuts across the grain on a sled: end laps, housings, cheeks and shoulders (TRADE B0, 0.4-0.7)."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from dryfit.joinery.feature import Feature, Range
from dryfit.operations import naming, setting_of
from dryfit.operations.cut import Cut, Site
from dryfit.operations.minutes import worked
from dryfit.operations.passes import between_limits, cleared_from_stop, number_of_passes
from dryfit.operations.sides import edge_at_sled_fence
from dryfit.plan.operation import Detail
from dryfit.plan.setting import Hold, Pass
from dryfit.shop.shop import Shop

STOP_IN_LINE = (
    "The stop is in line with the cutter's near side: clamp it to the rip fence, ahead of the "
    "cutter, so that the end has left it before the cut begins"
)
OPEN_KINDS = frozenset({"end lap", "notch", "rabbet"})
A_HAIR = Fraction(1, 10)
EDGES = frozenset({"E", "E2"})
ON_EDGE = Fraction(200)
"""A board that is wider sways when it stands on its edge on a sled, mm: common practice."""
CROSS_KINDS = frozenset({"end lap", "cross slot", "notch", "rabbet"})


@dataclass(frozen=True, slots=True)
class CrossMachine:
    """A machine that cuts across the grain against a stop, with one cutter in it.

    `family` is the cutter's name in the shop file, `cutter` the name with the width that it is
    built to, `width` the cut of one pass, `highest` the greatest height above the table, `base`
    the floor under the work, `longest` the farthest stop, `rate` the shop's kind of minutes;
    `shortest` and `thinnest` are what the machine takes of a part.
    """

    station: str
    accessory: str | None
    family: str
    cutter: str
    width: Fraction
    overlap: Fraction
    base: Fraction
    highest: Fraction
    longest: Fraction | None
    rate: str
    shortest: Fraction = Fraction(0)
    thinnest: Fraction = Fraction(0)

    def reaches(self, site: Site) -> bool:
        """Return whether the machine can cut the site at all."""
        feature = site.feature
        return (
            feature.kind in CROSS_KINDS
            and goes_across(site)
            and wide(feature) >= self.width
            and feature.depth + self.base <= self.highest
            and site.part.length >= self.shortest
            and site.part.thickness >= self.thinnest
            and (feature.surface not in EDGES or site.part.width <= ON_EDGE)
        )

    def passes(self, site: Site) -> int:
        """Return the number of passes that the site takes.

        What a cutter leaves at the open end of a lap or shoulder, no thicker than a shim of a dado
        set, breaks off by itself.  Beside a haunch it would stand, so that the strip is cleared to
        the end.
        """
        feature = site.feature
        if self.clears_to_the_end(site):
            return number_of_passes(_from_own_end(site)[1], self.width, self.overlap)
        if feature.kind in OPEN_KINDS and wide(feature) - self.width <= A_HAIR:
            return 1
        return number_of_passes(wide(feature), self.width, self.overlap)

    def clears_to_the_end(self, site: Site) -> bool:
        """Return whether a strip beside a haunch is a hair wider than the cutter.

        What lies beyond it goes deeper anyway, so that nothing is lost if the passes go on, and no
        spacer has to be as thin as a hair.
        """
        return beside_haunch(site) and 0 < wide(site.feature) - self.width <= A_HAIR


def beside_haunch(site: Site) -> bool:
    """Return whether the cut is what a haunch leaves of a shoulder, away from the end."""
    start, end = site.feature.along
    return site.feature.kind == "notch" and start > 0 and end < site.part.length


def _from_own_end(site: Site) -> Range:
    start, end = site.feature.along
    length = site.part.length
    return min((start, end), (length - end, length - start))


def wide(feature: Feature) -> Fraction:
    """Return the width of the cut along the part."""
    return feature.along[1] - feature.along[0]


def goes_across(site: Site) -> bool:
    """Return whether the cut runs out at both sides, as a saw or a table router makes it.

    A shoulder on an edge counts: what it leaves beside the tenon the cheeks have taken already.
    """
    if site.feature.kind in {"end lap", "notch"}:
        return True
    across = site.part.width if site.feature.surface in {"F", "B"} else site.part.thickness
    return site.feature.across == (Fraction(0), across)


def reference_end(site: Site, longest: Fraction | None) -> tuple[str, Range]:
    """Return the end that the cut is measured from, and its limits from there.

    An end lap or shoulder is measured from its own end, beside a haunch too; a slot from R unless
    only the other end brings it within reach of the stop.
    """
    start, end = site.feature.along
    length = site.part.length
    from_other = (length - end, length - start)
    if end == length and start > 0:
        return "R2", from_other
    if beside_haunch(site) and from_other == _from_own_end(site):
        return "R2", from_other
    beyond = longest is not None and end > longest
    if start > 0 and beyond and from_other[1] <= end:
        return "R2", from_other
    return "R", (start, end)


def cross_cut(site: Site, machine: CrossMachine, shop: Shop, *, turned: bool = False) -> Cut:
    """Return the cut of a site on a machine that reaches it; `turned` measures it from R2."""
    feature = site.feature
    end, (start, far) = reference_end(site, machine.longest)
    if turned:
        end, (start, far) = "R2", (site.part.length - far, site.part.length - start)
    near = far - machine.width
    at_stop = machine.longest is None or near <= machine.longest
    count = machine.passes(site)
    cleared = start == 0 or machine.clears_to_the_end(site)
    height = feature.depth + machine.base
    settings = [setting_of.named("cutter", machine.cutter), setting_of.angle("tilt")]
    if machine.accessory is not None:
        settings.append(setting_of.named("accessory", machine.accessory))
    settings.append(setting_of.height(height))
    if at_stop:
        settings.append(setting_of.distance("stop", near, machine.width, end))
    fence = edge_at_sled_fence(feature.surface, end, site.handedness)
    what, kind = naming.what_of(feature), naming.kind_of(feature)
    agreed = f"{_family(kind)} with {machine.cutter} at height {height} on the {machine.station}"
    fitted = kind in naming.TESTED
    steps = _depth_steps(feature, machine, shop)
    return Cut(
        site=site,
        what=what,
        kind=kind,
        station=machine.station,
        settings=setting_of.known_to(shop, machine.station, settings),
        hold=Hold(feature.surface, fence, end if at_stop else None),
        passes=cleared_from_stop(count)
        if cleared
        else _passes(far - start, machine, count, at_stop=at_stop),
        exact=worked(shop, machine.rate, each=count * steps * len(site.copies)),
        deed=f"Cut the {naming.plural(what)} on",
        trial=agreed if fitted else None,
        tests=naming.TESTED.get(kind, 0),
        visit=agreed if fitted else None,
        check=naming.check_of(feature),
        details=_about_stop(near, at_stop=at_stop),
    )


def _about_stop(near: Fraction, *, at_stop: bool) -> tuple[Detail, ...]:
    if not at_stop:
        return (("The stop does not reach: cut to knife lines",),)
    if near <= A_HAIR:
        # The cutter is as wide as the cut is long: a block on the sled's fence would be sawn.
        return ((STOP_IN_LINE,),)
    return ()


def _family(kind: str) -> str:
    # A half lap's housing and its end lap are one joint: their depths have to agree.
    return "laps and housings" if kind in {"lap", "housing"} else f"{kind}s"


def _passes(
    width: Fraction, machine: CrossMachine, count: int, *, at_stop: bool
) -> tuple[Pass, ...]:
    if at_stop:
        return between_limits(width, machine.width, count)
    return tuple(Pass(between=index > 1) for index in range(count))


def _depth_steps(feature: Feature, machine: CrossMachine, shop: Shop) -> int:
    """Return in how many depths a router goes down; a saw cuts to full depth at once."""
    if machine.station != "router table":
        return 1
    steps = feature.depth / shop.stations[machine.station].limits["deepest_pass"]
    return -(-steps.numerator // steps.denominator)
