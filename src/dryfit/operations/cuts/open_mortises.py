"""Open mortises of bridles: on end in a tenon jig at the table saw, or by hand (TRADE B0, B2)."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction

from dryfit.geometry.frame import OPPOSITE
from dryfit.operations import naming, setting_of
from dryfit.operations.cut import Cut, Site
from dryfit.operations.minutes import worked
from dryfit.operations.passes import fence_positions, number_of_passes
from dryfit.operations.ways import machines
from dryfit.operations.ways.by_hand import hand_cut
from dryfit.plan.operation import Detail
from dryfit.plan.setting import Hold, Pass
from dryfit.quantities import Display
from dryfit.shop.shop import Shop

_FACE = "F"
_TESTS = 1
CLAMPED: Detail = (
    (
        "The part stands on its end, clamped upright in the jig with face F against it: the fence "
        "setting is from the face of the jig to the cutter"
    ),
)

TURNED: Detail = (
    (
        "Then turn the part, face B against the jig, and cut again at the same setting: so the "
        "slot stands in the middle of the wood"
    ),
)


def open_mortise_cuts(site: Site, display: Display, shop: Shop) -> tuple[Cut, ...]:
    """Return the cuts of a slot in an end, one for each place of the jig; by hand without one.

    The blade or dado set that needs fewer passes, as far as it reaches.
    """
    ways = [way for way in _cutters(site, display, shop) if len(way[2]) > 0]
    if not ways:
        return (hand_cut(site, shop),)
    name, kerf, positions = min(ways, key=lambda way: len(way[2]))
    jig = shop.accessory(machines.TENON_JIG)
    assert jig is not None
    feature = site.feature
    what, kind = naming.what_of(feature), naming.kind_of(feature)
    group = f"open mortises {feature.across[1] - feature.across[0]} wide, {feature.depth} deep"
    common = (
        setting_of.named("cutter", name),
        setting_of.named("accessory", jig.name),
        setting_of.angle("tilt"),
        setting_of.height(feature.depth + jig.base),
    )
    exact = worked(shop, "tenon jig pass", each=len(site.copies))
    return tuple(
        Cut(
            site=site,
            what=what,
            kind=kind,
            station=machines.SAW,
            settings=setting_of.known_to(
                shop, machines.SAW, (*common, setting_of.distance("fence", near, kerf, _FACE))
            ),
            hold=Hold(feature.surface, face, None),
            passes=(Pass(),),
            exact=exact,
            deed=f"{'Cut' if turn == 1 else 'Widen'} the {naming.plural(what)} in",
            turn=turn,
            trial=group,
            tests=_TESTS,
            visit=group,
            check=naming.check_of(feature),
            details=(CLAMPED, *((TURNED,) if face != _FACE else ())),
        )
        for turn, near, face in _turns(site, positions, kerf)
    )


def _turns(
    site: Site, positions: list[Fraction], kerf: Fraction
) -> Iterator[tuple[int, Fraction, str]]:
    """Yield the passes: the how manieth setting, the distance from the face, and which face.

    A slot in the middle is cut from both faces at each setting: half the settings, and it is in the
    middle whatever the thickness came out as (common practice).
    """
    thickness = site.part.thickness
    centred = sum(site.feature.across) == thickness
    for turn, near in enumerate(positions, start=1):
        mirrored = thickness - near - kerf
        if centred and near > mirrored:
            return
        yield turn, near, _FACE
        if centred and near < mirrored:
            yield turn, near, OPPOSITE[_FACE]


def _cutters(
    site: Site, display: Display, shop: Shop
) -> list[tuple[str, Fraction, list[Fraction]]]:
    """Return the cutters that reach: name, width of one pass, and the places of the jig."""
    jig, station = shop.accessory(machines.TENON_JIG), shop.stations.get(machines.SAW)
    if jig is None or station is None or not _held(site, station.limits):
        return []
    wide = site.feature.across[1] - site.feature.across[0]
    high = site.feature.depth + jig.base
    found: list[tuple[str, Fraction, list[Fraction]]] = []
    for cutter in shop.cutters_at(machines.SAW):
        built = machines.widest_dado(cutter, wide) if cutter.kind == "set" else cutter.widest
        limit = station.limits["dado_depth" if cutter.kind == "set" else "depth"]
        if cutter.narrowest > wide or high > limit:
            continue
        overlap = shop.allowances["dado_overlap" if cutter.kind == "set" else "blade_overlap"]
        name = cutter.name
        if cutter.kind == "set":
            name = machines.built_to(cutter, built, display)
        count = number_of_passes(wide, built, overlap)
        found.append((name, built, fence_positions(site.feature.across[0], wide, built, count)))
    return found


def _held(site: Site, limits: Mapping[str, Fraction]) -> bool:
    """Return whether the jig holds the part upright: neither too short nor too long."""
    length = site.part.length
    tallest = limits.get("longest_on_jig", length)
    return limits.get("shortest_crosscut", Fraction(0)) <= length <= tallest
