"""Cuts that no machine of the shop reaches: saw, chisel and router plane at the bench."""

from __future__ import annotations

from fractions import Fraction

from dryfit.joinery.feature import Feature, Range
from dryfit.kinds.roles import HINGE_RECESS, PIN_HOLE, POCKET
from dryfit.operations import naming
from dryfit.operations.cut import Cut, Site
from dryfit.operations.gluing.pocket_jig import pocket_details
from dryfit.operations.minutes import METRE, worked
from dryfit.operations.ways.cross_cuts import wide
from dryfit.operations.ways.edges import HAND_ROUTER
from dryfit.operations.ways.hinging import recess_details
from dryfit.operations.ways.machines import has_hand_router
from dryfit.operations.ways.pin_rows import row_details
from dryfit.operations.ways.top_fixing_words import BY_HAND, bored_details
from dryfit.plan.operation import Detail
from dryfit.shop.shop import Shop

RATES = {
    "end lap": "hand lap",
    "notch": "hand shoulder",
    "cross slot": "hand housing",
    "mortise": "hand mortise",
    "long slot": "hand groove",
    "hole": "drill",
    "rabbet": "hand groove",
    "dowel hole": "dowel hole",
    "open mortise": "hand open mortise",
    "biscuit slot": "biscuit slot",
    "pocket hole": "pocket hole",
    "plate recess": "plate recess",
    "hinge recess": "hinge recess",
    "screw slot": "screw slot",
    "peg slot": "screw slot",
    "counterbore": "screw slot",
}

DEEDS = {
    "end lap": ("Saw and pare the {} on", ""),
    "notch": ("Saw and pare the {} on", ""),
    "cross slot": ("Saw the sides of the {} on", ", chisel out the waste, level the bottom"),
    "mortise": ("Chop the {} in", ", from both ends to the middle"),
    "long slot": ("Plough the {} in", " by hand"),
    "open mortise": ("Saw the sides of the {} on", ", chisel out the waste from both edges"),
    "slot": ("Drill out and pare the {} in", ", to their lines from both faces"),
    "rabbet": ("Plane the {} on", " by hand"),
    "hole": ("Drill the {} in", " by hand, square to the face"),
    "biscuit slot": ("Plunge the {} into", " with the biscuit joiner, from the marked face"),
    "plate recess": ("Bore the {} in", ""),
    "peg slot": ("Drill out the {} in", " with holes side by side, and pare them straight"),
    "screw slot": ("Drill out the {} in", " with holes side by side, and pare them straight"),
    "counterbore": ("Bore the {} in", " from below"),
    "hinge recess": ("Let in the {} of", ""),
    "pin hole": ("Drill the {} in", " through a template"),
    "pocket hole": ("Bore the {} in", " with the pocket jig"),
    "loose mortise": ("Drill out and pare the {} in", ", square to the mating face"),
    "dowel hole": ("Drill the {} in", " along a jig, from the face and edge that are marked"),
}


_SURFACES = {"R": "end", "E": "edge", "F": "face", "B": "face"}


def hand_cut(site: Site, shop: Shop) -> Cut:
    """Return the cut at the bench; it stands on marks, so nothing has to be set."""
    feature = site.feature
    what, kind = naming.what_of(feature), naming.kind_of(feature)
    rate = RATES.get(feature.role) or RATES.get(feature.kind, "hand housing")
    chiselled = feature.role == HINGE_RECESS and not has_hand_router(shop)
    if chiselled:
        rate = "hand hinge recess"
    length = max(wide(feature), feature.across[1] - feature.across[0])
    exact = worked(shop, rate, each=len(site.copies), per_metre=length / METRE * len(site.copies))
    deed, manner = DEEDS.get(feature.role) or DEEDS.get(feature.kind, ("Cut the {} on", " by hand"))
    return Cut(
        site=site,
        what=what,
        kind=kind,
        station="bench",
        settings=(),
        hold=None,
        passes=(),
        exact=exact,
        deed=deed.format(naming.plural(what)),
        manner=manner,
        check=naming.check_of(feature),
        cautions=(HAND_ROUTER,) if feature.role == HINGE_RECESS and not chiselled else (),
        details=pocket_details(site)
        if feature.role == POCKET
        else recess_details(site, chiselled=chiselled)
        if feature.role == HINGE_RECESS
        else row_details(site)
        if feature.role == PIN_HOLE
        else bored_details(site)
        if feature.role in BY_HAND
        else (marked_limits(site), *through_deeds(site)),
    )


def through_deeds(site: Site) -> tuple[Detail, ...]:
    """Return how a mortise right through is cut so that no face breaks out (common practice)."""
    feature = site.feature
    whole = site.part.thickness if feature.surface in {"F", "B"} else site.part.width
    if feature.role != "mortise" or feature.depth < whole:
        return ()
    text = (
        "Right through: mark it on both faces, go a little past half the depth from one, turn "
        "the part over end for end, and meet it from the other face on its marks, so that "
        "neither breaks out"
    )
    return ((text,),)


def marked_limits(site: Site) -> Detail:
    """Return where the lines of a cut stand, from the marks on the wood, and how deep it goes.

    A hole or a biscuit slot is told by its middle, where the tool is set; what is cut into an end,
    from E and F.
    """
    feature = site.feature
    along_from, across_from = _from_of(feature.surface)
    ranges: tuple[tuple[Range, str], ...] = ((feature.along, along_from),)
    if feature.across != (Fraction(0), _size_across(site)):
        ranges = (*ranges, (feature.across, across_from))
    told = f" on {feature.surface}" in feature.id
    where = "" if told else f", in {_in_words(feature.surface)}"
    named = f"{feature.id}{where}{_of_hands(site)}: "
    if feature.kind == "hole" or feature.role == "biscuit slot":
        lying = _lying(feature) if feature.kind != "hole" else ""
        return (named, *_middles(ranges), ", ", feature.depth, f" deep{lying}")
    (start, end), origin = ranges[0]
    lines: Detail = (named, start, " to ", end, f" from {origin}, ", feature.depth, " deep")
    for (near, far), edge in ranges[1:]:
        lines = (*lines, ", ", near, " to ", far, f" from {edge}")
    return lines


def _of_hands(site: Site) -> str:
    """Return the hands that a cut is on, where the part has copies without it."""
    own, every = site.feature.hands, site.part.hands()
    if set(every) <= set(own):
        return ""
    return f", hand{'s' if len(own) > 1 else ''} {' and '.join(own)}"


def _lying(feature: Feature) -> str:
    """Return how a slot lies that is cut on the mark of its middle; in an end there is one way."""
    if feature.surface in {"R", "R2"}:
        return ""
    (start, end), (near, far) = feature.along, feature.across
    return ", across the part" if far - near > end - start else ", along the part"


def _middles(ranges: tuple[tuple[Range, str], ...]) -> Detail:
    words: Detail = ("middle ",)
    for turn, ((start, end), origin) in enumerate(ranges):
        words = (*words, *((" and ",) if turn else ()), (start + end) / 2, f" from {origin}")
    return words


def _from_of(surface: str) -> tuple[str, str]:
    """Return what a place on the surface is measured from, along and across (`Feature`)."""
    if surface in {"R", "R2"}:
        return "E", "F"
    return "R", "E" if surface in {"F", "B"} else "F"


def _size_across(site: Site) -> Fraction:
    return site.part.width if site.feature.surface in {"F", "B"} else site.part.thickness


def _in_words(surface: str) -> str:
    return f"{_SURFACES[surface[0]]} {surface}"
