"""Wooden runners that stand in a groove of the drawer they carry (TRADE B21)."""

from __future__ import annotations

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.joinery.cut import Cut, Placed
from dryfit.joinery.runners import runner_groove, runner_play
from dryfit.piece.declared import Contact
from dryfit.placing.found import Found
from dryfit.placing.free_places import Around
from dryfit.placing.site import Site


def find(site: Site, contact: Contact, guest: Placed, host: Placed, _: Around) -> Found | None:
    """Return the groove of a host in which a guest runs, with the play that lets it run.

    Findings: runner-groove-deep.
    """
    region = guest.box.overlap(host.box)
    if region is None or guest.axes[0] != host.axes[0]:
        return None
    run, axis = guest.axes[0], host.axes[2]
    side = 1 if guest.box.high[axis] > host.box.high[axis] else -1
    display = site.declared.display
    groove = runner_groove(guest.box, host.box, run, (axis, side), display)
    deep, thick = groove.extent(axis), host.box.extent(axis)
    if deep > thick / 2:
        _too_deep(site, contact, guest, host)
    cut = Cut(
        host.name, groove, "long slot", "groove", axis, side, "move", guest.part, contact.span
    )
    return Found(
        "runner",
        guest.name,
        host.name,
        region,
        contact.span,
        shares=region,
        clearance=runner_play(display),
        cuts=(cut,),
        dry=True,
    )


def _too_deep(site: Site, contact: Contact, guest: Placed, host: Placed) -> None:
    thick = host.box.extent(host.axes[2])
    finding = Diagnostic(
        "runner-groove-deep",
        Severity.ERROR,
        f"{guest.part}: its groove takes more than half of the {host.part}, which is "
        f"{site.shown(thick)} thick",
        contact.span,
        rule="H02",
        figures={"thickness": thick},
        hints=(Hint(f"leave the thickness of the {guest.part} to the program, or make it less"),),
    )
    site.tell_once(finding)
