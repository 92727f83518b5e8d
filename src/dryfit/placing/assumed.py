"""Assumptions: what is taken for granted where no line says it, one kind at a time.

Each kind is tried on all copies of a part; after every piece of news the hard facts speak first.
The order matters and is that of a maker reading a sketch: the top is at the top, posts stand on
the floor, laps run to the far side, rails are level with the posts, what has a named side
lies there, the rest is centred or fills the piece.
"""

from __future__ import annotations

from collections.abc import Callable

from dryfit.piece.declared import DeclaredPart
from dryfit.placing.along_faces import lies_along_face
from dryfit.placing.backs import stands_at_the_back
from dryfit.placing.between_ends import centred_between_ends
from dryfit.placing.bottom_runners import runs_under_sides
from dryfit.placing.bought import takes_little_room
from dryfit.placing.heights import (
    level_with_hosts,
    reaches_height,
    stands_on_floor,
    topmost_reaches_height,
)
from dryfit.placing.in_openings import lies_in_opening
from dryfit.placing.lapping import lap_runs_to_far_side
from dryfit.placing.named_side import lies_at_named_side
from dryfit.placing.openings import lies_between_in_order
from dryfit.placing.outer_faces import fills_with_what_it_lies_on, outer_face_reaches_side
from dryfit.placing.over_hosts import runs_over_what_it_lies_on
from dryfit.placing.rabbeted_panels import lies_flush_in_rabbets
from dryfit.placing.runner_seats import RUNS_IN
from dryfit.placing.runners import runs_in_groove
from dryfit.placing.sideways import (
    as_large_as_the_piece,
    centred_on_hosts,
    fills_or_centred,
    touches_named_side,
)
from dryfit.placing.site import Site
from dryfit.placing.slid_panels import lies_above_lower_edges, slid
from dryfit.placing.standstill import settle

Assuming = Callable[[Site, DeclaredPart], bool]

_KINDS: tuple[Assuming, ...] = (
    runs_in_groove,
    runs_under_sides,
    lies_in_opening,
    as_large_as_the_piece,
    fills_with_what_it_lies_on,
    topmost_reaches_height,
    outer_face_reaches_side,
    stands_on_floor,
    lap_runs_to_far_side,
    level_with_hosts,
    lies_at_named_side,
    lies_along_face,
    lies_above_lower_edges,
    lies_flush_in_rabbets,
    stands_at_the_back,
    centred_on_hosts,
    touches_named_side,
    lies_between_in_order,
    runs_over_what_it_lies_on,
    centred_between_ends,
    fills_or_centred,
    reaches_height,
    takes_little_room,
)


_MAKING_LARGE = (runs_over_what_it_lies_on, fills_or_centred, reaches_height)


def assume_the_rest(site: Site) -> None:
    """Add assumptions until every copy has its place or nothing more can be assumed."""
    settle(site)
    waiting = site.parts()
    while waiting:
        placed = {part.name for part in waiting if site.is_placed(part)}
        waiting = tuple(part for part in waiting if not _is_settled(site, part, placed))
        if not any(_say(kind, site, part) for kind in _KINDS for part in waiting):
            return
        settle(site)


def _say(kind: Assuming, site: Site, part: DeclaredPart) -> bool:
    if site.contacts(part.name, RUNS_IN):
        # A runner is as large as what runs on it asks, and lies where that is.
        return kind is runs_in_groove and kind(site, part)
    # The habits of what joins other parts are not those of what stands free in an opening.
    in_opening = bool(site.contacts(part.name, "in"))
    if part.bought is not None and kind in _MAKING_LARGE:
        # What is bought has a size of its own, and is not cut to fill anything.
        return False
    if kind is runs_over_what_it_lies_on and slid(site, part) is not None:
        # What slides in reaches from its groove past what it goes under.
        return False
    return in_opening == (kind is lies_in_opening) and kind(site, part)


def _is_settled(site: Site, part: DeclaredPart, placed: set[str]) -> bool:
    # Rails that have their place may still say where the legs end that they go into.
    hosts = {host.part for each in site.contacts_of(part.name) for host in each.hosts}
    return part.name in placed and all(
        host in placed or site.opening(host) or site.is_placed(site.part(host)) for host in hosts
    )
