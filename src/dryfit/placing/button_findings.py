"""What is told of buttons that find no rail, no hold or no room."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.joinery.buttons import ButtonSlot
from dryfit.joinery.cut import Placed
from dryfit.piece.declared import Contact
from dryfit.placing.site import Site


def stands_under(site: Site, contact: Contact, top: Placed, parts: Sequence[Placed]) -> None:
    """List what runs upright under a top: it carries the top, and nothing is fixed to it."""
    for part in dict.fromkeys(each.part for each in parts):
        kind = contact.joint.kind if contact.joint else "buttons"
        words = f"the {site.written(part)} run upright and take no {kind}: they only carry the"
        if site.part(part).count == 1:
            words = f"the {part} runs upright and takes no {kind}: it only carries the"
        site.assume_line(f"{words} {top.part}", contact.span, None)


def no_rail(site: Site, contact: Contact, top: Placed) -> None:
    """Report a top that lies on nothing that takes a button."""
    site.findings.append(
        Diagnostic(
            "joint-without-contact",
            Severity.ERROR,
            f"{top.name} lies on no rail that could take a button's tongue",
            contact.span,
            rule="H28",
            hints=(Hint("name a rail or an apron that stands under it"),),
        )
    )


def too_shallow(
    site: Site, contact: Contact, top: Placed, slot: ButtonSlot, moves: Fraction
) -> None:
    """Report slots that leave tongues too little hold; each edge of the top `moves`, in mm."""
    site.findings.append(
        Diagnostic(
            "button-slot-shallow",
            Severity.ERROR,
            f"each edge of the {top.part} moves by {site.shown(moves)}: slots "
            f"{site.shown(slot.depth)} deep leave the buttons too little hold",
            contact.span,
            rule="H28",
            figures={"movement": moves, "depth": slot.depth},
            hints=(Hint("make the groove deeper, or the top of two narrower ones"),),
        )
    )


def too_many(site: Site, contact: Contact, most: int) -> None:
    """Report that more buttons are written than the `most` that have room."""
    site.findings.append(
        Diagnostic(
            "buttons-too-many",
            Severity.ERROR,
            f"the rails under the {site.written(contact.guest.part)} take {most} buttons at most",
            contact.joint.span if contact.joint else contact.span,
            rule="H30",
            hints=(Hint("write fewer, or leave the number out"),),
        )
    )
