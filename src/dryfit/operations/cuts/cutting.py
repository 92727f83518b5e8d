"""Joinery: every feature gets a way of cutting, and equal cuts become one operation."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction
from types import MappingProxyType

from dryfit.joinery.bridle import OPEN_MORTISE
from dryfit.joinery.pegs import PEG_SLOT
from dryfit.kinds.roles import CORNER_ROLES, FINGER
from dryfit.operations import naming
from dryfit.operations.cut import Cut, Site, sites_of
from dryfit.operations.cuts import splayed
from dryfit.operations.cuts.bevels import bevel_cut
from dryfit.operations.cuts.compound import compound_cut
from dryfit.operations.cuts.corner_cuts import DOVETAIL_JIG, corner_by_hand, in_a_jig
from dryfit.operations.cuts.curves import curve_cut
from dryfit.operations.cuts.drifting import by_its_formula
from dryfit.operations.cuts.fingers import finger_cut
from dryfit.operations.cuts.glued_frames import cuts_in_frame
from dryfit.operations.cuts.groove_families import GrooveFamily, groove_families, ways_of
from dryfit.operations.cuts.grooves import cuts_by
from dryfit.operations.cuts.identity import named_apart
from dryfit.operations.cuts.jigs import with_set_ups
from dryfit.operations.cuts.mitring import mitre_cut
from dryfit.operations.cuts.mortises import hole_cut, mortise_cut, nearest_end
from dryfit.operations.cuts.open_mortises import open_mortise_cuts
from dryfit.operations.cuts.tapers import taper_cut
from dryfit.operations.minutes import tenths
from dryfit.operations.passes import checked_when_whole
from dryfit.operations.shapes import CURVE, TAPER, is_shape
from dryfit.operations.shapes import KINDS as SHAPES
from dryfit.operations.ways import methods
from dryfit.operations.ways.by_hand import hand_cut
from dryfit.operations.ways.cross_cuts import CROSS_KINDS, CrossMachine, cross_cut, goes_across
from dryfit.operations.ways.edges import edge_cut, is_edge
from dryfit.operations.ways.machines import SAW
from dryfit.operations.ways.methods import BLADE, Choice
from dryfit.operations.ways.reference_ends import NEARER, turned_ends
from dryfit.operations.ways.top_fixing_words import BY_HAND
from dryfit.operations.words import some_of
from dryfit.placing.model import Model
from dryfit.plan.operation import Operation, Work
from dryfit.shop.shop import Shop

ACROSS = "laps, housings and tenons"
ENDS = "ends that slots are measured from"
GROUPS = frozenset({ACROSS, ENDS})
"""Mating groups for which a way may be told in place of the rule's."""
NO_WAYS: Mapping[str, str] = MappingProxyType({})


@dataclass(frozen=True, slots=True)
class Turned:
    """Slots that share a stop when they are measured from the nearer end, and whether they are."""

    sites: frozenset[tuple[str, str]] = frozenset()
    taken: bool = False


@dataclass(frozen=True, slots=True)
class _Chosen:
    choice: Choice
    grooves: Mapping[tuple[str, str], str]
    turned: Turned


@dataclass(frozen=True, slots=True)
class Joinery:
    """The operations that cut features, with the cuts that each is made of, and the choice."""

    operations: tuple[Operation, ...]
    cuts: tuple[tuple[Cut, ...], ...]
    choice: Choice
    grooves: tuple[GrooveFamily, ...] = ()
    turned: Turned = Turned()


def joinery_of(model: Model, shop: Shop, ways: Mapping[str, str] = NO_WAYS) -> Joinery:
    """Return the cutting operations of all parts, in the order of parts and features.

    `ways` name, by mating group, the way that is taken in place of the rule's.
    """
    sites = tuple(
        site
        for part in model.parts
        if not part.made
        for site in sites_of(part)
        if site.feature.role != "key slot"
    )
    crossing = tuple(
        site
        for site in sites
        if site.feature.kind in CROSS_KINDS
        and goes_across(site)
        and site.feature.after is None
        and not _at_the_bench(site)
        and not is_shape(site.feature)
    )
    choice = methods.choose(crossing, model.display, shop, ways.get(ACROSS))
    ends = turned_ends(crossing, choice.machine_of, model.display.unit, shop)
    turned = Turned(ends, taken=bool(ends) and ways.get(ENDS) == NEARER)
    along = (site for site in sites if naming.runs_along(site.feature))
    grooves = groove_families(
        (site for site in along if site.feature.after is None), model.display, shop
    )
    chosen = _Chosen(choice, ways_of(grooves), turned)
    cuts = [
        cut
        for site in sites
        for cut in checked_when_whole(
            _off_the_bark(_cuts_of(site, sites, chosen, model, shop), site, shop)
        )
    ]
    set_up = with_set_ups(in_turn(cuts), shop)
    groups = _equal(by_its_formula(cut, model.display) for cut in set_up)
    ids = named_apart(groups)
    rows = (_operation(name, group) for name, group in zip(ids, groups, strict=True))
    operations = tuple(_with_choice(row, choice) for row in rows)
    return Joinery(operations, groups, choice, grooves, turned)


def _off_the_bark(cuts: tuple[Cut, ...], site: Site, shop: Shop) -> tuple[Cut, ...]:
    """Return a cut to marks at the bench, where a machine would want a waney edge at its fence."""
    held = {
        surface
        for cut in cuts
        if cut.hold is not None
        for surface in (cut.hold.down, cut.hold.against_fence, cut.hold.at_stop)
    }
    if held.isdisjoint(site.part.waney) or is_shape(site.feature):
        return cuts
    return (hand_cut(site, shop),)


def in_turn(cuts: Iterable[Cut]) -> list[Cut]:
    """Return the cuts, the tapers of each part in their turns, where its first one stood."""
    row = list(cuts)
    first: dict[str, int] = {}
    for index, cut in enumerate(row):
        if cut.kind == TAPER:
            first.setdefault(cut.site.part.name, index)
    order = {
        index: (first[cut.site.part.name], cut.turn) if cut.kind == TAPER else (index, 0)
        for index, cut in enumerate(row)
    }
    return [row[index] for index in sorted(order, key=lambda each: order[each])]


def _with_choice(operation: Operation, choice: Choice) -> Operation:
    """Return a cut in several passes of the blade with the reason why no dado set makes it."""
    passes = max((len(work.passes) for work in operation.work), default=0)
    blade = operation.station == SAW and operation.kind in {"lap", "housing", "tenon cheek"}
    if choice.saved is None or choice.chosen != BLADE or passes < 2 or not blade:
        return operation
    why = f"In passes of the blade that is in the saw: {methods.choice_in_words(choice)}"
    level = "The teeth leave lines in the bottom: level them with a chisel before the fit is tried"
    return replace(operation, details=(*operation.details, (why,), (level,)))


def _cuts_of(
    site: Site,
    sites: tuple[Site, ...],
    chosen: _Chosen,
    model: Model,
    shop: Shop,
) -> tuple[Cut, ...]:
    by_hand = site.feature.role in {
        "biscuit slot",
        "pocket hole",
        "pin hole",
        "hinge recess",
        PEG_SLOT,
        *BY_HAND,
    }
    if by_hand or is_edge(site.feature):
        # Its machine or jig is held in the hand, on the part that lies on the bench.
        return (edge_cut(site, model, shop) if is_edge(site.feature) else hand_cut(site, shop),)
    if site.feature.after is not None and not is_shape(site.feature):
        return cuts_in_frame(site, model, shop)
    if site.feature.role in _IN_A_WAY_OF_ITS_OWN:
        return _cuts_of_its_own(site, sites, model, shop)
    key = methods.key_of(site)
    machine = chosen.choice.machine_of.get(key)
    if machine is not None:
        return (_across(site, machine, chosen.turned, shop),)
    if naming.runs_along(site.feature):
        return cuts_by(chosen.grooves[key], site, model.display, shop)
    if site.feature.kind == "mortise":
        marks = _many_pockets(site, sites)
        way = mortise_cut if site.part.sloped is None else splayed.mortise_in_a_leg
        return (way(site, to_marks=marks, shop=shop),)
    if site.feature.kind == "hole":
        marks = _many_stops(site, sites)
        return (hole_cut(site, to_marks=marks, display=model.display, shop=shop),)
    return (hand_cut(site, shop),)


def _across(site: Site, machine: CrossMachine, turned: Turned, shop: Shop) -> Cut:
    if turned.taken and methods.key_of(site) in turned.sites:
        return cross_cut(site, machine, shop, turned=True)
    return cross_cut(site, machine, shop)


def _shape_cut(site: Site, shop: Shop) -> Cut:
    ways = {CURVE: curve_cut, TAPER: taper_cut}
    return ways.get(site.feature.role, bevel_cut)(site, shop)


_IN_A_WAY_OF_ITS_OWN = frozenset({"mitre", OPEN_MORTISE, *CORNER_ROLES, *SHAPES, *splayed.ROLES})


def _cuts_of_its_own(
    site: Site, sites: tuple[Site, ...], model: Model, shop: Shop
) -> tuple[Cut, ...]:
    """Return the cuts of what is made in a way of its own: in an end, or a shape that is no box."""
    if is_shape(site.feature):
        return (_shape_cut(site, shop),)
    if site.feature.role in splayed.ROLES:
        marks = _many_stops(site, sites)
        return (splayed.round_cut(site, to_marks=marks, display=model.display, shop=shop),)
    if site.feature.role == "mitre":
        if site.feature.slopes:
            return (compound_cut(site, model.display, shop),)
        return (mitre_cut(site, sites, shop),)
    if site.feature.role == OPEN_MORTISE:
        return open_mortise_cuts(site, model.display, shop)
    if site.feature.role == FINGER:
        return (finger_cut(site, model.display, shop) or corner_by_hand(site, shop),)
    if shop.accessory(DOVETAIL_JIG) is not None:
        return (in_a_jig(site, shop),)
    return (corner_by_hand(site, shop),)


def _at_the_bench(site: Site) -> bool:
    # A notch stands anywhere along an edge, and an end is no surface for a sled.
    alone = site.feature.mate is None and site.feature.surface in naming.ENDS
    return alone or site.feature.role in {"notch", *splayed.ROLES}


def _many_stops(site: Site, sites: tuple[Site, ...]) -> bool:
    """Return whether the part's holes of one job stand at more places than one stop serves."""
    return len({nearest_end(other)[1] for other in _alike(site, sites)}) > 1


def _many_pockets(site: Site, sites: tuple[Site, ...]) -> bool:
    """Return whether the part has pockets of one job that need not be exact, at several places."""
    places = {other.feature.along for other in _alike(site, sites)}
    return site.feature.fit == "free" and len(places) > 1


def _alike(site: Site, sites: tuple[Site, ...]) -> tuple[Site, ...]:
    return tuple(
        other
        for other in sites
        if other.part is site.part and other.feature.role == site.feature.role
    )


def _equal(cuts: Iterable[Cut]) -> tuple[tuple[Cut, ...], ...]:
    """Return cuts of one part, deed and setting together, in the order of their first."""
    groups: dict[tuple[object, ...], list[Cut]] = {}
    for cut in cuts:
        key = (
            cut.site.part.name,
            cut.what,
            cut.turn,
            cut.station,
            cut.site.feature.after,
            tuple(sorted((setting.axis, setting.token()) for setting in cut.settings)),
        )
        groups.setdefault(key, []).append(cut)
    return tuple(tuple(group) for group in groups.values())


def _operation(name: str, group: tuple[Cut, ...]) -> Operation:
    first = group[0]
    details = tuple(dict.fromkeys(detail for cut in group for detail in cut.details))
    cautions = tuple(dict.fromkeys(caution for cut in group for caution in cut.cautions))
    return Operation(
        id=name,
        kind=first.kind,
        station=first.station,
        part=first.site.part.name,
        settings=first.settings,
        work=_works(group),
        tenths=tenths(sum((cut.exact for cut in group), Fraction(0))),
        sentence=_sentence(name, group),
        tests=first.tests,
        trial=first.trial,
        together=first.visit,
        check=next((cut.check for cut in group if cut.check is not None), None),
        cautions=cautions,
        details=details,
    )


def _sentence(name: str, group: tuple[Cut, ...]) -> str:
    """Return the sentence, with the word for the side where only that tells two cuts apart."""
    first, side = group[0], name.rpartition(" / ")[2]
    worked = {copy.name for cut in group for copy in cut.site.copies}
    hands = {copy.hand for cut in group for copy in cut.site.copies}
    hand = next(iter(hands)) if len(hands) == 1 else None
    deed = first.deed
    if side in {"upper", "lower"}:
        deed = deed.replace(first.what, f"{side} {first.what}", 1)
    return f"{deed} {some_of(first.site.part, len(worked), hand)}{first.manner}"


def _works(group: tuple[Cut, ...]) -> tuple[Work, ...]:
    """Return one entry for each way of holding, features of the same copies drawn together."""
    rows: dict[tuple[object, ...], list[Cut]] = {}
    for cut in group:
        names = tuple(copy.name for copy in cut.site.copies)
        rows.setdefault((names, cut.hold, cut.passes, cut.slopes), []).append(cut)
    return tuple(
        Work(
            part=cuts[0].site.part.name,
            copies=tuple(copy.name for copy in cuts[0].site.copies),
            features=tuple(cut.site.feature.id for cut in cuts),
            hold=cuts[0].hold,
            passes=cuts[0].passes,
            slopes=cuts[0].slopes,
        )
        for cuts in rows.values()
    )
