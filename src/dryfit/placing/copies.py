"""Which copy is which: the places and names of a part's copies, before anything has a position.

The words ``at corners`` and ``at left and right`` decide, and the part's own name (``left side``,
``front legs``); then the gaps between the hosts that a part goes between; then the habits of the
trade, which are listed as assumptions.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import product
from types import MappingProxyType

from dryfit.diagnostics import Assumption, Diagnostic, Hint, Severity
from dryfit.piece.declared import PLACE_SIDE, Contact, Declared, DeclaredPart
from dryfit.placing.directions import spread_axis
from dryfit.placing.face_seats import face_contact, tags_on_hosts
from dryfit.placing.gap_advice import copies_and_gaps
from dryfit.placing.levels import level_count, lists_that_do_not_fit
from dryfit.placing.lines import with_phrase
from dryfit.placing.opening_rows import openings_named, row_assumed
from dryfit.placing.runner_seats import running_contact, tags_of_runners
from dryfit.placing.seats import Seat, Seating, counted, seats_of

_SIDES = {0: ("left", "right"), 1: ("front", "back"), 2: ("bottom", "top")}


def seat_copies(
    declared: Declared, known: Mapping[str, Sequence[Seat]] = MappingProxyType({})
) -> Seating:
    """Return the copies of every part with their places; `known` holds those that have theirs.

    Findings: copies-and-places, copies-and-gaps, copies-unclear, copies-and-hosts,
    copies-in-one-place, list-length.
    """
    places = {name: tuple(seat.places for seat in seats) for name, seats in known.items()}
    assumptions: list[Assumption] = []
    findings: list[Diagnostic] = []
    open_ones = [part for part in declared.parts if part.name not in known]
    waiting = [part for part in open_ones if not _settle(part, declared, places, findings)]
    while waiting:
        still = [part for part in waiting if not _from_others(part, declared, places, findings)]
        if len(still) == len(waiting):
            part = still.pop(0)
            places[part.name] = _by_habit(part, declared, assumptions, findings)
        waiting = still
    for part in open_ones if not findings else ():
        findings += lists_that_do_not_fit(part, places[part.name])
    seats = {
        part.name: tuple(known.get(part.name, ())) or seats_of(part, places[part.name])
        for part in declared.parts
    }
    return Seating(seats, tuple(assumptions), tuple(findings))


def _settle(
    part: DeclaredPart,
    declared: Declared,
    places: dict[str, tuple[tuple[str, ...], ...]],
    findings: list[Diagnostic],
) -> bool:
    if part.places:
        choices = _choices((*part.places, *_named_places(part)))
        each = _copies_at_each(part, choices)
        if each is None:
            findings.append(_copies_and_places(part, choices))
            choices, each = ((),), part.count
        places[part.name] = tuple(choice for choice in choices for _ in range(each))
        return True
    named = _named_places(part)
    if running_contact(part, declared):
        return False
    if face_contact(part, declared) and not _gap_contacts(part, declared):
        return False
    if part.spread and _on_both_sides_of_one(part, declared):
        return False
    if part.spread or (part.count == 1 and (named or _is_put(part))):
        places[part.name] = (named,) * part.count
        return True
    return False


def _copies_at_each(part: DeclaredPart, choices: Sequence[tuple[str, ...]]) -> int | None:
    # One, or one for each entry of a list; a row stands at one place, or at each in its own way.
    each, left = divmod(part.count, len(choices))
    if left:
        return None
    row, sided = spread_axis(part), {PLACE_SIDE[word][0] for word in choices[0]}
    in_rows = row is not None and (len(choices) == 1 or row not in sided)
    return each if each == 1 or level_count(part) > 1 or in_rows else None


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


def _from_others(
    part: DeclaredPart,
    declared: Declared,
    places: dict[str, tuple[tuple[str, ...], ...]],
    findings: list[Diagnostic],
) -> bool:
    contact = running_contact(part, declared)
    if contact is None:
        return _from_hosts(part, declared, places, findings)
    told = tags_of_runners(part, contact, places, declared)
    if told is not None:
        places[part.name] = told[0]
        findings += told[1]
    return told is not None


def _from_hosts(
    part: DeclaredPart,
    declared: Declared,
    places: dict[str, tuple[tuple[str, ...], ...]],
    findings: list[Diagnostic],
) -> bool:
    contacts = _gap_contacts(part, declared)
    on_face = face_contact(part, declared)
    if on_face and not contacts:
        told = tags_on_hosts(part, on_face, declared, places)
        if told is not None:
            places[part.name] = told[0]
            findings += told[1]
        return told is not None
    hosts = [host for contact in contacts for host in contact.hosts]
    if not contacts or any(host.part not in places for host in hosts):
        return False
    tags = [
        words for host in hosts for words in places[host.part] if set(host.places) <= set(words)
    ]
    # A divider between two sides parts their gap: copies lie at both sides of it.
    groups = _at_both_sides(tags, part.axes[0]) or _gaps(tags, part.axes[0])
    several = level_count(part) > 1 or part.spread is not None
    if len(groups) == part.count or (groups and several and part.count % len(groups) == 0):
        # A list of another length is told of as such (`levels`).
        places[part.name] = tuple(
            group for group in groups for _ in range(part.count // len(groups))
        )
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
    if on_face and part.name not in places:
        # What also lies on faces between others, as a cleat does, has its places from those.
        on_hosts = tags_on_hosts(part, on_face, declared, places)
        if on_hosts is None or not on_hosts[1]:
            places.update({} if on_hosts is None else {part.name: on_hosts[0]})
            return on_hosts is not None
    if not groups:
        # The hosts have no places that tell gaps apart: habit decides, or the maker must.
        return False
    findings.append(copies_and_gaps(part, contacts[0], groups, declared))
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


def _on_both_sides_of_one(part: DeclaredPart, declared: Declared) -> bool:
    """Return whether what is spread lies between two sides and a lone divider."""
    hosts = [host for contact in _gap_contacts(part, declared) for host in contact.hosts]
    found = [declared.part(host.part) for host in hosts if not host.places]
    counts = sorted(each.count for each in found if each is not None)
    return part.count > 1 and len(found) == len(hosts) and counts == [1, 2]


def _at_both_sides(tags: Sequence[tuple[str, ...]], run: int) -> tuple[tuple[str, ...], ...]:
    # One host in the middle, and one at either side of it.
    ends = [words for words in tags if len(words) == 1 and PLACE_SIDE[words[0]][0] == run]
    between = [words for words in tags if not words]
    if len(between) != 1 or len(ends) != len(tags) - 1 or len(set(ends)) != 2:
        return ()
    return tuple(sorted(set(ends), key=lambda words: PLACE_SIDE[words[0]][1]))


def _by_habit(
    part: DeclaredPart,
    declared: Declared,
    assumptions: list[Assumption],
    findings: list[Diagnostic],
) -> tuple[tuple[str, ...], ...]:
    if part.count in {1, level_count(part)}:
        return ((),) * part.count
    if any(each.guest.part == part.name and each.in_rabbets for each in declared.contacts):
        # Boards of a back lie side by side.
        return ((),) * part.count
    openings = openings_named(part, declared)
    if openings and (len(openings) > 1 or part.count != 2 or part.run != "upright"):
        assumptions += row_assumed(part, len(openings))
        return ((),) * part.count
    if part.run == "upright" and part.count == 4:
        words: tuple[str, ...] = ("corners",)
    elif part.count == 2:
        words = _SIDES[1] if part.run == "across" and not part.handed else _SIDES[0]
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
