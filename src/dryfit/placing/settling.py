"""Where every copy lies: hard facts, then assumptions; patterns inside their own boxes first."""

from __future__ import annotations

from dataclasses import replace

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.notes.limits import DEEPEST_PATTERN
from dryfit.piece.declared import Contact, Declared, DeclaredPart, Instance, amounts_of
from dryfit.piece.part_lines import MOST_COPIES
from dryfit.piece.patterns import instances_in
from dryfit.placing.assumed import assume_the_rest
from dryfit.placing.boxes import boxes_of
from dryfit.placing.copies import seat_copies
from dryfit.placing.facing import with_facings
from dryfit.placing.insides import Inside, inside_of, joined
from dryfit.placing.meetings import state_meetings
from dryfit.placing.openings import state_openings
from dryfit.placing.seats import Seating
from dryfit.placing.site import Site
from dryfit.placing.written import state_overall, state_part
from dryfit.shop.shop import Shop

MOST_INSTANCES = 100
"""How many lines may make something by a pattern, those in patterns counted each time."""


def settled(declared: Declared, shop: Shop, depth: int = 0) -> Site:
    """Return the site on which every fact has spoken; an error among its findings ends the matter.

    An instance of a pattern is placed as a box without wood; then its inside is placed as a piece
    of its own, and only then what the lines place on a part of the inside.  The returned site
    holds all of them, and no instance any more.  `depth` counts the patterns round this piece.
    Findings: those of this room, patterns-too-deep, too-many-parts.
    """
    declared = with_facings(declared)
    if depth == 0 and instances_in(declared) > MOST_INSTANCES:
        site = Site(declared, seat_copies(declared), shop)
        site.findings.append(_too_many_instances(declared.instances[-1]))
        return site
    late = _late(declared)
    site = _begun(_without(declared, late), shop)
    if failed(site) or not declared.instances:
        return site
    boxes = boxes_of(site)
    if failed(site) or len(boxes) < len(site.seating.all()):
        return site
    if depth >= DEEPEST_PATTERN:
        site.findings.append(_too_deep(declared.instances[0]))
        return site
    insides: list[Inside] = []
    for instance in declared.instances:
        inside, findings = inside_of(site, instance)
        site.findings += findings
        if failed(site) or inside is None:
            return site
        inner = settled(inside, shop, depth + 1)
        inner_boxes = {} if failed(inner) else boxes_of(inner)
        site.findings += inner.findings
        if failed(site) or len(inner_boxes) < len(inner.seating.all()):
            return site
        insides.append(Inside(instance, inner))
    copies = len(site.seating.all()) + sum(_copies(site, inside) for inside in insides)
    if copies > MOST_COPIES:
        site.findings.append(_too_many(insides[-1].instance, copies))
        return site
    whole = joined(site, declared, insides)
    _add_late(whole, late)
    return whole


def failed(site: Site) -> bool:
    """Return whether an error was found."""
    return any(finding.severity is Severity.ERROR for finding in site.findings)


def _copies(site: Site, inside: Inside) -> int:
    return len(site.seats(inside.instance.part)) * len(inside.site.seating.all())


def _too_many(instance: Instance, copies: int) -> Diagnostic:
    return Diagnostic(
        "too-many-parts",
        Severity.ERROR,
        f"with its patterns the piece has {copies} copies; at most {MOST_COPIES} are planned",
        instance.span,
        hints=(Hint("plan the piece in sections, each in its own file"),),
    )


def _too_many_instances(instance: Instance) -> Diagnostic:
    return Diagnostic(
        "too-many-parts",
        Severity.ERROR,
        f"at most {MOST_INSTANCES} lines can make something by a pattern, those inside of "
        "patterns counted each time",
        instance.span,
        hints=(Hint("write `3 boxes, as ...` for what is made alike, or use fewer patterns"),),
    )


def _too_deep(instance: Instance) -> Diagnostic:
    return Diagnostic(
        "patterns-too-deep",
        Severity.ERROR,
        f"patterns can stand {DEEPEST_PATTERN} deep inside one another",
        instance.span,
        hints=(Hint("write the innermost parts out in the pattern round them"),),
    )


def _begun(declared: Declared, shop: Shop) -> Site:
    seating = seat_copies(declared)
    site = Site(declared, seating, shop)
    site.assumptions += seating.assumptions
    site.findings += seating.findings
    if any(amount is None for amount in declared.overall) or not declared.parts or failed(site):
        # Without knowing which copy is which, every place that followed would be a guess.
        return site
    state_overall(site)
    state_openings(site, declared.openings)
    for part in declared.parts:
        state_part(site, part)
    for part in declared.parts:
        state_meetings(site, part)
    assume_the_rest(site)
    return site


def _add_late(site: Site, names: frozenset[str]) -> None:
    late = [part for part in site.parts() if part.name in names]
    if not names:
        return
    spans = {part.span for part in late} | {part.name_span for part in late}
    seating = seat_copies(site.declared, site.seating.seats)
    own = {name: seats for name, seats in seating.seats.items() if name in names}
    site.seating = Seating({**site.seating.seats, **own}, (), ())
    site.assumptions += (each for each in seating.assumptions if each.span in spans)
    site.findings += (each for each in seating.findings if each.span in spans)
    if failed(site):
        return
    state_openings(site, [each for each in site.declared.openings if each.name in names])
    for part in late:
        state_part(site, part)
    for part in late:
        state_meetings(site, part)
    assume_the_rest(site)


def _late(declared: Declared) -> frozenset[str]:
    """Return the parts and openings that lean on a part of an inside, or on one that does."""
    leaned_on = {part.name: _leaned_on(declared, part) for part in declared.parts}
    leaned_on |= {each.name: {host.part for host in each.between} for each in declared.openings}
    late: set[str] = set()
    grown = True
    while grown:
        more = {
            name
            for name, others in leaned_on.items()
            if name not in late and any(other in late or other not in leaned_on for other in others)
        }
        late |= more
        grown = bool(more)
    return frozenset(late)


def _leaned_on(declared: Declared, part: DeclaredPart) -> set[str]:
    own = (contact for contact in declared.contacts if contact.guest.part == part.name)
    hosts = (
        *(host for contact in own for host in contact.hosts),
        *(host for each in part.flush for host in each.hosts),
        *(host for each in part.offsets for host in each.hosts),
    )
    leans = (lean.subject for amount in amounts_of(part) for lean in amount.leans)
    return {*(host.part for host in hosts), *leans}


def _without(declared: Declared, late: frozenset[str]) -> Declared:
    if not late:
        return declared
    return replace(
        declared,
        parts=tuple(part for part in declared.parts if part.name not in late),
        contacts=tuple(each for each in declared.contacts if not _speaks_of(each, late)),
        openings=tuple(each for each in declared.openings if each.name not in late),
    )


def _speaks_of(contact: Contact, names: frozenset[str]) -> bool:
    return contact.guest.part in names or any(host.part in names for host in contact.hosts)
