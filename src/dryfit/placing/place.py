"""The stage: declared piece -> Model."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from fractions import Fraction

from dryfit.diagnostics import Findings
from dryfit.geometry.box import Box
from dryfit.joinery.cut import Cut
from dryfit.piece.declared import Declared
from dryfit.placing.bought import bought_names, bought_things, made_cuts, without_bought
from dryfit.placing.boxes import boxes_of
from dryfit.placing.coatings import build_coatings
from dryfit.placing.fastenings import find_buttons
from dryfit.placing.features import declared_cuts, glued_cuts, names_glue_ups
from dryfit.placing.finishing import build_fittings, build_hardware
from dryfit.placing.found import Found, placed_copies
from dryfit.placing.instances import ids_by_mate, joint_instances
from dryfit.placing.joints import find_joints
from dryfit.placing.listing import all_assumptions
from dryfit.placing.model import Assembly, Joint, Model, Wish, WishEnd
from dryfit.placing.overlaps import report_overlaps
from dryfit.placing.parts import build_parts, numbered
from dryfit.placing.reasons import figures_of
from dryfit.placing.resting_on import with_lies
from dryfit.placing.screw_room import with_screws_in_the_wood
from dryfit.placing.settling import failed, settled
from dryfit.placing.shopping import shopping_list
from dryfit.placing.site import Site
from dryfit.placing.stages import build_assemblies, copies_inside
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


def _model(site: Site, boxes: Mapping[str, Box]) -> Model | None:
    placed = placed_copies(site, boxes)
    lone = declared_cuts(site, placed)
    grooves = tuple(cut for cut in lone if cut.role == "groove")
    found = find_joints(site, placed, lone)
    buttons, held = find_buttons(site, placed, grooves)
    everything = _without_idle_rests(with_screws_in_the_wood(site, (*found, *held), placed, lone))
    bought = bought_names(site)
    made = without_bought(site, everything)
    cuts = _cuts_by_copy(everything, lone, bought)
    parts = build_parts(site, placed, buttons, everything, cuts)
    joints = joint_instances(made, parts)
    assemblies: tuple[Assembly, ...] = ()
    if names_glue_ups(site) and not failed(site):
        # What is cut in a glued whole is known only once it is known what is glued.
        assemblies = build_assemblies(site, boxes, joints)
        late = glued_cuts(site, placed, assemblies, cuts)
        cuts = _cuts_by_copy(everything, (*lone, *late), bought)
        parts = build_parts(site, placed, buttons, everything, cuts)
        joints = joint_instances(made, parts)
    if not failed(site):
        report_overlaps(site, parts, cuts)
    if failed(site):
        return None
    things = bought_things(site, [part for part in parts if part.name in bought])
    parts = tuple(part for part in parts if part.name not in bought)
    ids = ids_by_mate(joints, parts)
    parts = tuple(numbered(part, ids) for part in parts)
    assemblies = assemblies or build_assemblies(site, boxes, joints)
    fittings = build_fittings(site, joints, tuple(copies_inside(assemblies).values()))
    coatings = build_coatings(site, parts, joints, assemblies)
    screws = build_hardware(site, parts, joints, fittings, _screws(joints, made))
    declared = site.declared
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
            things, screws, (joints, assemblies), coatings, site.shop, declared.display.unit
        ),
        wishes=_wishes(declared),
        stock=declared.stock,
        notes=declared.notes,
        assumptions=all_assumptions(site, everything),
        figures=figures_of(site, parts, made),
        limits=declared.limits,
        measured=declared.measured,
        done=declared.done,
        spoiled=declared.spoiled,
        outdoors=declared.outdoors,
        bought=things,
    )


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
        joint.id: sum(cut.role == "pilot hole" for cut in each.cuts)
        for joint, each in zip(joints, found, strict=True)
    }


def _cuts_by_copy(
    found: Sequence[Found], lone: Sequence[Cut], bought: frozenset[str]
) -> dict[str, list[Cut]]:
    cuts: dict[str, list[Cut]] = {}
    for cut in made_cuts((*(cut for joint in found for cut in joint.cuts), *lone), bought):
        cuts.setdefault(cut.copy, []).append(cut)
    return cuts


def _wishes(declared: Declared) -> tuple[Wish, ...]:
    return tuple(
        Wish(
            WishEnd(wish.first.verb, wish.first.subject),
            WishEnd(wish.then.verb, wish.then.subject),
            wish.span,
        )
        for wish in declared.wishes
    )
