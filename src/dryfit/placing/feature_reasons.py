"""Figures of features: the depth of every cut, with what it comes from."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from dryfit.diagnostics import Figure, Span
from dryfit.geometry.frame import SURFACES
from dryfit.joinery.feature import Feature
from dryfit.joinery.top_fixings import CLIPS
from dryfit.kinds.roles import CORNER_ROLES, HINGE_RECESS
from dryfit.piece.declared import PART_DIMENSIONS, Behind, amounts_of
from dryfit.placing.model import Part
from dryfit.placing.rabbeted_panels import depth_rests_on
from dryfit.placing.site import Site

_ROLE_WORDS = {
    "lap": "the two depths of a lap add up to the thickness",
    "tongue": "what the tongue leaves of the thickness",
    "tongue groove": "as long as the tongue, and a little room",
    "open mortise": "as deep as the mate is wide",
    "bridle trench": "what the tenon leaves of the thickness",
    "mortise": "the tenon's length and room for glue",
    "tenon cheek": "what the tenon leaves of the thickness",
    "tenon shoulder": "what the tenon leaves of the width",
    "tenon gap": "the length of the tenons on both sides of it",
    "haunch": "the haunch's length and room for glue",
    "peg slot": "right through, for the peg and what the wood moves",
    "peg hole": "right through, for the peg",
    "dowel hole": "its share of the dowel, and room for glue",
    "loose mortise": "its share of the loose tenon, and room for glue",
    "plate recess": "as deep as the plate is thick",
    "screw slot": "what the rail is high under the top, less a counterbore",
    "counterbore": "the height of the rail less what the screw passes",
    "hinge recess": "half of what the closed hinge is thicker than the gap",
    "pin hole": "as deep as a pin goes in, less than leaves 6 behind it",
    "pocket hole": "half of the thickness, where its end comes out, and half of the shank's hole",
    "finger socket": "as deep as the mate is thick, so that the fingers come out flush",
    "tail socket": "as deep as the tails reach into the board with the pins",
    "pin socket": "as deep as the board with the tails is thick",
    "biscuit slot": "half of the biscuit, and room for glue",
    "housing": "as deep as the part enters",
    "rabbet": "as written, or as deep as the part enters",
    "groove": "as written, or as deep as the panel enters and its gap",
    "button slot": "takes the tongue of a button and lets it slide",
    "button tongue": "fits the slot in the rail and pulls the top down",
    "screw hole": "clearance for the shank of the screw",
    "pilot hole": "the screw's length less the thickness that it passes",
}
# Depths that depend on a size of the mate as well, along the same direction.
_OF_BOTH = frozenset({"lap", "pilot hole", "open mortise", "bridle trench", *CORNER_ROLES})
# Tenons without a written size take the proportions of their rail and their host.
_OF_RAIL = frozenset({"tenon cheek", "tenon shoulder"})
# A dowel, biscuit or loose tenon is as large as the thinner part lets it be, and goes into both.
_OF_BOTH_WHOLE = frozenset({"dowel hole", "biscuit slot", "loose mortise"})


def feature_figures(site: Site, part: Part, parts: Sequence[Part]) -> dict[str, Figure]:
    """Return the depth of each feature of a part, by the figure's name."""
    by_name = {each.name: each for each in parts}
    behind = _behind_lines(site)
    figures: dict[str, Figure] = {}
    for feature in part.features:
        name = f"{part.name}.{feature.id}.depth"
        words = _ROLE_WORDS.get(feature.role, "as written")
        if part.made or feature.role == "button slot":
            spans, inputs = made_for(site), tops_buttoned(site)
        else:
            own = behind.get(feature.span, Behind())
            spans = (*_spans(site, part, feature), *own.spans)
            inputs = (*_inputs(part, feature, by_name), *own.figures)
            where = _where_they_stand(site, part, feature)
            spans, inputs = (*spans, *where.spans), (*inputs, *where.figures)
        figures[name] = Figure(name, feature.depth, feature.role, words, (), inputs, spans)
    return figures


def _behind_lines(site: Site) -> dict[Span | None, Behind]:
    # What the sums of a joint's or a feature's line refer to, by the place of its words.
    joints = [
        (
            contact.span,
            depth_rests_on(site, contact) if contact.in_rabbets else contact.joint.behind,
        )
        for contact in site.declared.contacts
        if contact.joint
    ]
    features = [(feature.span, feature.behind) for feature in site.declared.features]
    return dict((*joints, *features))


def _where_they_stand(site: Site, part: Part, feature: Feature) -> Behind:
    """Return what places both parts, where the depth comes from where they stand.

    That is so of a hinge at the gap of its door, of a kerf for clips in a rail so thick, and of a
    screw that goes on from a back into what of the frame is left behind its rabbet.
    """
    own = f"{part.name}.thickness"
    lines = [each for each in site.declared.contacts if each.span == feature.span]
    if feature.role == "groove" and any(each.joint and each.joint.kind == CLIPS for each in lines):
        return Behind((own,))
    if feature.role == "screw hole":
        # Through the lip that a rabbet leaves.
        rabbets = [
            each
            for each in site.declared.contacts
            if each.joint is not None
            and each.joint.kind == "rabbet"
            and each.guest.part == feature.mate
            and any(host.part == part.name for host in each.hosts)
        ]
        behind = [each.joint.behind for each in rabbets if each.joint is not None]
        return Behind(
            tuple(name for each in behind for name in each.figures),
            (*(each.span for each in rabbets), *(span for each in behind for span in each.spans)),
        )
    backs = {each.guest.part for each in site.declared.contacts if each.in_rabbets}
    names: set[str | None]
    figures: tuple[str, ...] = ()
    if feature.role == "pilot hole" and feature.mate in backs:
        names, figures = {feature.mate}, ("overall.depth",)
    elif feature.role == HINGE_RECESS:
        names = {part.name, feature.mate}
    else:
        return Behind()
    declared = [each for each in site.declared.parts if each.name in names]
    amounts = [amount for each in declared for amount in amounts_of(each)]
    leaned = tuple(name for amount in amounts for name in amount.behind.figures)
    users = tuple(each.span.used_by for each in declared if each.span.used_by is not None)
    return Behind((*figures, *leaned), (*(amount.span for amount in amounts), *users))


def _spans(site: Site, part: Part, feature: Feature) -> tuple[Span, ...]:
    spans = [feature.span] if feature.span else []
    if feature.role == "tenon shoulder":
        # A tenon keeps clear of the groove in its rail.
        spans += [
            contact.span
            for contact in site.declared.contacts
            if contact.preposition == "inside"
            and any(host.part == part.name for host in contact.hosts)
        ]
    return tuple(dict.fromkeys(spans))


def _inputs(part: Part, feature: Feature, parts: Mapping[str, Part]) -> tuple[str, ...]:
    normal = SURFACES[feature.surface][0]
    mate = parts.get(feature.mate or "")
    if feature.role == "groove":
        return ()
    names = [f"{part.name}.{PART_DIMENSIONS[normal]}"]
    if mate is not None and feature.role in _OF_BOTH:
        copy = next(copy for copy in part.copies if copy.hand in feature.hands)
        axis = copy.frame.axes[normal][0]
        along = [each for each, _ in mate.copies[0].frame.axes].index(axis)
        names.append(f"{mate.name}.{PART_DIMENSIONS[along]}")
    if mate is not None and feature.role in _OF_RAIL:
        names += [f"{part.name}.thickness", f"{mate.name}.width", f"{mate.name}.thickness"]
    if mate is not None and feature.role in _OF_BOTH_WHOLE:
        names += [f"{each.name}.{size}" for each in (part, mate) for size in PART_DIMENSIONS]
    return tuple(dict.fromkeys(names))


def tops_buttoned(site: Site) -> tuple[str, ...]:
    """Return the names of the widths of all tops on buttons, whose movement sizes the buttons."""
    tops = [
        f"{contact.guest.part}.width"
        for contact in site.declared.contacts
        if contact.joint is not None and contact.joint.kind == "buttons"
    ]
    return tuple(dict.fromkeys(tops))


def made_for(site: Site) -> tuple[Span, ...]:
    """Return the places of the lines about buttons and of the grooves that they may engage."""
    spans = [
        contact.span
        for contact in site.declared.contacts
        if contact.joint is not None and contact.joint.kind == "buttons"
    ]
    return (*spans, *(feature.span for feature in site.declared.features))
