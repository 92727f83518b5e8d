"""TRADE H72, G8: stone, glass or metal that is fixed fast to solid wood across its grain.

Bought things have no joints in the Model: what their lines say of glue and screws is asked here.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.geometry.frame import LENGTH, WIDTH
from dryfit.piece.declared import Contact
from dryfit.placing.model import Bought, Copy, Part
from dryfit.placing.site import Site

_RIGID = frozenset(
    {"stone", "marble", "granite", "slate", "tile", "glass", "mirror", "pane", "ceramic"}
    | {"steel", "iron", "brass", "copper", "bronze", "aluminium", "aluminum", "metal"}
)
_FAST = frozenset({"glue", "screws"})
_WARNED, _FAILS = Fraction(75), Fraction(125)
"""As of wood that glue holds fast across its grain (TRADE G8)."""


def report_rigid_things(site: Site, things: Sequence[Bought], parts: Sequence[Part]) -> None:
    """Report, once for two parts, what holds solid wood fast across its grain.

    Findings: rigid-across-grain.
    """
    for thing in things:
        if not _RIGID & set(thing.name.split(" ")):
            continue
        for contact in site.contacts_of(thing.name):
            hosts = {host.part for host in contact.hosts}
            if contact.joint is None or contact.joint.kind not in _FAST or contact.glue:
                continue
            for part in parts:
                if part.name in hosts and part.stock == "solid":
                    wide = max(_across(thing.copies, part), default=Fraction(0))
                    if wide > _WARNED:
                        site.tell_once(_finding(site, thing, part, contact, wide))


def _across(things: Sequence[Copy], part: Part) -> Iterator[Fraction]:
    """Yield how wide things lie on the copies of a part, across its grain."""
    for thing in things:
        for copy in part.copies:
            met = copy.box.contact(thing.box)
            grain, wide = (copy.frame.axes[each][0] for each in (LENGTH, WIDTH))
            if met is not None and met[0] != grain:
                yield met[1].extent(wide)


def _finding(site: Site, thing: Bought, part: Part, contact: Contact, wide: Fraction) -> Diagnostic:
    display, wood = site.declared.display, part.moving
    moves = display.movement(wood.over_the_year(wide))
    return Diagnostic(
        "rigid-across-grain",
        Severity.ERROR if wide > _FAILS else Severity.WARNING,
        f"{thing.name} is fixed fast to the {part.name} over {display.shown(wide)} across its "
        f"grain: {wood.name} moves {moves} there {wood.year_words()}, and it does not",
        contact.span,
        rule="G8",
        figures={"wide": wide},
        hints=(
            Hint(
                "let it lie in a rabbet with play all round, or on soft pads: leave the "
                f"{contact.joint.span.text() if contact.joint else 'glue'} out"
            ),
        ),
    )
