"""Hard facts: what the lines say outright, as distances between faces."""

from __future__ import annotations

from fractions import Fraction

from dryfit.piece.declared import PIECE_DIMENSIONS, PLACE_SIDE, Amount, DeclaredPart, FlushWith
from dryfit.placing.directions import edge_insets
from dryfit.placing.face_seats import ON_A_FACE
from dryfit.placing.from_words import from_clause, from_label
from dryfit.placing.positions import Face, Reason
from dryfit.placing.ripped_boards import is_ripped, ripped_of_what
from dryfit.placing.seats import Seat, compatible
from dryfit.placing.site import SIDE_WORDS, Site, both, dimension_on, whole

ZERO = Fraction(0)
_ADJECTIVES = {
    "length": "long",
    "width": "wide",
    "thickness": "thick",
    "depth": "deep",
    "height": "high",
}


def state_overall(site: Site) -> None:
    """Tell the overall size."""
    for axis, amount in enumerate(site.declared.overall):
        if amount is not None:
            reason = Reason(
                "overall",
                f"overall {PIECE_DIMENSIONS[axis]}",
                f"the piece is {site.shown(amount.value)} {('wide', 'deep', 'high')[axis]}",
                amount.span,
                figures=(f"overall.{PIECE_DIMENSIONS[axis]}",),
                also=amount.behind.spans,
            )
            site.positions.add(whole(axis, -1), whole(axis, 1), amount.value, reason)


def state_part(site: Site, part: DeclaredPart) -> None:
    """Tell sizes, set in, up, down, from and flush of every copy of a part.

    Findings: ripped-of-what.
    """
    ripped_of_what(site, part)
    for seat in site.seats(part.name):
        for axis, amount in zip(part.axes, part.sizes, strict=True):
            # Boards of which some are ripped have their widths from the row that they fill.
            if amount is not None and not is_ripped(site, part, axis):
                _state_size(site, seat, axis, dimension_on(part, axis), amount)
        for direction, amount in part.set_in:
            for axis in _set_in_axes(seat, direction):
                if edge_insets(part, axis) is None:
                    _state_set_in(site, seat, axis, amount)
        for axis, side, amount in part.froms:
            _state_from(site, seat, axis, side, amount)
        for flush in part.flush:
            _state_flush(site, part, seat, flush)


def _state_size(site: Site, seat: Seat, axis: int, dimension: str, amount: Amount) -> None:
    reason = Reason(
        "size",
        f"{dimension} of {seat.part}",
        f"{seat.part} is {site.said(amount)} {_ADJECTIVES[dimension]}",
        amount.span,
        figures=(f"{seat.part}.{dimension}",),
        also=amount.behind.spans,
    )
    site.state(*both(seat.name, axis), amount, reason)


def _set_in_axes(seat: Seat, direction: int | None) -> tuple[int, ...]:
    # "set in 15" without a direction is meant from the sides at which a copy stands.
    if direction is not None:
        return (direction,)
    return tuple(each for each in (0, 1) if seat.side(each)) or (0, 1)


def _state_set_in(site: Site, seat: Seat, axis: int, amount: Amount) -> None:
    side = seat.side(axis)
    for each in (side,) if side else (-1, 1):
        reason = Reason(
            "set in",
            f"set in of {seat.part}",
            f"{seat.name} is set in {site.said(amount)} from the {SIDE_WORDS[axis, each]}",
            amount.span,
            figures=amount.behind.figures,
            also=amount.behind.spans,
        )
        _inwards(site, seat, axis, each, amount, reason)


def _state_from(site: Site, seat: Seat, axis: int, side: int, amount: Amount) -> None:
    reason = Reason(
        "from",
        from_label(seat.part, axis, side),
        f"{seat.name}: {from_clause(site.said(amount), axis, side)}",
        amount.span,
        figures=amount.behind.figures,
        also=amount.behind.spans,
    )
    _inwards(site, seat, axis, side, amount, reason)


def _inwards(site: Site, seat: Seat, axis: int, side: int, amount: Amount, reason: Reason) -> None:
    outer, face = whole(axis, side), Face(seat.name, axis, side)
    site.state(outer, face, amount, reason, sign=-side)


def _state_flush(site: Site, part: DeclaredPart, seat: Seat, flush: FlushWith) -> None:
    axis, side = PLACE_SIDE[flush.place]
    mates = [mate for mate in _flush_mates(site, part, flush) if compatible(seat, mate, axis)]
    spaces = [host.part for host in flush.hosts if site.opening(host.part)]
    for owner, name in (
        *((mate.name, mate.part) for mate in mates),
        *((name, name) for name in spaces),
    ):
        reason = Reason(
            "flush",
            f"flush with {name}",
            f"{seat.name} is flush with the {flush.place} of {owner}",
            flush.span,
        )
        site.positions.add(Face(owner, axis, side), Face(seat.name, axis, side), ZERO, reason)
    if not mates and not spaces:
        reason = Reason(
            "flush",
            f"flush with the {flush.place}",
            f"{seat.name} is flush with the {flush.place} of the piece",
            flush.span,
        )
        site.positions.add(whole(axis, side), Face(seat.name, axis, side), ZERO, reason)


def _flush_mates(site: Site, part: DeclaredPart, flush: FlushWith) -> list[Seat]:
    # Without a name it is flush with what it joins, whichever of the two the sentence begins with.
    if flush.hosts:
        return [mate for host in flush.hosts for mate in site.named(host)]
    beside = ("into", "between", "crossing", "inside", *ON_A_FACE)
    own = [host for contact in site.contacts(part.name, *beside) for host in contact.hosts]
    others = [
        contact.guest
        for contact in site.declared.contacts
        if contact.preposition in beside and any(host.part == part.name for host in contact.hosts)
    ]
    return [mate for host in own or others for mate in site.named(host)]
