"""Where the runner under a drawer lies, from the side that stands on it (TRADE B21.3)."""

from __future__ import annotations

from fractions import Fraction

from dryfit.joinery.runners import UP, usual_bottom_runner
from dryfit.piece.declared import DeclaredPart
from dryfit.placing.heights import ZERO, say, verb
from dryfit.placing.positions import Face
from dryfit.placing.runner_seats import RUNS_UNDER, running_hosts
from dryfit.placing.seats import Seat
from dryfit.placing.site import Phrase, Site


def runs_under_sides(site: Site, part: DeclaredPart) -> bool:
    """Assume that a runner lies right under a side, level with its outer face, and how wide it is.

    What the runner's own line says instead is kept.
    """
    told: dict[str, Phrase] = {}
    for contact in site.contacts(part.name, RUNS_UNDER):
        for seat in site.guests(contact):
            for host in running_hosts(site, contact, seat):
                for facts, words, phrase in _facts(site, part, seat, host):
                    end = facts[1]
                    if site.known(seat, end.axis, end.side):
                        continue
                    if say(site, seat, facts, f"runs under {host.part}", words):
                        told.setdefault(words, phrase)
    for words, phrase in told.items():
        site.assume(f"{verb(part, 'runs', 'run')}: each {words}", part.span, phrase)
    return bool(told)


_Fact = tuple[tuple[Face, Face, Fraction], str, Phrase]


def _facts(site: Site, part: DeclaredPart, seat: Seat, host: Seat) -> list[_Fact]:
    run, written = part.axes[0], site.written(host.part)
    if run == UP or site.part(host.part).axes[0] != run:
        return []
    across = 3 - run - UP
    facts: list[_Fact] = [
        (
            (Face(host.name, UP, -1), Face(seat.name, UP, 1), ZERO),
            f"lies right under its part of the {written}",
            None,
        )
    ]
    side = host.side(across)
    if side:
        wide = usual_bottom_runner(site.declared.display)
        facts.append(
            (
                (Face(host.name, across, side), Face(seat.name, across, side), ZERO),
                f"lies level with the outer face of the {written}",
                None,
            )
        )
        if part.sizes[part.axes.index(across)] is None:
            shown = site.shown(wide)
            facts.append(
                (
                    (Face(seat.name, across, side), Face(seat.name, across, -side), -side * wide),
                    f"is {shown} wide",
                    f"{shown} wide",
                )
            )
    return facts
