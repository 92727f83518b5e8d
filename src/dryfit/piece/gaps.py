"""Gaps that no row and no opening makes use of."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.piece.declared import Amount, Contact, DeclaredPart
from dryfit.piece.floating import floating_end
from dryfit.quantities import Display


def gaps_of_nothing(
    parts: Iterable[DeclaredPart], contacts: Iterable[Contact], display: Display
) -> Iterator[Diagnostic]:
    """Yield for each part the first gap that says nothing about it: gap-of-nothing.

    What stands in an opening has play on every side, and what goes between others without a joint
    has it at its ends (`placing.play`); a row has one gap, that between its copies; a tenon that
    floats stands off by one.
    """
    contacts = tuple(contacts)
    with_play = {contact.guest.part for contact in contacts if _has_play(contact)}
    ends = {each.guest.part: each for each in contacts if each.preposition in ("into", "between")}
    backs = {each.guest.part for each in contacts if each.in_rabbets}
    for part in parts:
        boards = part.name in backs and part.count > 1
        if part.gaps and all(
            any(floating_end(part, each) == (gap.axis, gap.side) for each in contacts)
            for gap in part.gaps
        ):
            continue
        if part.name not in with_play and (gap := _unused(part, boards=boards)) is not None:
            yield Diagnostic(
                "gap-of-nothing",
                Severity.ERROR,
                f"{part.name} stands in no opening, so nothing is made of this gap",
                gap.span,
                hints=_hints(ends.get(part.name), display),
            )


def _hints(ends: Contact | None, display: Display) -> tuple[Hint, ...]:
    if ends is not None and ends.joint is not None:
        return (Hint(f"leave it out: a {ends.joint.kind} leaves no gap at the ends"),)
    return (
        Hint(display.examples("say which opening it stands in: `in bay, gap {2}`")),
        Hint(
            display.examples("of a row write `spread`, of a distance from where: `{20} from left`")
        ),
    )


def _has_play(contact: Contact) -> bool:
    loose = contact.preposition == "between" and (
        contact.joint is None or contact.joint.kind == "shelf pins"
    )
    return loose or contact.preposition == "in"


def _unused(part: DeclaredPart, *, boards: bool) -> Amount | None:
    in_a_row = part.spread is not None or boards
    gaps = (gap.amount for gap in part.gaps if not in_a_row or gap.axis is not None)
    return next(gaps, None if in_a_row else part.apart)
