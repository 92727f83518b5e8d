"""Where the runner under a drawer lies, from the side that stands on it (TRADE B21.3)."""

from __future__ import annotations

from collections.abc import Iterator

from dryfit.joinery.runners import UP, usual_bottom_runner
from dryfit.piece.declared import DeclaredPart
from dryfit.placing.heights import ZERO
from dryfit.placing.positions import Face
from dryfit.placing.runner_seats import RUNS_UNDER
from dryfit.placing.runners import Fact, say_runner
from dryfit.placing.seats import Seat
from dryfit.placing.site import Site


def runs_under_sides(site: Site, part: DeclaredPart) -> bool:
    """Assume that a runner lies right under a side, level with its outer face, and how wide it is.

    What the runner's own line says instead is kept.
    """
    return say_runner(site, part, RUNS_UNDER, _facts)


def _facts(site: Site, part: DeclaredPart, seat: Seat, host: Seat) -> Iterator[Fact]:
    run, written = part.axes[0], site.written(host.part)
    if run == UP or site.part(host.part).axes[0] != run:
        return
    across = 3 - run - UP
    yield Fact(
        Face(host.name, UP, -1),
        Face(seat.name, UP, 1),
        ZERO,
        f"lies right under its part of the {written}",
        None,
    )
    side = host.side(across)
    if not side:
        return
    yield Fact(
        Face(host.name, across, side),
        Face(seat.name, across, side),
        ZERO,
        f"lies level with the outer face of the {written}",
        None,
    )
    if part.sizes[part.axes.index(across)] is None:
        wide = usual_bottom_runner(site.declared.display)
        shown = f"{site.shown(wide)} wide"
        yield Fact(
            Face(seat.name, across, side),
            Face(seat.name, across, -side),
            -side * wide,
            f"is {shown}",
            shown,
        )
