"""Bridle joints: corners and Ts whose members run full to the outside (TRADE B2)."""

from __future__ import annotations

from fractions import Fraction

from dryfit.joinery.bridle import bridle, least_bridle, slotted_first, usual_bridle
from dryfit.joinery.cut import Placed
from dryfit.piece.declared import Contact, JointWords
from dryfit.placing.crossing import lap_axis
from dryfit.placing.families.finding import face_area
from dryfit.placing.found import Found
from dryfit.placing.free_places import Around
from dryfit.placing.lines import with_words
from dryfit.placing.mortise_cutters import mortise_cutters
from dryfit.placing.not_fitting import Wrong, not_fitting
from dryfit.placing.site import Site

_RULE = "B2"
_FACES = 2


def find(site: Site, contact: Contact, guest: Placed, host: Placed, _: Around) -> Found | None:
    """Return the bridle of two members that meet at an end of one of them or of both."""
    region = guest.box.overlap(host.box)
    axis = lap_axis(site.part(guest.part), site.part(host.part))
    joint = contact.joint
    if region is None or axis is None or joint is None:
        return None
    pair = slotted_first(guest, host, region)
    thickness = _thickness(site, joint, region.extent(axis))
    wrong = _wrong(site, (guest, host), region.extent(axis), thickness, ends=pair is not None)
    if wrong is not None:
        not_fitting(site, contact, "bridle-does-not-fit", wrong)
    else:
        _assume(site, joint, (guest, host), thickness)
    return Found(
        "bridle",
        guest.name,
        host.name,
        region,
        contact.span,
        shares=region,
        glued=True,
        area=_FACES * face_area(region, axis),
        cuts=bridle(pair, region, axis, thickness, contact.span) if pair and not wrong else (),
    )


def _thickness(site: Site, joint: JointWords, wood: Fraction) -> Fraction:
    return joint.thickness or usual_bridle(wood, mortise_cutters(site), site.declared.display)


def _assume(
    site: Site, joint: JointWords, pair: tuple[Placed, Placed], thickness: Fraction
) -> None:
    if joint.thickness is None:
        words = f"bridle {site.shown(thickness)} thick"
        text = f"{pair[0].part} into {pair[1].part}: {words}"
        site.assume_line(text, joint.span, with_words(joint.head, words))


def _wrong(
    site: Site, pair: tuple[Placed, Placed], wood: Fraction, thickness: Fraction, *, ends: bool
) -> Wrong | None:
    """Return what keeps the two from being bridled."""
    guest, host, shown = pair[0].part, pair[1].part, site.shown
    if not ends:
        return Wrong(
            f"{guest} and {host} both run on where they cross: a bridle needs the end of one",
            "write `half lap`, or let one of them end at the outside of the other",
            {},
            _RULE,
        )
    least = least_bridle(site.declared.display)
    cheek = (wood - thickness) / 2
    if thickness >= least and cheek >= least:
        return None
    if wood < 3 * least:
        remedy = f"make both {shown(3 * least)} thick or more, or write `half lap`"
    else:
        remedy = f"a third is usual: write `bridle {shown(wood / 3)} thick`"
    return Wrong(
        f"a bridle {shown(thickness)} thick leaves cheeks of {shown(max(cheek, Fraction(0)))} in "
        f"wood of {shown(wood)} between {guest} and {host}",
        remedy,
        {"thickness": thickness, "cheek": cheek, "wood": wood},
        _RULE,
    )
