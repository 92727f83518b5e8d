"""What stands inside instances of patterns: placed by itself, then set into the piece."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from dryfit.diagnostics import Assumption, Findings
from dryfit.piece.declared import Declared, Instance, inner_name
from dryfit.piece.inside import declare_inside
from dryfit.piece.merged import merged
from dryfit.placing.positions import WHOLE, Face, Reason
from dryfit.placing.seats import Seat, Seating
from dryfit.placing.site import Site, both


@dataclass(frozen=True, slots=True)
class Inside:
    """The inside of an instance, placed with the instance's own box as the whole."""

    instance: Instance
    site: Site


def inside_of(site: Site, instance: Instance) -> tuple[Declared | None, Findings]:
    """Return the piece inside an instance whose box is known; the copies of one line are alike.

    Findings: those of `piece.inside.declare_inside`.
    """
    seat = site.seats(instance.part)[0]
    sizes = [site.positions.extent(seat.name, axis) for axis in range(3)]
    settings = {name: site.amount(amount) for name, amount in instance.settings}
    known = [size for size in sizes if size is not None]
    given = {name: value for name, value in settings.items() if value is not None}
    if len(known) < len(sizes) or len(given) < len(settings):
        return None, ()
    whole = (known[0], known[1], known[2])
    outer = site.part(instance.part).timber or site.declared.timber
    inside, findings = declare_inside(
        instance,
        whole,
        given,
        site.declared.display,
        timber=outer,
        stock=site.declared.stock,
    )
    timber = inside.timber or outer
    cut = inside.cut or site.part(instance.part).cut or site.declared.cut
    return replace(inside, timber=timber, cut=cut, air=site.declared.air), findings


def joined(site: Site, declared: Declared, insides: Sequence[Inside]) -> Site:
    """Return one site for the piece and all insides; `declared` is the piece with all its parts."""
    inner = {inside.instance.part: inside.site.declared for inside in insides}
    seats = {name: own for name, own in site.seating.seats.items() if name not in inner}
    whole = Site(
        merged(declared, inner),
        Seating(seats | _inner_seats(site, insides), (), ()),
        site.shop,
        positions=site.positions,
        pending=site.pending,
        assumptions=site.assumptions,
        findings=site.findings,
        phrases=site.phrases,
        gaps=site.gaps,
        boxes=_boxes(site, insides),
        moved=site.moved.union(*(_moved(inside) for inside in insides)),
    )
    for inside in insides:
        whole.assumptions += (_said_inside(inside, each) for each in inside.site.listed())
        boxes = site.seats(inside.instance.part)
        for seat in boxes:
            _set_in(whole, inside, seat)
        _name_openings(whole, inside, boxes[0])
    return whole


def _moved(inside: Inside) -> set[str]:
    return {inner_name(inside.instance.part, name) for name in inside.site.moved}


def _boxes(site: Site, insides: Sequence[Inside]) -> dict[str, str]:
    boxes = dict(site.boxes)
    for inside in insides:
        part, (first, *_) = inside.instance.part, site.seats(inside.instance.part)
        boxes[part] = first.name
        for inner, box in inside.site.boxes.items():
            boxes[inner_name(part, inner)] = inner_name(first.name, box)
    return boxes


def _inner_seats(site: Site, insides: Sequence[Inside]) -> dict[str, tuple[Seat, ...]]:
    return {
        inner_name(inside.instance.part, part): tuple(
            replace(
                seat,
                part=inner_name(inside.instance.part, part),
                name=inner_name(box.name, seat.name),
                within=box.name if seat.within is None else inner_name(box.name, seat.within),
            )
            for box in site.seats(inside.instance.part)
            for seat in seats
        )
        for inside in insides
        for part, seats in inside.site.seating.seats.items()
    }


def _set_in(whole: Site, inside: Inside, box: Seat) -> None:
    """Add the facts of an inside, its overall box being that of one copy of the instance."""
    for fact in inside.site.positions.facts():
        reason = _reason(fact.reason, inside.instance.part)
        start, end = (_face(face, box.name) for face in (fact.start, fact.end))
        whole.positions.add(start, end, fact.distance, reason)


def _name_openings(whole: Site, inside: Inside, box: Seat) -> None:
    """Let the openings of an inside be known by its part: of equal boxes, the first one's."""
    part = inside.instance.part
    for opening in inside.site.declared.openings if box.name != part else ():
        own, of_part = inner_name(box.name, opening.name), inner_name(part, opening.name)
        reason = Reason("alike", of_part, f"all copies of {part} are alike")
        for axis in range(3):
            for one, other in zip(both(own, axis), both(of_part, axis), strict=True):
                whole.positions.add(one, other, Fraction(0), reason)


def _face(face: Face, box: str) -> Face:
    return replace(face, owner=box if face.owner == WHOLE else inner_name(box, face.owner))


def _reason(reason: Reason, instance: str) -> Reason:
    overall = reason.label.removeprefix(f"{WHOLE} ")
    return replace(
        reason,
        label=f"{overall} of {instance}" if reason.rule == WHOLE else reason.label,
        figures=tuple(_figure(name, instance) for name in reason.figures),
        guest=reason.guest and inner_name(instance, reason.guest),
    )


def _figure(name: str, instance: str) -> str:
    owner, dot, dimension = name.rpartition(".")
    return f"{instance if owner == WHOLE else inner_name(instance, owner)}{dot}{dimension}"


def _said_inside(inside: Inside, assumption: Assumption) -> Assumption:
    # What would be written instead stands in the pattern, not in the notes.
    return replace(assumption, text=f"{inside.instance.part}: {assumption.text}", instead=None)
