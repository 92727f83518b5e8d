"""One declared piece from a piece and what stands inside its instances of patterns."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace

from dryfit.piece.declared import (
    Contact,
    Declared,
    DeclaredPart,
    Host,
    Stage,
    StageItem,
    WishWords,
    inner_name,
)
from dryfit.piece.inside_names import last_made, part_inside, renamed


def merged(outer: Declared, insides: Mapping[str, Declared]) -> Declared:
    """Return the piece with every instance replaced by what stands inside it.

    `insides` maps the part of an instance's line to its inside, which holds no instances itself.
    What is said of an instance (``seat onto base: screws``) is said of all its parts, and a
    glue-up that takes it up takes up its last glue-ups.
    """
    named = {each.part: each for each in outer.instances}
    counts = {part.name: part.count for part in outer.parts}
    parts: list[DeclaredPart] = []
    for part in outer.parts:
        inside = insides.get(part.name)
        if inside is None:
            parts.append(part)
        else:
            parts += [part_inside(each, part, named[part.name]) for each in inside.parts]
    inner = [renamed(insides[name], named[name], counts[name]) for name in insides]
    spread = {name: tuple(part.name for part in insides[name].parts) for name in insides}
    contacts = tuple(_spread_out(each, spread) for each in outer.contacts)
    last = {name: inner_name(name, last_made(insides[name])[0][0]) for name in insides}
    return replace(
        outer,
        parts=tuple(_waiting_for(part, last) for part in parts),
        contacts=tuple(
            replace(one, after=last.get(one.after or "", one.after))
            for each in contacts
            for one in each
        )
        + tuple(contact for each in inner for contact in each.contacts),
        features=tuple(
            replace(f, parts=_hosts(f.parts, spread), after=last.get(f.after or "", f.after))
            for f in outer.features
        )
        + tuple(feature for each in inner for feature in each.features),
        stages=tuple(stage for each in inner for stage in each.stages)
        + tuple(_taking_up(stage, insides) for stage in outer.stages),
        finishes=tuple(replace(f, subjects=_hosts(f.subjects, spread)) for f in outer.finishes)
        + tuple(finish for each in inner for finish in each.finishes),
        bare=tuple(replace(b, subjects=_hosts(b.subjects, spread)) for b in outer.bare)
        + tuple(bare for each in inner for bare in each.bare),
        wishes=tuple(_wish_on(wish, last) for wish in outer.wishes)
        + tuple(wish for each in inner for wish in each.wishes),
        notes=outer.notes + tuple(note for each in inner for note in each.notes),
        instances=(),
        openings=outer.openings + tuple(opening for each in inner for opening in each.openings),
        limits=outer.limits + tuple(limit for each in inner for limit in each.limits),
        supplies=outer.supplies + tuple(supply for each in inner for supply in each.supplies),
    )


def _waiting_for(part: DeclaredPart, last: Mapping[str, str]) -> DeclaredPart:
    if part.cut_after is None or part.cut_after[0] not in last:
        return part
    return replace(part, cut_after=(last[part.cut_after[0]], part.cut_after[1]))


def _wish_on(wish: WishWords, last: Mapping[str, str]) -> WishWords:
    # A wish about an instance is one about the glue-up that makes it whole.
    first, then = (
        replace(act, subject=last.get(act.subject or "", act.subject))
        for act in (wish.first, wish.then)
    )
    return replace(wish, first=first, then=then)


def _hosts(hosts: Iterable[Host], spread: Mapping[str, tuple[str, ...]]) -> tuple[Host, ...]:
    found: list[Host] = []
    for host in hosts:
        inside = spread.get(host.part)
        if inside is None:
            found.append(host)
        else:
            found += [Host(inner_name(host.part, name), (), host.span) for name in inside]
    return tuple(found)


def _spread_out(contact: Contact, spread: Mapping[str, tuple[str, ...]]) -> tuple[Contact, ...]:
    hosts = _hosts(contact.hosts, spread)
    return tuple(
        replace(contact, guest=guest, hosts=hosts) for guest in _hosts((contact.guest,), spread)
    )


def _taking_up(stage: Stage, insides: Mapping[str, Declared]) -> Stage:
    items: list[StageItem] = []
    for item in stage.items:
        inside = insides.get(item.name)
        if inside is None:
            items.append(item)
        else:
            items += [_inner_item(item, name, count) for name, count in last_made(inside)]
    return replace(stage, items=tuple(items))


def _inner_item(item: StageItem, name: str, count: int) -> StageItem:
    taken = None if item.count is None else item.count * count
    return replace(item, name=inner_name(item.name, name), count=taken, places=())
