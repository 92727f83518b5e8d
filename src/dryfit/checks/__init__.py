"""The checks that a cabinet maker would make on the placed piece, by TRADE's letters.

Each function yields its findings and names its rule; `check_model` runs them all.
"""

from __future__ import annotations

from collections.abc import Iterator

from dryfit.checks.carried import check_carried
from dryfit.checks.cuts_in_cuts import check_cuts_in_cuts
from dryfit.checks.cuts_in_joints import check_cuts_in_joints
from dryfit.checks.edges import check_edges
from dryfit.checks.glue import check_glue_ups
from dryfit.checks.glued_apart import check_glued_apart
from dryfit.checks.grain import check_grain
from dryfit.checks.grooves import check_grooves
from dryfit.checks.held import check_held
from dryfit.checks.horns import check_horns
from dryfit.checks.laps import check_laps
from dryfit.checks.limits import check_limits, check_measured
from dryfit.checks.lone_cuts import check_lone_cuts
from dryfit.checks.mortises import check_mortises
from dryfit.checks.restraint import check_restraint
from dryfit.checks.screws import check_screws
from dryfit.checks.slots import check_slots
from dryfit.checks.stages import check_stages
from dryfit.checks.sums import check_sums
from dryfit.checks.tenons import check_tenons
from dryfit.checks.tipping import check_tipping
from dryfit.diagnostics import Diagnostic, Findings
from dryfit.kinds.joints import RUNNERS, lets_move
from dryfit.kinds.part_words import PART_WORDS
from dryfit.placing.model import Model
from dryfit.shop.shop import Shop

__all__ = ["check_model"]


def check_model(model: Model, shop: Shop) -> Findings:
    """Return the findings of all checks that need no plan."""
    return tuple(_all_checks(model, shop))


def _all_checks(model: Model, shop: Shop) -> Iterator[Diagnostic]:
    kinds = frozenset(joint.kind for joint in model.joints)
    yield from _of_any_piece(model, shop)
    yield from _of_families(model, kinds)
    yield from _of_fixings(model, kinds)
    yield from _of_the_wood(model, kinds)
    if model.outdoors is not None:
        from dryfit.checks.outdoors import check_outdoors

        yield from check_outdoors(model, shop)
    if model.place is not None:
        from dryfit.checks.place import check_place

        yield from check_place(model, model.place)
    if {"table", "desk", "bureau"} & set(model.piece.lower().split()):
        from dryfit.checks.knee_room import check_knee_room

        yield from check_knee_room(model)
    if model.stock:
        # The boards on hand; most notes name none.
        from dryfit.checks.boards import check_boards
        from dryfit.checks.resawing import check_resawing
        from dryfit.checks.wood_short import check_wood_short

        yield from check_resawing(model, shop)
        yield from check_boards(model, shop)
        yield from check_wood_short(model, shop)


def _of_any_piece(model: Model, shop: Shop) -> Iterator[Diagnostic]:
    yield from check_sums(model)
    yield from check_held(model)
    yield from check_carried(model)
    yield from check_stages(model)
    yield from check_glued_apart(model)
    yield from check_glue_ups(model, shop)
    yield from check_slots(model)
    yield from check_grain(model)
    yield from check_grooves(model)
    yield from check_laps(model)
    yield from check_mortises(model, shop)
    yield from check_tenons(model)
    yield from check_horns(model)
    yield from check_restraint(model)
    yield from check_screws(model)
    yield from check_lone_cuts(model)
    yield from check_cuts_in_joints(model)
    yield from check_cuts_in_cuts(model)
    yield from check_edges(model)
    yield from check_limits(model)
    yield from check_measured(model)
    yield from check_tipping(model)


def _of_the_wood(model: Model, kinds: frozenset[str]) -> Iterator[Diagnostic]:
    """Yield what moves, and what sags, where there is such a thing; each loads its check."""
    if kinds & {"groove", "back rabbet"}:
        from dryfit.checks.panel_room import check_panel_room

        yield from check_panel_room(model)
    if any(part.opening for part in model.parts):
        from dryfit.checks.fronts import check_fronts

        yield from check_fronts(model)
    if any(coating.surfaces or coating.spared for coating in model.coatings):
        from dryfit.checks.one_face import check_one_face

        yield from check_one_face(model)
    if any(part.lips for part in model.parts):
        from dryfit.checks.lips import check_lips

        yield from check_lips(model)
    if any("waney" in part.wishes for part in model.parts):
        from dryfit.checks.waney import check_waney

        yield from check_waney(model)
    if model.air.wood is not None or any(have.moisture is not None for have in model.stock):
        from dryfit.checks.moisture import check_moisture

        yield from check_moisture(model)
    if len({(part.timber, part.cut, part.stock) for part in model.parts}) > 1:
        from dryfit.checks.unlike_woods import check_unlike_woods

        yield from check_unlike_woods(model)
    if any(part.carries or part.name.endswith("shelf") for part in model.parts):
        from dryfit.checks.shelves import check_shelves

        yield from check_shelves(model)


def _of_families(model: Model, kinds: frozenset[str]) -> Iterator[Diagnostic]:
    """Yield what is wrong with joints that few pieces have; each loads its check."""
    if any(kind.endswith("dovetail") for kind in kinds):
        from dryfit.checks.dovetails import check_dovetails

        yield from check_dovetails(model)
    if "mitre" in kinds:
        from dryfit.checks.mitres import check_mitres

        yield from check_mitres(model)
    if kinds & {"biscuits", "dowels", "loose tenon", "hinges"}:
        from dryfit.checks.bared import check_bared, check_leaves

        yield from check_bared(model)
        yield from check_leaves(model)
    if kinds & {"dowels", "shelf pins"}:
        from dryfit.checks.bored import check_bored

        yield from check_bored(model)
    if any(set(part.name.split(" ")) & set(PART_WORDS) for part in model.parts):
        from dryfit.checks.cleats import check_cleats

        yield from check_cleats(model)
    if kinds & {*RUNNERS, "hinges"}:
        yield from _of_what_opens(model, kinds)
    if "mortise and tenon" in kinds:
        from dryfit.checks.held_apart import check_held_apart

        yield from check_held_apart(model)
    if any(feature.role == "key slot" for part in model.parts for feature in part.features):
        from dryfit.checks.keys import check_keys

        yield from check_keys(model)


def _of_fixings(model: Model, kinds: frozenset[str]) -> Iterator[Diagnostic]:
    """Yield what is wrong with screws, and with what holds a top; each loads its check."""
    if any(lets_move(kind) for kind in kinds):
        from dryfit.checks.tops_held import check_tops_held

        yield from check_tops_held(model)
    if "screws" in kinds:
        from dryfit.checks.screw_heads import check_screw_heads

        yield from check_screw_heads(model)
    if "pocket screws" in kinds:
        from dryfit.checks.pocket_screws import check_pocket_screws

        yield from check_pocket_screws(model)


def _of_what_opens(model: Model, kinds: frozenset[str]) -> Iterator[Diagnostic]:
    """Yield what is wrong with drawers on wooden runners, and with doors and lids on hinges."""
    if kinds & RUNNERS:
        from dryfit.checks.drawer_room import check_drawer_room
        from dryfit.checks.runners import check_runners

        yield from check_runners(model)
        yield from check_drawer_room(model)
    if "bottom runner" in kinds:
        from dryfit.checks.bearings import check_bearings

        yield from check_bearings(model)
    if "hinges" in kinds:
        from dryfit.checks.hinge_pins import check_hinge_pins

        yield from check_hinge_pins(model)
    from dryfit.checks.front_play import check_front_play
    from dryfit.checks.ways_out import check_ways_out

    yield from check_ways_out(model)
    yield from check_front_play(model)
