"""Which runner belongs to which copy of what runs on it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.notes.names import plural
from dryfit.notes.tree import PartsLine
from dryfit.piece.declared import Contact, Declared, DeclaredPart
from dryfit.placing.seats import Seat, counted
from dryfit.placing.site import Site

RUNS_IN = "runs in"
RUNS_UNDER = "runs under"
"""A runner in a groove of a drawer's side, and one on which the side stands."""
Tags = tuple[str, ...]


def running_contact(part: DeclaredPart, declared: Declared) -> Contact | None:
    """Return the contact by which a part is a runner, or None."""
    for contact in declared.contacts:
        if contact.guest.part == part.name and contact.preposition in {RUNS_IN, RUNS_UNDER}:
            return contact
    return None


def tags_of_runners(
    part: DeclaredPart,
    contact: Contact,
    places: Mapping[str, Sequence[Tags]],
    declared: Declared,
) -> tuple[tuple[Tags, ...], tuple[Diagnostic, ...]] | None:
    """Return the place words of runners, one for each copy that runs on them, or None to wait.

    Findings: copies-and-hosts.
    """
    if any(host.part not in places for host in contact.hosts):
        return None
    tags = [
        words
        for host in contact.hosts
        for words in places[host.part]
        if set(host.places) <= set(words)
    ]
    if len(tags) == part.count:
        return tuple(tags), ()
    finding = Diagnostic(
        "copies-and-hosts",
        Severity.ERROR,
        f"{part.count} {part.written}, but {len(tags)} run on them: each has one of its own",
        part.name_span,
        rule="H27",
        hints=(
            _name_the_sides(contact, declared) or Hint(f"write {counted(len(tags), part.name)}"),
        ),
    )
    return ((),) * part.count, (finding,)


def _name_the_sides(contact: Contact, declared: Declared) -> Hint | None:
    """Return the words for the sides of a drawer that a pattern makes, which run on its runners."""
    hosts = {host.part for host in contact.hosts}
    for instance in declared.instances:
        if instance.part in hosts:
            for each in instance.block.notes.statements:
                if isinstance(each, PartsLine) and each.name.split(" ")[-1] == "side":
                    sides = f"{instance.part}'s {plural(each.name)}"
                    return Hint(f"its sides run on them: name the {sides}")
    return None


def running_hosts(site: Site, contact: Contact, seat: Seat) -> tuple[Seat, ...]:
    """Return the copy that runs on a runner: copies and runners are paired in their order."""
    runners, hosts = site.seats(seat.part), site.mates(contact, seat)
    return (hosts[runners.index(seat)],) if len(runners) == len(hosts) else ()
