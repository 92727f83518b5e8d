"""One declared piece from a piece and what stands inside its instances of patterns."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace

from dryfit.piece.declared import (
    Amount,
    BareWords,
    Contact,
    Declared,
    DeclaredFeature,
    DeclaredPart,
    Detail,
    FinishWords,
    FlushWith,
    Host,
    Instance,
    OnHost,
    PlacedAmount,
    Stage,
    StageItem,
    WishAct,
    WishWords,
    inner_name,
)


def merged(outer: Declared, insides: Mapping[str, Declared]) -> Declared:
    """Return the piece with every instance replaced by what stands inside it.

    `insides` maps the part of an instance's line to its inside, which holds no instances itself.
    What is said of an instance (``seat onto base: screws``) is said of all its parts, and a
    glue-up that takes it up takes up its last glue-ups.
    """
    named = {each.part: each for each in outer.instances}
    parts: list[DeclaredPart] = []
    for part in outer.parts:
        inside = insides.get(part.name)
        if inside is None:
            parts.append(part)
        else:
            parts += [_part(each, part, named[part.name]) for each in inside.parts]
    inner = [_renamed(insides[name], named[name], outer) for name in insides]
    spread = {name: tuple(part.name for part in insides[name].parts) for name in insides}
    contacts = tuple(_spread_out(each, spread) for each in outer.contacts)
    last = {name: inner_name(name, _last(insides[name])[0][0]) for name in insides}
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
        + tuple(finish for each in inner for finish in each.finishes if finish.subjects),
        bare=tuple(replace(b, subjects=_hosts(b.subjects, spread)) for b in outer.bare)
        + tuple(bare for each in inner for bare in each.bare),
        wishes=tuple(_wish_on(wish, last) for wish in outer.wishes)
        + tuple(wish for each in inner for wish in each.wishes),
        notes=outer.notes + tuple(note for each in inner for note in each.notes),
        instances=(),
        openings=outer.openings + tuple(opening for each in inner for opening in each.openings),
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


def _part(part: DeclaredPart, box: DeclaredPart, instance: Instance) -> DeclaredPart:
    # A part of an instance in an instance keeps the outermost as the box that it stands in.
    own = instance.part
    return replace(
        part,
        name=inner_name(own, part.name),
        assumed=tuple((f"{own}: {text}", words) for text, words in part.assumed),
        count=part.count * box.count,
        timber=part.timber or box.timber,
        within=own if part.within is None else inner_name(own, part.within),
        cut_after=part.cut_after and (inner_name(own, part.cut_after[0]), part.cut_after[1]),
        sizes=(
            _amount(part.sizes[0], own),
            _amount(part.sizes[1], own),
            _amount(part.sizes[2], own),
        ),
        flush=tuple(_flush(each, own) for each in part.flush),
        offsets=tuple(_offset(each, own) for each in part.offsets),
    )


def _renamed(inside: Declared, instance: Instance, outer: Declared) -> Declared:
    own = instance.part
    count = next(part.count for part in outer.parts if part.name == own)
    return replace(
        inside,
        contacts=tuple(_contact(each, own) for each in inside.contacts),
        features=tuple(_feature(each, own) for each in inside.features),
        stages=tuple(_stage(each, own, count) for each in inside.stages),
        finishes=tuple(_finish(each, own) for each in inside.finishes),
        bare=tuple(_bare(each, own) for each in inside.bare),
        wishes=tuple(_wish(each, own) for each in inside.wishes),
        openings=tuple(
            replace(each, name=inner_name(own, each.name), between=_all(each.between, own))
            for each in inside.openings
        ),
    )


def _amount(amount: Amount | None, own: str) -> Amount | None:
    if amount is None:
        return None
    leans = tuple(replace(each, subject=inner_name(own, each.subject)) for each in amount.leans)
    figures = tuple(_figure(name, own) for name in amount.behind.figures)
    return replace(amount, leans=leans, behind=replace(amount.behind, figures=figures))


def _figure(name: str, own: str) -> str:
    # What is the whole piece inside an instance is the instance outside it.
    subject, _, dimension = name.rpartition(".")
    return f"{own if subject == 'overall' else inner_name(own, subject)}.{dimension}"


def _host(host: Host, own: str) -> Host:
    return replace(host, part=inner_name(own, host.part))


def _all(hosts: Iterable[Host], own: str) -> tuple[Host, ...]:
    return tuple(_host(host, own) for host in hosts)


def _flush(flush: FlushWith, own: str) -> FlushWith:
    return replace(flush, hosts=_all(flush.hosts, own))


def _offset(offset: OnHost, own: str) -> OnHost:
    return replace(offset, hosts=_all(offset.hosts, own))


def _detail(detail: Detail, own: str) -> Detail:
    return detail if detail.part is None else replace(detail, part=_host(detail.part, own))


def _contact(contact: Contact, own: str) -> Contact:
    joint = contact.joint
    if joint is not None:
        joint = replace(joint, details=tuple(_detail(each, own) for each in joint.details))
    return replace(
        contact,
        guest=_host(contact.guest, own),
        hosts=_all(contact.hosts, own),
        joint=joint,
        after=contact.after and inner_name(own, contact.after),
        inner=True,
    )


def _feature(feature: DeclaredFeature, own: str) -> DeclaredFeature:
    after = feature.after and inner_name(own, feature.after)
    extent = feature.extent and replace(
        feature.extent,
        start=feature.extent.start and _placed(feature.extent.start, own),
        end=feature.extent.end and _placed(feature.extent.end, own),
    )
    places = tuple(_placed(place, own) for place in feature.places)
    parts = _all(feature.parts, own)
    late = tuple((name, told) for name, size in feature.late if (told := _amount(size, own)))
    return replace(feature, parts=parts, places=places, extent=extent, after=after, late=late)


def _placed(amount: PlacedAmount, own: str) -> PlacedAmount:
    leans = tuple(replace(lean, subject=inner_name(own, lean.subject)) for lean in amount.leans)
    return replace(amount, of=_all(amount.of, own), leans=leans)


def _stage(stage: Stage, own: str, count: int) -> Stage:
    items = tuple(replace(item, name=inner_name(own, item.name)) for item in stage.items)
    return replace(stage, name=inner_name(own, stage.name), count=stage.count * count, items=items)


def _finish(finish: FinishWords, own: str) -> FinishWords:
    return replace(finish, subjects=_all(finish.subjects, own))


def _bare(bare: BareWords, own: str) -> BareWords:
    return replace(bare, subjects=_all(bare.subjects, own))


def _wish(wish: WishWords, own: str) -> WishWords:
    return replace(wish, first=_act(wish.first, own), then=_act(wish.then, own))


def _act(act: WishAct, own: str) -> WishAct:
    return act if act.subject is None else replace(act, subject=inner_name(own, act.subject))


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
            items += [_inner_item(item, name, count) for name, count in _last(inside)]
    return replace(stage, items=tuple(items))


def _inner_item(item: StageItem, name: str, count: int) -> StageItem:
    taken = None if item.count is None else item.count * count
    return replace(item, name=inner_name(item.name, name), count=taken, places=())


def _last(inside: Declared) -> list[tuple[str, int]]:
    """Return the glue-ups that no other takes up, and the parts that are in none: with counts."""
    taken = {item.name for stage in inside.stages for item in stage.items}
    loose = [(part.name, part.count) for part in inside.parts if part.name not in taken]
    return [(s.name, s.count) for s in inside.stages if s.name not in taken] + loose
