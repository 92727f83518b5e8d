"""Bought things in the Model, apart from the parts that are made."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from fractions import Fraction

from dryfit.joinery.cut import Cut
from dryfit.piece.declared import PART_DIMENSIONS, Contact, DeclaredPart, Host, Supply
from dryfit.placing.found import Found
from dryfit.placing.heights import say
from dryfit.placing.model import Bought, Part
from dryfit.placing.site import Site, both

_LITTLE = Fraction(50)
"""The room in mm that a bought thing is given where its line says none; ours."""
_LITTLE_WORDS = "takes little room"
_PIECE_WORDS = {0: "wide", 2: "high", 1: "deep"}
_PLATE = 4
"""What is this many times wider and higher than thick is told with its thickness; ours."""
_ADJECTIVES = {"length": "long", "width": "wide", "thickness": "thick"}


def takes_little_room(site: Site, part: DeclaredPart) -> bool:
    """Assume, last of all, that a bought thing is small in the directions that nothing tells."""
    if part.bought is None:
        return False
    told: list[str] = []
    for seat in site.seats(part.name):
        sizes = [site.positions.extent(seat.name, axis) for axis in range(3)]
        known = [size for size in sizes if size is not None]
        little = min((*known, _LITTLE))
        for axis, dimension in zip(part.axes, PART_DIMENSIONS, strict=True):
            low, high = both(seat.name, axis)
            if sizes[axis] is None and say(site, seat, (low, high, little), "", _LITTLE_WORDS):
                told.append(f"{site.shown(little)} {_ADJECTIVES[dimension]}")
    if told:
        phrase = ", ".join(dict.fromkeys(told))
        site.assume(f"the {part.written} take up {phrase}", part.span, phrase)
    return bool(told)


def bought_names(site: Site) -> frozenset[str]:
    """Return the names of the bought parts."""
    return frozenset(part.name for part in site.parts() if part.bought is not None)


def made_cuts(cuts: Iterable[Cut], bought: frozenset[str]) -> list[Cut]:
    """Return the cuts of what is made; those for a bought thing have no mate."""
    return [replace(cut, mate=None) if cut.mate in bought else cut for cut in cuts]


def without_bought(site: Site, found: Iterable[Found]) -> tuple[Found, ...]:
    """Return the joints between parts that are made."""
    names = {seat.name for name in bought_names(site) for seat in site.seats(name)}
    return tuple(joint for joint in found if not {joint.guest, joint.host} & names)


def bought_things(site: Site, parts: Sequence[Part]) -> tuple[Bought, ...]:
    """Return what is bought, those with a place first; `parts` hold these."""
    placed = [_placed(site, part) for part in parts]
    return (*placed, *(_listed(site, each) for each in site.declared.supplies))


def _placed(site: Site, part: Part) -> Bought:
    declared = site.part(part.name)
    words = declared.bought
    hosts = [host for contact in site.contacts_of(part.name) for host in contact.hosts]
    where = [_where(contact) for contact in site.contacts_of(part.name)][:1]
    goes_with = words.goes_with if words else ()
    purpose = " ".join((*where, "the", _listed_words(site, hosts))) if hosts else ""
    return Bought(
        name=part.name,
        written=part.written,
        count=len(part.copies),
        size=_sizes(site, declared),
        purpose=purpose or _listed_words(site, goes_with),
        order=words.order if words else None,
        copies=part.copies,
        span=declared.span,
        kilograms=words.kilograms if words else None,
    )


def _where(contact: Contact) -> str:
    """Return where the thing goes as one says it: ``under``, or ``on the front of``."""
    if contact.preposition == "on face" and contact.face is not None:
        return f"on the {contact.face} of"
    return contact.preposition


def _sizes(site: Site, part: DeclaredPart) -> str:
    """Return all that is known of its sizes, written or worked out, in words of the piece."""
    if part.bought is not None and part.bought.round_size:
        return part.bought.round_size
    seat = site.seats(part.name)[0]
    sizes = {
        axis: size
        for axis in range(3)
        if (size := site.positions.extent(seat.name, axis)) is not None
        and not _is_little_room(site, seat.name, axis)
    }
    words = dict(_PIECE_WORDS)
    thin = part.axes[2]
    others = [size for axis, size in sizes.items() if axis != thin]
    if thin in sizes and others and min(others) >= _PLATE * sizes[thin]:
        del words[thin]
        words[thin] = "thick"
    return " x ".join(f"{site.shown(sizes[axis])} {words[axis]}" for axis in words if axis in sizes)


def _is_little_room(site: Site, name: str, axis: int) -> bool:
    facts = site.positions.chain(*both(name, axis))
    return len(facts) == 1 and facts[0].reason.words.endswith(_LITTLE_WORDS)


def _listed(site: Site, supply: Supply) -> Bought:
    return Bought(
        name=supply.name,
        written=supply.written,
        count=supply.count,
        size=supply.size,
        purpose=_listed_words(site, supply.words.goes_with),
        order=supply.words.order,
        copies=(),
        span=supply.span,
        kilograms=supply.words.kilograms,
    )


def _listed_words(site: Site, hosts: Iterable[Host]) -> str:
    return " and ".join(dict.fromkeys(_written(site, host) for host in hosts))


def _written(site: Site, host: Host) -> str:
    if site.opening(host.part):
        return host.part
    # A whole instance of a pattern is no part: it is named as the line names it.
    known = any(part.name == host.part for part in site.parts())
    return site.written(host.part) if known else host.span.text()
