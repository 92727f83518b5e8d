"""Which copy lies on which host, where a part lies on a face of others."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.piece.declared import PLACE_SIDE, Contact, Declared, DeclaredPart
from dryfit.placing.directions import spread_axis
from dryfit.placing.levels import level_count
from dryfit.placing.seats import counted, written
from dryfit.quantities import Display

ON_A_FACE = ("on face", "against")
"""The prepositions of what touches a side of its hosts."""

_ASUNDER = (("left and right", "across"), ("front and back", "front to back"))

Tags = tuple[str, ...]


def face_contact(part: DeclaredPart, declared: Declared) -> Contact | None:
    """Return the first contact by which a part lies on a face, or None."""
    for contact in declared.contacts:
        if contact.guest.part == part.name and contact.preposition in ON_A_FACE:
            return contact
    return None


def tags_on_hosts(
    part: DeclaredPart, contact: Contact, declared: Declared, places: Mapping[str, Sequence[Tags]]
) -> tuple[tuple[Tags, ...], tuple[Diagnostic, ...]] | None:
    """Return the place words of all copies as their hosts give them, or None to wait for those.

    One copy (or one for each entry of a list, or a spread) goes to each host; where hosts stand
    apart along the way that the part runs, it lies over them together.
    Findings: copies-and-hosts, copies-in-one-place.
    """
    if any(host.part not in places for host in contact.hosts if declared.part(host.part)):
        return None
    spots = _spots(part, contact, declared, places)
    many, left = divmod(part.count, len(spots))
    if _fits(part, spots) or (not left and level_count(part) > 1):
        # A list of another length is told of as such (`levels`).
        return tuple(spot for spot in spots for _ in range(many)), ()
    nowhere: tuple[Tags, ...] = ((),) * part.count
    if left:
        return nowhere, (_copies_and_hosts(part, contact, declared, spots),)
    return nowhere, (_in_one_place(part, contact, declared, len(spots)),)


def _spots(
    part: DeclaredPart, contact: Contact, declared: Declared, places: Mapping[str, Sequence[Tags]]
) -> Sequence[Tags]:
    tags = [
        words
        for host in contact.hosts
        for words in places.get(host.part, ((),))
        if set(host.places) <= set(words)
    ]
    normal = _normal(contact, declared)
    rows = {spread_axis(each) for host in contact.hosts if (each := declared.part(host.part))}
    if len(set(tags)) < len(tags):
        # Numbered hosts, and those in several instances of a pattern, have no words of their own:
        # the first copy lies on the first of them, unless it can lie over all.
        over_all = part.axes[0] in rows or part.spread is not None or part.count % len(tags)
        if not over_all or (normal is not None and normal in rows):
            return tags
    # What runs from one host to the other lies on both, and so does a row between them.
    row = spread_axis(part)
    spots = _together(dict.fromkeys(tags) or [()], part.axes[0])
    spots = spots if row is None else _together(spots, row)
    own = {word for word in part.name.split(" ")[:-1] if word in PLACE_SIDE}
    spots = [spot for spot in spots if own <= set(spot)] or spots
    for axis in (each for each in range(3) if each != normal):
        spots = spots if _fits(part, spots) else _together(spots, axis)
    if not _fits(part, spots):
        spots = [spot for spot in spots if contact.face in spot] or spots
    return spots


def _fits(part: DeclaredPart, spots: Sequence[Tags]) -> bool:
    many, left = divmod(part.count, len(spots))
    in_rows = part.spread is not None and len(set(spots)) == len(spots)
    return not left and (many in {1, level_count(part)} or in_rows)


def _normal(contact: Contact, declared: Declared) -> int | None:
    if contact.face in PLACE_SIDE:
        return PLACE_SIDE[contact.face][0]
    hosts = (declared.part(host.part) for host in contact.hosts)
    return next((host.axes[2] for host in hosts if host is not None), None)


def _together(tags: Iterable[Tags], axis: int) -> list[Tags]:
    # Places at both sides of an axis are one place that has no side on it.
    sides: dict[Tags, dict[Tags, set[int]]] = {}
    for words in tags:
        shared = tuple(word for word in words if PLACE_SIDE[word][0] != axis)
        sides.setdefault(shared, {})[words] = {
            PLACE_SIDE[word][1] for word in words if PLACE_SIDE[word][0] == axis
        }
    spots: list[Tags] = []
    for shared, members in sides.items():
        spots += [shared] if {-1, 1} <= set().union(*members.values()) else members
    return spots


def _copies_and_hosts(
    part: DeclaredPart, contact: Contact, declared: Declared, spots: Sequence[Tags]
) -> Diagnostic:
    hosts = " and ".join(written(declared, host.part) for host in contact.hosts)
    one = " ".join((*spots[0], contact.hosts[0].part)) if spots[0] and contact.hosts else ""
    which = f", or name one of them, such as `{one}`" if part.count < len(spots) and one else ""
    return Diagnostic(
        "copies-and-hosts",
        Severity.ERROR,
        f"{part.count} {part.written} on the {hosts}, but there are {len(spots)} of those",
        contact.span,
        rule="H27",
        hints=(Hint(f"write {counted(len(spots), part.name)}{which}"),),
    )


def _in_one_place(
    part: DeclaredPart, contact: Contact, declared: Declared, spots: int
) -> Diagnostic:
    hosts = " and ".join(written(declared, host.part) for host in contact.hosts)
    each = "each of " if spots > 1 else ""
    many = part.count // spots
    axis = 0 if _normal(contact, declared) == 1 else 1
    return Diagnostic(
        "copies-in-one-place",
        Severity.ERROR,
        f"{many} {part.written} on {each}the {hosts} would lie in one place",
        contact.span,
        rule="H28",
        hints=(Hint(apart_words(declared.display, axis)),),
    )


def apart_words(display: Display, axis: int = 1) -> str:
    """Return what to write so that copies do not lie in one place; `axis` is the way between."""
    places, way = _ASUNDER[axis]
    row = display.examples("`up {80}, {240}`")
    return f"say where each goes: `at {places}`, `spread {way}`, or a list such as {row}"
