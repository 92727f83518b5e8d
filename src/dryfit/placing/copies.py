"""Which copy is which: the places and names of a part's copies, before anything has a position.

The words ``at corners`` and ``at left and right`` decide, and the part's own name (``left side``,
``front legs``); then the gaps between the hosts that a part goes between; then the habits of the
trade, which are listed as assumptions.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import product

from dryfit.diagnostics import Assumption, Diagnostic, Hint, Severity
from dryfit.piece.declared import PLACE_SIDE, Contact, Declared, DeclaredPart
from dryfit.placing.lines import with_phrase
from dryfit.placing.seats import Seating, counted, seats_of, written

_SIDES = {0: ("left", "right"), 1: ("front", "back"), 2: ("bottom", "top")}


def seat_copies(declared: Declared) -> Seating:
    """Return the copies of every part with their places.

    Findings: copies-and-places, copies-and-gaps, copies-unclear.
    """
    places: dict[str, tuple[tuple[str, ...], ...]] = {}
    assumptions: list[Assumption] = []
    findings: list[Diagnostic] = []
    waiting = [part for part in declared.parts if not _settle(part, places, findings)]
    while waiting:
        still = [part for part in waiting if not _from_hosts(part, declared, places, findings)]
        if len(still) == len(waiting):
            part = still.pop(0)
            places[part.name] = _by_habit(part, assumptions, findings)
        waiting = still
    seats = {part.name: seats_of(part, places[part.name]) for part in declared.parts}
    return Seating(seats, tuple(assumptions), tuple(findings))


def _settle(
    part: DeclaredPart,
    places: dict[str, tuple[tuple[str, ...], ...]],
    findings: list[Diagnostic],
) -> bool:
    if part.places:
        choices = _choices((*part.places, *_named_places(part)))
        if len(choices) != part.count and not (part.spread and len(choices) == 1):
            findings.append(_copies_and_places(part, choices))
            choices = tuple(() for _ in range(part.count))
        places[part.name] = choices if len(choices) == part.count else choices * part.count
        return True
    named = _named_places(part)
    if part.spread or (part.count == 1 and (named or _is_put(part))):
        places[part.name] = (named,) * part.count
        return True
    return False


def _is_put(part: DeclaredPart) -> bool:
    # Words that say in which of several gaps a single part lies, across its run.
    across = {axis for axis in (0, 1) if axis != part.axes[0]}
    said = {axis for axis, _, _ in part.froms} | {axis for axis, _ in part.set_in}
    said |= {PLACE_SIDE[flush.place][0] for flush in part.flush}
    return bool(said & across)


def _named_places(part: DeclaredPart) -> tuple[str, ...]:
    # "left side" stands at the left; "top" alone names the thing and not its place.
    written = {PLACE_SIDE[word][0] for word in part.places if word != "corners"}
    if "corners" in part.places:
        written |= {0, 1}
    words = [word for word in part.name.split(" ")[:-1] if word in PLACE_SIDE]
    axes = [PLACE_SIDE[word][0] for word in words]
    return tuple(
        word
        for word, axis in zip(words, axes, strict=True)
        if axis not in written and axes.count(axis) == 1
    )


def _choices(words: Sequence[str]) -> tuple[tuple[str, ...], ...]:
    if "corners" in words:
        others = [word for word in words if word != "corners"]
        words = ("front", "back", "left", "right", *others)
    by_axis: dict[int, list[str]] = {}
    for word in words:
        of_axis = by_axis.setdefault(PLACE_SIDE[word][0], [])
        if word not in of_axis:
            of_axis.append(word)
    ordered = [by_axis[axis] for axis in (2, 1, 0) if axis in by_axis]
    return tuple(tuple(choice) for choice in product(*ordered))


def _copies_and_places(part: DeclaredPart, choices: Sequence[tuple[str, ...]]) -> Diagnostic:
    return Diagnostic(
        "copies-and-places",
        Severity.ERROR,
        f"{part.count} {part.written}, but the places named are {len(choices)}",
        part.places_span,
        rule="H27",
        hints=(
            Hint(f"write {counted(len(choices), part.name)}, or name as many places as copies"),
        ),
    )


def _from_hosts(
    part: DeclaredPart,
    declared: Declared,
    places: dict[str, tuple[tuple[str, ...], ...]],
    findings: list[Diagnostic],
) -> bool:
    contacts = _gap_contacts(part, declared)
    hosts = [host for contact in contacts for host in contact.hosts]
    if not contacts or any(host.part not in places for host in hosts):
        return False
    tags = [
        words for host in hosts for words in places[host.part] if set(host.places) <= set(words)
    ]
    groups = _gaps(tags, part.axes[0])
    if len(groups) == part.count:
        places[part.name] = groups
        return True
    if part.count == 1 and all(contact.joint is None for contact in contacts):
        # A shelf between four legs lies in no single gap.
        places[part.name] = ((),)
        return True
    # Copies that each enter a copy of their host (posts in feet) take over its place.
    sides = tuple(dict.fromkeys(tags))
    if not groups and len(sides) == part.count and all(sides):
        places[part.name] = sides
        return True
    if not groups:
        # The hosts have no places that tell gaps apart: habit decides, or the maker must.
        return False
    findings.append(_copies_and_gaps(part, contacts[0], groups, declared))
    places[part.name] = ((),) * part.count
    return True


def _gap_contacts(part: DeclaredPart, declared: Declared) -> list[Contact]:
    return [
        contact
        for contact in declared.contacts
        if contact.guest.part == part.name and contact.preposition in {"into", "between"}
    ]


def _gaps(tags: Sequence[tuple[str, ...]], run: int) -> tuple[tuple[str, ...], ...]:
    # Hosts that face each other along the run share their other place words: the words of the
    # gap, which the part between them inherits.
    pairs: dict[tuple[str, ...], set[int]] = {}
    for words in tags:
        others = tuple(word for word in words if PLACE_SIDE[word][0] != run)
        sides = {PLACE_SIDE[word][1] for word in words if PLACE_SIDE[word][0] == run}
        pairs.setdefault(others, set()).update(sides)
    return tuple(others for others, sides in pairs.items() if sides == {-1, 1})


def _copies_and_gaps(
    part: DeclaredPart,
    contact: Contact,
    groups: Sequence[tuple[str, ...]],
    declared: Declared,
) -> Diagnostic:
    hosts = " and ".join(written(declared, host.part) for host in contact.hosts)
    return Diagnostic(
        "copies-and-gaps",
        Severity.ERROR,
        f"{part.count} {part.written}, but the {hosts} leave {_gaps_in_words(len(groups))}",
        contact.span,
        rule="H27",
        hints=(Hint(_gap_advice(part, groups)),),
    )


def _gaps_in_words(gaps: int) -> str:
    return "no gap that way" if not gaps else f"{gaps} gap{'' if gaps == 1 else 's'} that way"


def _gap_advice(part: DeclaredPart, groups: Sequence[tuple[str, ...]]) -> str:
    if part.count == 4 and len(groups) == 2:
        return (
            f"for {part.written} all round write two lines with two names, one `across` and one "
            "`front to back`"
        )
    if part.count > 1 and len(groups) == 1:
        if part.run == "upright":
            return "to have them side by side in that gap, add `spread`"
        return "to have them one above the other in that gap, add `spread up and down`"
    many = counted(len(groups), part.name)
    where = f"at {groups[0][0]}" if part.count == 1 and groups[0] else "at"
    return f"write {many}, or say `{where}`" + ("" if part.count == 1 else " and the places")


def _by_habit(
    part: DeclaredPart, assumptions: list[Assumption], findings: list[Diagnostic]
) -> tuple[tuple[str, ...], ...]:
    if part.count == 1:
        return ((),)
    if part.run == "upright" and part.count == 4:
        words: tuple[str, ...] = ("corners",)
    elif part.count == 2:
        words = _SIDES[1] if part.run == "across" else _SIDES[0]
    else:
        findings.append(
            Diagnostic(
                "copies-unclear",
                Severity.ERROR,
                f"where do the {part.count} {part.written} go?",
                part.name_span,
                rule="H27",
                hints=(Hint("add `at` and the places, or `spread` and the direction"),),
            )
        )
        return ((),) * part.count
    spoken = " and ".join(words)
    assumptions.append(
        Assumption(
            f"the {part.count} {part.written} stand at the {spoken}",
            part.name_span,
            with_phrase(part.span, f"at {spoken}"),
        )
    )
    return _choices(words)
