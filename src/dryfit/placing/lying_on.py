"""How a part lies that is put on a face of others, where its line does not say.

It lies flat against the face; it runs from one host to the next where it is on several, else along
the one that it is on, and level on an upright one (common practice).  What is put under or onto a
flat part lies flat too, unless it stands on edge by its name.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from dryfit.piece.declared import PLACE_SIDE, Contact, Declared, DeclaredPart
from dryfit.piece.orientation import ON_EDGE, axes_of, lie_of, spoken, thickness_on
from dryfit.placing.face_seats import face_contact

_UP = 2
_STANDS = frozenset(
    {"beam", "bearer", "crest", "fence", "foot", "gallery", "guide", "joist", "kicker", "lip"}
    | {"moulding", "plinth", "runner", "skid", "stop", "wall"}
)
"""What stands on edge under or on a flat part too, by its name, beside what always does so."""

_RUNS = ("across", "front to back", "upright")
_LIES = ("flat", "on edge", "facing front", "facing side")
_SPOKEN = {
    "flat": "lies flat",
    "on edge": "stands on edge",
    "facing front": "faces the front",
    "facing side": "faces the side",
}


def with_lies_on_faces(declared: Declared) -> Declared:
    """Return the piece with every part on a face turned as that face asks, words of its line first.

    A turned part says so among what it takes for granted.
    """
    turned = {part.name: part for part in declared.parts}
    for part in declared.parts:
        contact = face_contact(part, declared)
        hosts = (
            [turned[host.part] for host in contact.hosts if host.part in turned] if contact else []
        )
        if contact and hosts:
            lain = _turned(part, contact, hosts[0], len(hosts))
            turned[part.name] = _in_a_row(lain, contact, hosts[0])
        elif contact is None:
            turned[part.name] = _under_or_onto(part, declared, turned)
    return replace(declared, parts=tuple(turned.values()))


def _under_or_onto(
    part: DeclaredPart, declared: Declared, turned: Mapping[str, DeclaredPart]
) -> DeclaredPart:
    """Return a part under or onto one that lies flat, as it lies: by its face, as a batten does.

    What stands on edge by its name or its line goes on doing so.
    """
    stands = part.axes[0] == _UP or part.axes[2] == _UP or _is_square(part)
    if stands or part.name.rsplit(" ", 1)[-1] in ON_EDGE | _STANDS:
        return part
    if not {words for _, words in part.assumed} & set(_LIES):
        return part
    for contact in declared.contacts:
        hosts = [host.part for host in contact.hosts]
        if contact.preposition not in {"under", "onto"}:
            continue
        # What lets a top move is told as seen from the top, though the line was this part's.
        met = hosts if contact.guest.part == part.name else []
        if part.name in hosts and not contact.own_line:
            met = [contact.guest.part]
        for host in (turned[name] for name in met if name in turned):
            if host.axes[2] == _UP and not _is_square(host):
                return _laid(part, host, part.axes[0], _UP)
    return part


def _turned(part: DeclaredPart, contact: Contact, host: DeclaredPart, hosts: int) -> DeclaredPart:
    said = {words for _, words in part.assumed}
    normal = face_axis(part, contact, host)
    if normal is None:
        return part
    run = part.axes[0]
    if said & set(_RUNS):
        run = _run_on(part, host, normal, together=hosts > 1)
    if run == normal:
        # Its end meets the face: then how it lies is a matter of its name.
        return part
    if said & set(_LIES) or _is_square(part):
        thin = normal
    else:
        on_its_line = thickness_on(run, lie_of(part.axes[0], part.axes[2]))
        thin = normal if on_its_line is None else on_its_line
    if (run, thin) == (part.axes[0], part.axes[2]):
        return part
    return _laid(part, host, run, thin)


def _in_a_row(part: DeclaredPart, contact: Contact, host: DeclaredPart) -> DeclaredPart:
    # A row goes along what it lies on, whichever way its members run.
    spread, normal = part.spread, face_axis(part, contact, host)
    if spread is None or spread.axis is not None or normal in {None, host.axes[0]}:
        return part
    return replace(part, spread=replace(spread, along=host.axes[0]))


def face_axis(part: DeclaredPart, contact: Contact, host: DeclaredPart) -> int | None:
    """Return the axis square to the face that a part lies on, or None where only places tell."""
    if contact.face in PLACE_SIDE:
        return PLACE_SIDE[contact.face][0]
    if not _is_square(host):
        return host.axes[2]
    run_said = all(words not in _RUNS for _, words in part.assumed)
    if run_said and part.axes[0] != host.axes[0]:
        return 3 - part.axes[0] - host.axes[0]
    return None


def _run_on(part: DeclaredPart, host: DeclaredPart, normal: int, *, together: bool) -> int:
    along = host.axes[0]
    if along == normal:
        return part.axes[0]
    other = 3 - along - normal
    row = part.spread.axis if part.spread else None
    if row is not None and row != normal:
        return 3 - row - normal
    measured = {each.axis for each in part.lists} | {each.axis for each in part.offsets}
    measured -= {normal}
    if len(measured) == 1:
        # What is measured in one direction of the face runs in the other.
        return 3 - measured.pop() - normal
    several = together or part.lapping is not None or (part.count == 1 and host.count > 1)
    return other if several or along == 2 else along


def _laid(part: DeclaredPart, host: DeclaredPart, run: int, thin: int) -> DeclaredPart:
    lie = lie_of(run, thin)
    since = f"since it is put on a face of the {host.written}"
    assumed = tuple(
        (f"{part.name}: its length runs {spoken(_RUNS[run])}", _RUNS[run])
        if words in _RUNS
        else (f"{part.name}: it {_SPOKEN[lie]}, {since}", lie)
        if words in _LIES
        else (text, words)
        for text, words in part.assumed
    )
    old = part.axes[0]
    return replace(
        part,
        run=_RUNS[run],
        axes=axes_of(run, thin),
        assumed=assumed,
        # "At ends" follows the ends.
        insets=tuple((run if (a, s) == (old, 0) else a, s, each) for a, s, each in part.insets),
        gaps=tuple(replace(gap, axis=run) if gap.ends else gap for gap in part.gaps),
    )


def _is_square(part: DeclaredPart) -> bool:
    _, width, thickness = part.sizes
    return width is not None and thickness is not None and width.known == thickness.known
