"""What the place, the way in, the wall and the users ask; loaded when the notes say any of it."""

from __future__ import annotations

from collections.abc import Iterator

from dryfit.checks.children import check_children
from dryfit.checks.doors_at_walls import check_doors_at_walls
from dryfit.checks.hanging import check_hanging
from dryfit.checks.room import check_room
from dryfit.checks.scribes import check_scribes
from dryfit.checks.way_in import check_way_in
from dryfit.diagnostics import Diagnostic
from dryfit.piece.declared.site import PlaceWords
from dryfit.placing.model import Model


def check_place(model: Model, place: PlaceWords) -> Iterator[Diagnostic]:
    """Yield the findings of all that the notes say about where the piece will stand."""
    yield from check_room(model, place)
    yield from check_scribes(model, place)
    yield from check_way_in(model, place)
    yield from check_doors_at_walls(model, place)
    yield from check_hanging(model, place)
    if place.children is not None:
        yield from check_children(model, place.children)
