"""The play of what stands in an opening: how much its line says, and on which sides."""

from __future__ import annotations

from fractions import Fraction

from dryfit.piece.declared import PLACE_SIDE, Amount, DeclaredPart
from dryfit.placing.directions import bounded_axis
from dryfit.placing.positions import Face, Reason
from dryfit.placing.seats import Seat
from dryfit.placing.site import SIDE_WORDS, Site

ZERO = Fraction(0)
BOTH = frozenset((-1, 1))


def is_sized(part: DeclaredPart, axis: int) -> bool:
    """Return whether the line of a part says its size along a piece axis."""
    return part.sizes[part.axes.index(axis)] is not None


def gap_at(part: DeclaredPart, axis: int, side: int, *, general: bool) -> Amount | None:
    """Return the gap that a line says for a side of an opening; side 0 asks for either.

    A gap without a direction counts only where `general` asks for it.
    """
    for gap in part.gaps:
        if gap.axis == axis and (not gap.side or not side or gap.side == side):
            return gap.amount
    if general:
        return next((gap.amount for gap in part.gaps if gap.axis is None), None)
    return None


def apart_in(part: DeclaredPart, axis: int) -> Amount | None:
    """Return how far copies in a row stand apart: as written, else as far as from the opening."""
    if part.apart is not None:
        return part.apart
    if part.spread is not None and part.spread.gap is not None:
        return part.spread.gap
    return gap_at(part, axis, 0, general=True)


def sides_said(site: Site, part: DeclaredPart, seat: Seat, axis: int) -> frozenset[int]:
    """Return the sides of a copy on an axis that its line puts otherwise than by its opening."""
    said = {side for at, side, _ in part.froms if at == axis}
    said |= {each.side for each in part.lists if each.axis == axis}
    said |= {-each.side if each.beyond else each.side for each in part.offsets if each.axis == axis}
    said |= {side for at, side in (PLACE_SIDE[each.place] for each in part.flush) if at == axis}
    own = seat.side(axis)
    for at, side, _ in part.insets:
        if at == axis:
            said |= {side or own} if side or own else BOTH
    if any(at == axis or (at is None and axis < 2) for at, _ in part.set_in):
        said |= {own} if own else BOTH
    if part.set_back is not None and axis == 1:
        said.add(-1)
    joined = site.contacts(part.name, "into", "between")
    if any(bounded_axis(site, part, contact) == axis for contact in joined):
        return BOTH
    return frozenset(said)


def state_gap(
    site: Site,
    part: DeclaredPart,
    pair: tuple[Face, Face],
    gap: Amount | None,
    *,
    between: bool = False,
) -> None:
    """Tell that the second face lies a gap beyond the first; without one they touch.

    `between` two copies; else one of the faces is the opening's.
    """
    first, second = pair
    said = site.shown(ZERO) if gap is None else site.said(gap, fitted=True)
    if between:
        words = f"{second.owner} stands {said} from {first.owner}"
    else:
        opening, own = (first, second) if first.side == second.side == -1 else (second, first)
        word = SIDE_WORDS[opening.axis, opening.side]
        words = f"{own.owner} stands {said} from the {word} of {opening.owner}"
    reason = Reason(
        "gap",
        f"gap between {part.written}" if between else f"gap of {part.name}",
        words,
        part.span if gap is None else gap.span,
        figures=() if gap is None else gap.behind.figures,
        also=() if gap is None else gap.behind.spans,
        assumed=gap is None,
    )
    site.state(first, second, ZERO if gap is None else gap, reason)
