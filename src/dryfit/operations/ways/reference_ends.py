"""A slot is measured from R; from the nearer end, where it then shares a stop (TRADE 0.7).

The part is turned end for end, so that one stop serves what lies alike from both its ends.  That
is as exact as the length of the part: it is offered only where all lengths are cut at one stop.
"""

from __future__ import annotations

from fractions import Fraction

from dryfit.operations.cut import Site
from dryfit.operations.milling.lengths import way_to_length
from dryfit.operations.ways import methods
from dryfit.operations.ways.cross_cuts import reference_end
from dryfit.operations.ways.methods import Machines
from dryfit.placing.model import Part
from dryfit.shop.shop import Shop
from dryfit.stock.blanks.blank import fed_length

FROM_R = "R for all"
NEARER = "the nearer one, the part turned end for end"

Key = tuple[str, str]
Stop = tuple[str, str, Fraction]


def turned_ends(
    sites: tuple[Site, ...], machine_of: Machines, unit: str, shop: Shop
) -> frozenset[Key]:
    """Return the slots, by part and feature, that share a stop when they are measured from R2."""
    rows = [(site, machine) for site in sites if (machine := machine_of[methods.key_of(site)])]
    stops: set[Stop] = set()
    for site, machine in rows:
        _, (_, far) = reference_end(site, machine.longest)
        stops.add((machine.station, machine.cutter, far))
    found: set[Key] = set()
    for site, machine in rows:
        end, (start, far) = reference_end(site, machine.longest)
        other = site.part.length - start
        shared = (machine.station, machine.cutter, other) in stops
        nearer = end == "R" and start > 0 and other < far
        if nearer and shared and _at_one_stop(site.part, unit, shop):
            found.add(methods.key_of(site))
    return frozenset(found)


def _at_one_stop(part: Part, unit: str, shop: Shop) -> bool:
    return way_to_length(part, fed_length(part, unit, shop), shop).stop
