"""Joint phrases: hosts resolved, sizes by dimension."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import replace

from dryfit.diagnostics import Diagnostic, Hint, Severity, Span
from dryfit.kinds.joints import BESIDE, is_beside, is_crossed, lets_move
from dryfit.notes.tree import (
    GlueWords,
    Join,
    JointDetail,
    JointLine,
    JointSpec,
    Offset,
    PartsLine,
    Reference,
    SizeWord,
)
from dryfit.piece.declared import (
    Behind,
    Contact,
    Detail,
    GluePatch,
    Host,
    JointWords,
    PlacedAmount,
)
from dryfit.piece.joint_sizes import check_said_once, detail_sizes, joint_sizes
from dryfit.piece.names import Names
from dryfit.piece.openings import parts_only
from dryfit.piece.sums import Sums


def contacts_of_lines(
    parts: Sequence[PartsLine], joints: Sequence[JointLine], sums: Sums, names: Names
) -> tuple[Contact, ...]:
    """Return the contacts that the parts' lines and the joint sentences declare.

    A joint on a part's line that names no host (``tenon 20``) is that of the joint sentences
    which say where the part goes and name no joint (``rails into legs``).
    Findings: unknown-part, opening-is-no-part, joined-to-itself, said-twice, joint-size-unused.
    """
    contacts: list[Contact] = []
    waiting: dict[str, list[JointSpec]] = {}
    taken: set[str] = set()
    for line in parts:
        guest = Host(line.name, (), line.name_span)
        laid = [each for each in line.clauses if isinstance(each, Join) and each.rabbeted]
        for clause in line.clauses:
            if isinstance(clause, Join):
                contacts.append(_contact(guest, clause, sums, names, own_line=True))
            elif isinstance(clause, JointSpec) and is_beside(clause.kind):
                contacts.append(_beside(guest, clause, sums, names))
            elif isinstance(clause, JointSpec) and clause.kind == "screws" and laid:
                fixed = _fixed(laid[0], clause)
                contacts.append(_contact(guest, fixed, sums, names, own_line=True))
            elif isinstance(clause, JointSpec):
                waiting.setdefault(line.name, []).append(clause)
    for sentence in joints:
        for guest in parts_only(names.hosts(sentence.guests), names):
            join = sentence.join
            if join.spec is None and guest.part in waiting:
                join = _as_waiting(join, waiting[guest.part])
                taken.add(guest.part)
            elif join.spec is None and sentence.glued:
                join = replace(join, spec=JointSpec("glue", None, (), None, join.span))
            contacts.append(_contact(guest, join, sums, names, own_line=False))
            if join.fastened is not None:
                fixed = _fixed(join, join.fastened)
                contacts.append(_contact(guest, fixed, sums, names, own_line=False))
    sums.findings += _not_taken(contacts, waiting, taken)
    held = (_pinned_round(each) for each in _screwed(_told_once(contacts)))
    return tuple(turned for each in held for turned in _from_the_top(each))


def _told_once(contacts: Sequence[Contact]) -> tuple[Contact, ...]:
    """Return the contacts without `between sides` where a joint goes into the sides besides.

    The joint says how far the part enters; `between` then says no more than where it is.
    """
    entering = [each for each in contacts if each.preposition == "into" and each.joint is not None]
    return tuple(
        each
        for each in contacts
        if each.preposition != "between"
        or each.joint is not None
        or not any(_places_the_same(each, other) for other in entering)
    )


def _places_the_same(between: Contact, entering: Contact) -> bool:
    hosts = {host.part for host in entering.hosts}
    return between.guest.part == entering.guest.part and hosts.issuperset(
        host.part for host in between.hosts
    )


def _pinned_round(contact: Contact) -> Contact:
    """Return a back in its rabbets that a line calls pinned as one with pins all round.

    That is how such a back is held; a pin at the middle alone is written with its place.
    """
    kept = tuple(each for each in contact.glue if each.kind != "pinned" or each.place is not None)
    return replace(contact, glue=kept) if contact.in_rabbets else contact


def _from_the_top(contact: Contact) -> Iterator[Contact]:
    """Yield a contact as seen from the top: ``cleats under lid: slotted screws`` holds the lid.

    What holds a top is cut in the part below, whichever of the two the line begins with.
    """
    holds = contact.joint is not None and lets_move(contact.joint.kind)
    if contact.preposition != "under" or not holds:
        yield contact
        return
    for top in contact.hosts:
        yield replace(
            contact, guest=top, hosts=(contact.guest,), preposition="onto", own_line=False
        )


def _fixed(join: Join, screws: JointSpec) -> Join:
    """Return that what stands in a rabbet is screwed there besides."""
    return Join("fixed", join.hosts, screws, screws.span)


def _as_waiting(join: Join, specs: Sequence[JointSpec]) -> Join:
    """Return how parts meet by the joint on a part's line: ``rabbet 12, screws`` are both its."""
    joint, *others = specs
    screws = others[0] if others and others[0].kind == "screws" else None
    return replace(join, spec=joint, fastened=screws if joint.kind == "rabbet" else None)


def _screwed(contacts: Sequence[Contact]) -> Iterator[Contact]:
    """Yield the contacts; a panel in grooves that slides in under a part is screwed to that."""
    hosts: dict[str, set[str]] = {}
    for contact in contacts:
        if contact.preposition == "inside":
            grooved = hosts.setdefault(contact.guest.part, set())
            grooved |= {host.part for host in contact.hosts}
    for contact in contacts:
        grooved = hosts.get(contact.guest.part, set())
        plain = contact.joint is None and not contact.glue and contact.preposition == "under"
        if plain and grooved and not grooved & {host.part for host in contact.hosts}:
            yield replace(contact, joint=_screws(contact.span))
        else:
            yield contact


def _screws(span: Span) -> JointWords:
    return JointWords("screws", None, None, None, None, None, None, span=span, head=span)


def _not_taken(
    contacts: Sequence[Contact], waiting: Mapping[str, Sequence[JointSpec]], taken: Collection[str]
) -> Iterator[Diagnostic]:
    # A part that no sentence joins has been asked for its host by the reader.
    joined = {contact.guest.part for contact in contacts if not contact.own_line}
    for part, specs in waiting.items():
        rabbeted = [each.kind for each in specs[:2]] == ["rabbet", "screws"]
        read = (2 if rabbeted else 1) if part in taken else 0
        for spec in specs[read:] if part in joined else ():
            yield Diagnostic(
                "said-twice",
                Severity.ERROR,
                f"said twice: how {part} is joined",
                spec.span,
                hints=(Hint("name the joint once, here or where the part is joined"),),
            )


def _contact(guest: Host, join: Join, sums: Sums, names: Names, *, own_line: bool) -> Contact:
    named = names.hosts(join.hosts)
    hosts = named if join.preposition == "in" else parts_only(named, names)
    for host in hosts:
        if host.part == guest.part:
            names.findings.append(
                Diagnostic(
                    "joined-to-itself",
                    Severity.ERROR,
                    f"`{guest.part}` cannot be joined to itself",
                    host.span,
                    rule="H38",
                    hints=(Hint("name the part that it meets"),),
                )
            )
    spec = join.spec
    # What is halved, bridled or mitred into another lies in it, as what crosses it does.
    lapped = spec is not None and join.preposition == "into" and is_crossed(spec.kind)
    moment = spec.after if spec else None
    return Contact(
        guest,
        "crossing" if lapped else join.preposition,
        tuple(host for host in hosts if host.part != guest.part),
        joint_words(spec, sums, names) if spec else None,
        own_line,
        join.span,
        edge=join.edge,
        face=join.face,
        glue=tuple(_patch(each, sums) for each in (*join.glue, *(spec.glue if spec else ()))),
        after=names.stage(moment.assembly, Reference(moment.assembly, (), moment.span))
        if moment
        else None,
    )


def _beside(guest: Host, spec: JointSpec, sums: Sums, names: Names) -> Contact:
    """Return that the copies of a part are joined with one another."""
    words = joint_words(spec, sums, names)
    glue = tuple(_patch(each, sums) for each in spec.glue)
    return Contact(guest, BESIDE, (guest,), words, own_line=True, span=spec.span, glue=glue)


def _patch(words: GlueWords, sums: Sums) -> GluePatch:
    amount = sums.length(words.amount) if words.amount else None
    return GluePatch(words.kind, amount, words.place, words.span)


def joint_words(spec: JointSpec, sums: Sums, names: Names) -> JointWords:
    """Return a joint's sizes by dimension; bare numbers in the order of the trade.

    Findings: joint-size-unused, said-twice.
    """
    sizes = joint_sizes(spec, sums)
    check_said_once(spec.details, sums)
    return JointWords(
        kind=spec.kind,
        count=spec.count,
        length=sizes.get("length"),
        width=sizes.get("width"),
        thickness=sizes.get("thickness"),
        depth=sizes.get("depth"),
        place=_placed(spec.place, sums) if spec.place else None,
        span=spec.span,
        behind=_behind(spec.sizes, spec.place, sums),
        details=tuple(_detail(detail, sums, names) for detail in spec.details),
        head=spec.head or spec.span,
    )


def _detail(detail: JointDetail, sums: Sums, names: Names) -> Detail:
    part = names.hosts((detail.part,)) if detail.part else ()
    return Detail(
        detail.kind,
        detail.count,
        tuple(detail_sizes(detail, sums).items()),
        detail.place,
        part[0] if part else None,
        detail.span,
    )


def _behind(sizes: Sequence[SizeWord], place: Offset | None, sums: Sums) -> Behind:
    offset = (place.amount,) if place else ()
    return sums.behind(*(word.amount for word in sizes), *offset)


def _placed(offset: Offset, sums: Sums) -> PlacedAmount | None:
    value = sums.length(offset.amount)
    return None if value is None else PlacedAmount(value, offset.place, offset.span)
