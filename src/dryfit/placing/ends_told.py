"""What is wrong at the ends of parts that go between others."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from dryfit.diagnostics import Diagnostic, Hint, Note, Severity, Span
from dryfit.piece.declared import Contact
from dryfit.placing.positions import Fact
from dryfit.placing.site import Site, part_words
from dryfit.placing.subjects import verb


def report_no_room(site: Site) -> None:
    """Report, once a contact, that its hosts leave nothing for the part between them.

    Findings: no-room-between.
    """
    told: set[Contact] = set()
    for contact, low, high in site.gaps:
        room = site.positions.distance(low, high)
        if room is None or room > 0 or contact in told:
            continue
        told.add(contact)
        guest = site.part(contact.guest.part)
        chain = site.positions.chain(low, high)
        site.findings.append(
            Diagnostic(
                "no-room-between",
                Severity.ERROR,
                f"{guest.name}: between {low.owner} and {high.owner} there is no room, "
                f"{site.shown(room)}",
                _culprit(chain) or guest.span,
                rule="H26",
                figures={"room": room},
                notes=(*_written(chain), Note(f"{guest.written} between them", guest.span)),
                hints=(Hint("check the overall size, and the sizes and set-ins of its hosts"),),
            )
        )


def _culprit(chain: Sequence[Fact]) -> Span | None:
    """Return what alone takes all the room there is: ``set in 400`` at both sides of 600."""
    given = sum((fact.distance for fact in chain if fact.distance > 0), Fraction(0))
    takes: dict[Span, Fraction] = {}
    for fact in chain:
        if fact.distance < 0 and fact.reason.span is not None:
            takes[fact.reason.span] = takes.get(fact.reason.span, Fraction(0)) - fact.distance
    return next((span for span, amount in takes.items() if amount >= given), None)


def _written(chain: Sequence[Fact]) -> tuple[Note, ...]:
    said = {fact.reason.span: fact.reason.words for fact in chain if fact.reason.span is not None}
    return tuple(Note(words, span) for span, words in said.items())


def report_unsaid_ends(site: Site) -> frozenset[str]:
    """Report, once a contact, that nothing tells which hosts stand where.

    Returns the parts that were spoken of.  Findings: ends-unclear.
    """
    contacts = dict.fromkeys(contact for contact, _ in site.unsaid_ends.values())
    for contact in contacts:
        hosts = [seat for host in contact.hosts for seat in site.named(host)]
        names = part_words(site, hosts) or "parts"
        guest = site.written(contact.guest.part)
        between = contact.preposition == "between"
        site.findings.append(
            Diagnostic(
                "ends-unclear",
                Severity.ERROR,
                f"{guest}: nothing tells "
                + (
                    f"which {names} stand at the ends"
                    if len(hosts) > 1
                    else f"at which end the {names} is"
                ),
                contact.span,
                rule="H27",
                hints=(
                    Hint(
                        f"give {names} places, such as `at left and right`"
                        if between or len(hosts) > 1
                        else f"say where {_lies(site, contact)}, such as "
                        + site.declared.display.examples("`up {80}` or `{120} from left`")
                    ),
                ),
            )
        )
    return frozenset(contact.guest.part for contact in contacts)


def _lies(site: Site, contact: Contact) -> str:
    return verb(site.part(contact.guest.part), "lies", "lie")
