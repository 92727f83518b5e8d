"""The stage: declared piece -> Model."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from dryfit.diagnostics import Assumption, Findings
from dryfit.geometry.box import Box
from dryfit.joinery.cut import Cut, Placed
from dryfit.joinery.idle_cuts import without_idle_cuts
from dryfit.joinery.run_out import run_out
from dryfit.piece.declared import Declared
from dryfit.placing.air import assume_air
from dryfit.placing.banding import banding
from dryfit.placing.bought import bought_names, bought_things, made_cuts, without_bought
from dryfit.placing.boxes import boxes_of
from dryfit.placing.coatings import build_coatings
from dryfit.placing.fastenings import Button, find_buttons
from dryfit.placing.features import declared_cuts, glued_cuts, names_glue_ups
from dryfit.placing.finishing import build_fittings, build_hardware
from dryfit.placing.found import Found, placed_copies
from dryfit.placing.instances import ids_by_mate, joint_instances
from dryfit.placing.joints import find_joints
from dryfit.placing.listing import all_assumptions
from dryfit.placing.measures import with_drawn_sizes, with_measures
from dryfit.placing.model import Assembly, Bought, Hardware, Joint, Model, Part
from dryfit.placing.overlaps import report_overlaps
from dryfit.placing.parts import build_parts, numbered
from dryfit.placing.pin_hardware import hinges, shelf_pins
from dryfit.placing.pocket_hardware import pocket_screws
from dryfit.placing.reasons import figures_of
from dryfit.placing.resting_on import with_lies
from dryfit.placing.screw_room import clear_of_late_cuts, with_screws_in_the_wood
from dryfit.placing.screw_slots import assume_screw_slots
from dryfit.placing.screws_in_laps import with_holes_in_wood
from dryfit.placing.settling import failed, settled
from dryfit.placing.shopping import Glued, shopping_list
from dryfit.placing.site import Site
from dryfit.placing.stages import build_assemblies, copies_inside
from dryfit.placing.top_fixings import clip_kerfs, find_top_fixings
from dryfit.placing.top_hardware import top_fixings_bought
from dryfit.placing.wish import Wish, WishEnd
from dryfit.placing.woods import (
    report_unknown_stock,
    report_unknown_woods,
    taken_of_boards,
)
from dryfit.shop.shop import Shop


def place(declared: Declared, shop: Shop) -> tuple[Model | None, Findings]:
    """Return the Model, or None with the findings that keep the piece from being placed.

    Hard facts first, then listed assumptions, then questions.  Findings of the modules of this
    room.
    """
    model, findings = _placed(declared, shop)
    return model, with_lies(declared, findings)


def _placed(declared: Declared, shop: Shop) -> tuple[Model | None, Findings]:
    site = settled(declared, shop)
    boxes = {} if failed(site) else boxes_of(site)
    if failed(site) or len(boxes) < len(site.seating.all()):
        return None, tuple(site.findings)
    return _model(site, boxes), tuple(site.findings)


@dataclass(frozen=True, slots=True)
class _Meetings:
    """The buttons, all that meets, and of that what meets between parts that are made here."""

    buttons: tuple[Button, ...]
    found: tuple[Found, ...]
    made: tuple[Found, ...]


@dataclass(frozen=True, slots=True)
class _Worked:
    """The cuts by the copy that they are made in, and the parts and joints that come of them."""

    cuts: Mapping[str, list[Cut]]
    parts: tuple[Part, ...]
    joints: tuple[Joint, ...]


def _model(site: Site, boxes: Mapping[str, Box]) -> Model | None:
    placed = placed_copies(site, boxes)
    lone = declared_cuts(site, placed)
    lone = (*lone, *clip_kerfs(site, placed, lone))
    meetings = _meetings(site, placed, lone)
    worked = _worked(site, placed, meetings, lone)
    assemblies: tuple[Assembly, ...] = ()
    if names_glue_ups(site) and not failed(site):
        # What is cut in a glued whole is known only once it is known what is glued.
        assemblies = build_assemblies(site, boxes, worked.joints)
        late = glued_cuts(site, placed, assemblies, worked.cuts)
        clear = clear_of_late_cuts(meetings.found, placed, (*lone, *late))
        clear = with_holes_in_wood(site, clear, placed)
        meetings = _Meetings(meetings.buttons, clear, without_bought(site, clear))
        worked = _worked(site, placed, meetings, (*lone, *late))
    if not failed(site):
        report_overlaps(site, worked.parts, worked.cuts)
    if failed(site):
        return None
    return _whole(
        site, meetings, worked, assemblies or build_assemblies(site, boxes, worked.joints)
    )


def _meetings(site: Site, placed: Mapping[str, Placed], lone: tuple[Cut, ...]) -> _Meetings:
    found = find_joints(site, placed, lone)
    cut_before = (*lone, *(cut for joint in found for cut in joint.cuts))
    buttons, held = find_buttons(site, placed, cut_before)
    held = (*held, *find_top_fixings(site, placed))
    screwed = with_screws_in_the_wood(site, (*found, *held), placed, lone)
    everything = with_holes_in_wood(site, _without_idle_rests(screwed), placed)
    return _Meetings(buttons, everything, without_bought(site, everything))


def _worked(
    site: Site, placed: Mapping[str, Placed], meetings: _Meetings, lone: Sequence[Cut]
) -> _Worked:
    cuts = _cuts_by_copy(meetings.found, lone, bought_names(site), placed)
    parts = build_parts(site, placed, meetings.buttons, meetings.found, cuts)
    return _Worked(cuts, parts, joint_instances(meetings.made, parts))


def _whole(
    site: Site, meetings: _Meetings, worked: _Worked, assemblies: tuple[Assembly, ...]
) -> Model:
    bought, joints, declared = bought_names(site), worked.joints, site.declared
    things = bought_things(site, [part for part in worked.parts if part.name in bought])
    parts = tuple(part for part in worked.parts if part.name not in bought)
    parts = with_measures(site, parts, assemblies, meetings.made)
    ids = ids_by_mate(joints, parts)
    parts = tuple(numbered(part, ids) for part in parts)
    if any(part.splay is not None for part in site.parts()):
        from dryfit.placing.splays import not_squared, splayed

        parts = splayed(site, parts, joints, assemblies)
        assemblies = not_squared(assemblies, parts)
    fittings = build_fittings(site, joints, tuple(copies_inside(assemblies).values()))
    coatings = build_coatings(site, parts, joints, assemblies)
    screws = build_hardware(site, parts, joints, fittings, _screws(joints, meetings.made))
    screws += top_fixings_bought(site, parts, joints)
    screws += hinges(site, joints, meetings.made, parts)
    screws += shelf_pins(site, parts, joints)
    screws += pocket_screws(site, joints, meetings.made, parts)
    _tell_of_wood(site, things, parts, joints)
    return Model(
        piece=declared.piece,
        source=declared.source,
        display=declared.display,
        overall=_overall(declared),
        parts=parts,
        joints=joints,
        assemblies=assemblies,
        fittings=fittings,
        coatings=coatings,
        hardware=shopping_list(
            things,
            (*screws, *banding(parts, site), *_wall_fixings(declared, things)),
            Glued(joints, assemblies, parts, declared.outdoors is not None, chosen={}),
            coatings,
            site.shop,
            declared.display.unit,
        ),
        wishes=_wishes(declared),
        stock=declared.stock,
        notes=declared.notes,
        assumptions=(
            *all_assumptions(site, meetings.found),
            *_of_sheets(site, parts, joints),
            *taken_of_boards(site),
        ),
        figures=figures_of(site, parts, meetings.made),
        limits=declared.limits,
        measured=with_drawn_sizes(site),
        done=declared.done,
        spoiled=declared.spoiled,
        outdoors=declared.outdoors,
        place=declared.place,
        bought=things,
        moisture=site.moisture,
        air=declared.air,
        yard=declared.yard,
    )


def _tell_of_wood(
    site: Site, things: Sequence[Bought], parts: Sequence[Part], joints: Sequence[Joint]
) -> None:
    """Tell what follows from how wood moves, and list what of it is taken for granted."""
    assume_screw_slots(site, parts, joints)
    report_unknown_woods(site)
    report_unknown_stock(site)
    if things:
        from dryfit.placing.rigid_things import report_rigid_things

        report_rigid_things(site, things, parts)
    assume_air(site)


def _of_sheets(
    site: Site, parts: Sequence[Part], joints: Sequence[Joint]
) -> tuple[Assumption, ...]:
    if all(part.stock != "sheet" for part in parts):
        return ()
    from dryfit.placing.sheets import sheet_assumptions

    return tuple(sheet_assumptions(site, parts, joints))


def _without_idle_rests(found: tuple[Found, ...]) -> tuple[Found, ...]:
    # What is screwed down need not be said to lie there too.
    held = {(joint.guest, joint.host) for joint in found if joint.kind != "rest"}
    return tuple(
        joint for joint in found if joint.kind != "rest" or (joint.guest, joint.host) not in held
    )


def _overall(declared: Declared) -> tuple[Fraction, Fraction, Fraction]:
    values = [amount.value for amount in declared.overall if amount is not None]
    return (values[0], values[1], values[2])


def _screws(joints: Sequence[Joint], found: Sequence[Found]) -> dict[str, int]:
    return {
        joint.id: sum(cut.role in {"pilot hole", "pocket hole"} for cut in each.cuts)
        for joint, each in zip(joints, found, strict=True)
    }


def _cuts_by_copy(
    found: Sequence[Found],
    lone: Sequence[Cut],
    bought: frozenset[str],
    placed: Mapping[str, Placed],
) -> dict[str, list[Cut]]:
    cuts: dict[str, list[Cut]] = {}
    for cut in made_cuts((*(cut for joint in found for cut in joint.cuts), *lone), bought):
        cuts.setdefault(cut.copy, []).append(cut)
    return {copy: run_out(without_idle_cuts(own), placed) for copy, own in cuts.items()}


def _wishes(declared: Declared) -> tuple[Wish, ...]:
    return tuple(
        Wish(
            WishEnd(wish.first.verb, wish.first.subject),
            WishEnd(wish.then.verb, wish.then.subject),
            wish.span,
        )
        for wish in declared.wishes
    )


def _wall_fixings(declared: Declared, things: Sequence[Bought]) -> tuple[Hardware, ...]:
    if declared.place is None or declared.place.wall is None:
        return ()
    from dryfit.placing.wall_fixings import wall_fixings

    return wall_fixings(declared.place.wall, things, declared.display.unit)
