"""Joint phrases: hosts resolved, sizes by dimension."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

from dryfit.diagnostics import Diagnostic, Hint, Severity
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
from dryfit.piece.names import Names
from dryfit.piece.openings import parts_only
from dryfit.piece.sums import Sums

# What the bare numbers of a joint mean, in order (language.md; common speech of the trade).
_BARE_ORDER = {
    "tenon": ("length", "thickness", "width"),
    "housing": ("depth",),
    "groove": ("depth",),
    "half lap": ("depth",),
}
# What the bare number of a detail means: `pegs 3/8`, `haunch 10 long 6`, `shoulder 5 below`.
_DETAIL_ORDER = {
    "haunch": ("length", "depth"),
    "keys": ("thickness", "depth"),
    "pegs": ("diameter",),
    "proud": ("length",),
    "shoulder": ("length",),
    "offset": ("length",),
}
_DIMENSION = {"long": "length", "wide": "width", "thick": "thickness", "deep": "depth"}


def contacts_of_lines(
    parts: Sequence[PartsLine], joints: Sequence[JointLine], sums: Sums, names: Names
) -> tuple[Contact, ...]:
    """Return the contacts that the parts' lines and the joint sentences declare.

    A joint on a part's line that names no host (``tenon 20``) is that of the joint sentences
    which say where the part goes and name no joint (``rails into legs``).
    """
    contacts: list[Contact] = []
    waiting: dict[str, JointSpec] = {}
    for line in parts:
        guest = Host(line.name, (), line.name_span)
        for clause in line.clauses:
            if isinstance(clause, Join):
                contacts.append(_contact(guest, clause, sums, names, own_line=True))
            elif isinstance(clause, JointSpec):
                waiting.setdefault(line.name, clause)
    for sentence in joints:
        for guest in parts_only(names.hosts(sentence.guests), names):
            join = sentence.join
            if join.spec is None and guest.part in waiting:
                join = replace(join, spec=waiting[guest.part])
            elif join.spec is None and sentence.glued:
                join = replace(join, spec=JointSpec("glue", None, (), None, join.span))
            contacts.append(_contact(guest, join, sums, names, own_line=False))
    return tuple(contacts)


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
    moment = spec.after if spec else None
    return Contact(
        guest,
        join.preposition,
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


def _patch(words: GlueWords, sums: Sums) -> GluePatch:
    amount = sums.length(words.amount) if words.amount else None
    return GluePatch(words.kind, amount, words.place, words.span)


def joint_words(spec: JointSpec, sums: Sums, names: Names) -> JointWords:
    """Return a joint's sizes by dimension; bare numbers in the order of the trade."""
    sizes = _sizes(spec.sizes, _BARE_ORDER.get(spec.kind, ()), sums)
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
    )


def _detail(detail: JointDetail, sums: Sums, names: Names) -> Detail:
    part = names.hosts((detail.part,)) if detail.part else ()
    return Detail(
        detail.kind,
        detail.count,
        tuple(_sizes(detail.sizes, _DETAIL_ORDER.get(detail.kind, ()), sums).items()),
        detail.place,
        part[0] if part else None,
        detail.span,
    )


def _sizes(words: Sequence[SizeWord], order: Sequence[str], sums: Sums) -> dict[str, Fraction]:
    found: dict[str, Fraction] = {}
    bare = iter(order)
    for word in words:
        dimension = _DIMENSION.get(word.dimension or "", word.dimension) or next(bare, None)
        value = sums.size(word.amount)
        if dimension is not None and value is not None:
            found.setdefault(dimension, value)
    return found


def _behind(sizes: Sequence[SizeWord], place: Offset | None, sums: Sums) -> Behind:
    offset = (place.amount,) if place else ()
    return sums.behind(*(word.amount for word in sizes), *offset)


def _placed(offset: Offset, sums: Sums) -> PlacedAmount | None:
    value = sums.length(offset.amount)
    return None if value is None else PlacedAmount(value, offset.place, offset.span)
