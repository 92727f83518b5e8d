"""What stands inside an instance of a pattern, under the names that it has in the whole piece."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from dryfit.diagnostics import Span
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
    PieceLimit,
    PlacedAmount,
    Stage,
    Supply,
    WishAct,
    WishWords,
    inner_name,
)


def renamed(inside: Declared, instance: Instance, count: int) -> Declared:
    """Return all but the parts of what stands inside each of `count` copies of an instance."""
    own = instance.part
    return replace(
        inside,
        contacts=tuple(_contact(each, own) for each in inside.contacts),
        features=tuple(_feature(each, own) for each in inside.features),
        stages=tuple(_stage(each, own, count) for each in inside.stages),
        finishes=_finishes(inside, own),
        bare=tuple(_bare(each, own) for each in inside.bare),
        wishes=tuple(_wish(each, own) for each in inside.wishes),
        openings=tuple(
            replace(each, name=inner_name(own, each.name), between=_all(each.between, own))
            for each in inside.openings
        ),
        limits=tuple(_limit(each, own, instance.span) for each in inside.limits),
        supplies=tuple(_supply(each, own, count) for each in inside.supplies),
    )


def part_inside(part: DeclaredPart, box: DeclaredPart, instance: Instance) -> DeclaredPart:
    """Return a part of the inside; `box` is the part that the instance is in the piece round it."""
    # A part of an instance in an instance keeps the outermost as the box that it stands in.
    own = instance.part
    return replace(
        part,
        name=inner_name(own, part.name),
        assumed=tuple((f"{own}: {text}", words) for text, words in part.assumed),
        count=part.count * box.count,
        timber=part.timber or box.timber,
        cut=part.cut or box.cut,
        fitted=part.fitted or box.fitted,
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


def last_made(inside: Declared) -> list[tuple[str, int]]:
    """Return the glue-ups that no other takes up, and the parts that are in none: with counts."""
    taken = {item.name for stage in inside.stages for item in stage.items}
    loose = [(part.name, part.count) for part in inside.parts if part.name not in taken]
    return [(s.name, s.count) for s in inside.stages if s.name not in taken] + loose


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


def _finishes(inside: Declared, own: str) -> tuple[FinishWords, ...]:
    # What an inside says of all of itself is said of its last glue-ups, behind what names parts.
    named = [finish for finish in inside.finishes if finish.subjects]
    made = tuple(name for name, _ in last_made(inside))
    of_all = [
        replace(finish, subjects=tuple(Host(name, (), finish.span) for name in made))
        for finish in inside.finishes
        if not finish.subjects
    ]
    return tuple(
        replace(finish, subjects=_all(finish.subjects, own)) for finish in (*named, *of_all)
    )


def _bare(bare: BareWords, own: str) -> BareWords:
    return replace(bare, subjects=_all(bare.subjects, own))


def _limit(stated: PieceLimit, own: str, span: Span) -> PieceLimit:
    # The whole piece inside an instance is the instance.
    if stated.subject is not None:
        return replace(stated, subject=_host(stated.subject, own))
    long = stated.limit.dimension == "length"
    limit = replace(stated.limit, dimension="width") if long else stated.limit
    return PieceLimit(Host(own, (), span), limit)


def _supply(supply: Supply, own: str, count: int) -> Supply:
    words = replace(supply.words, goes_with=_all(supply.words.goes_with, own))
    return replace(
        supply, name=inner_name(own, supply.name), count=supply.count * count, words=words
    )


def _wish(wish: WishWords, own: str) -> WishWords:
    return replace(wish, first=_act(wish.first, own), then=_act(wish.then, own))


def _act(act: WishAct, own: str) -> WishAct:
    return act if act.subject is None else replace(act, subject=inner_name(own, act.subject))
