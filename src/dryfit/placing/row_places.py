"""Where a row of dowels, biscuits or pocket screws finds room: clear of the grooves for panels.

A row has no written place: only how many stand in it may be written, and too many are a finding.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from fractions import Fraction

from dryfit.geometry.box import Box
from dryfit.joinery.cut import Placed, bounded
from dryfit.joinery.loose_pieces import row_axis
from dryfit.kinds.joints import is_row_in_wood
from dryfit.piece.declared import JointWords
from dryfit.placing.families import family_of, finder_of
from dryfit.placing.free_places import Around
from dryfit.placing.site import Site

BESIDE = Fraction(3)
"""Wood between a groove and a hole beside it, mm: as between two mortises (common practice)."""


def note_grooves(site: Site, placed: Mapping[str, Placed], around: Around) -> None:
    """Note the grooves for panels, where some joint is a row that has to keep clear of them."""
    declared = site.declared.contacts
    if not any(each.joint is not None and is_row_in_wood(each.joint.kind) for each in declared):
        return
    for contact in declared:
        if contact.preposition != "inside" or family_of(contact) != "groove":
            continue
        find = finder_of("groove")
        for seat in site.guests(contact):
            for host in site.mates(contact, seat):
                joint = find(site, contact, placed[seat.name], placed[host.name], around)
                around.grooves.add(joint.cuts if joint else ())


def row_clear_of_grooves(
    around: Around,
    pair: tuple[Placed, Placed],
    region: Box,
    axis: int,
    row: tuple[Iterable[Box], Fraction],
) -> Box:
    """Return the contact face as far as a row may use it: all of it where nothing is in the way.

    `axis` is the normal of the face; `row` are the mouths that the pockets would have in all of it,
    and how deep they go into either part.  Else the face ends at the grooves that they would meet.
    """
    along = row_axis(region, axis)
    for groove in _met(around, pair, axis, along, row):
        below = groove.low[along] - region.low[along]
        above = region.high[along] - groove.high[along]
        if below > above:
            region = bounded(region, along, region.low[along], groove.low[along])
        elif above > 0:
            region = bounded(region, along, groove.high[along], region.high[along])
    return region


def _met(
    around: Around,
    pair: tuple[Placed, Placed],
    axis: int,
    along: int,
    row: tuple[Iterable[Box], Fraction],
) -> Sequence[Box]:
    mouths, deep = row
    found: list[Box] = []
    for mouth in mouths:
        box = bounded(mouth, axis, mouth.low[axis] - deep, mouth.high[axis] + deep)
        box = bounded(box, along, box.low[along] - BESIDE, box.high[along] + BESIDE)
        for each in pair:
            for cut in around.grooves.near(each.name, box, along):
                if cut.box.overlap(box) is not None and cut.box not in found:
                    found.append(cut.box)
    return found


def assume_clear(site: Site, joint: JointWords, pair: tuple[Placed, Placed]) -> None:
    """List that a row stands otherwise than it usually does."""
    guest, host = pair
    text = (
        f"{guest.part} into {host.part}: the {joint.kind} stand clear of the groove for the panel"
    )
    site.assume_line(text, joint.span, None)
