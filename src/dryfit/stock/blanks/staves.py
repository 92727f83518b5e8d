"""Other staves for glued panels: more of them, or each as wide as its board gives (TRADE A9.1).

Every stave loses what ripping and jointing take, so that few wide ones cost less wood than many;
and a stave as wide as its board leaves no strip beside it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from dryfit.joinery.staves import Staves
from dryfit.piece.declared import Have
from dryfit.placing.model import Part
from dryfit.quantities.units import INCH
from dryfit.shop.shop import Shop
from dryfit.stock.blanks.blank import Blank
from dryfit.stock.blanks.rough_sizes import rough_sizes
from dryfit.stock.board_edges import rough_edge, usable_face
from dryfit.stock.boards import UNKNOWN, rip_room, sizes
from dryfit.stock.saws import ROUGH_EDGE, crosscut_at_boards, rip_at_boards

MORE = 3
"""So many staves more than the fewest are offered (our own trials of layouts)."""
USELESS = Fraction(40)
"""A strip that is left of a board counts as lost where it is narrower, mm (ours)."""
_MOST_SECTIONS = 12
"""So many lengths of one line of boards are looked at for one panel (ours)."""


def more_of(part: Part, more: int, shop: Shop) -> Staves | None:
    """Return equal staves, so many more; None where the notes fix the number, or too narrow."""
    staves = part.staves
    if staves is None or staves.fixed:
        return None
    step = 2 if part.bookmatched else 1
    count = staves.count + more * step
    width = staves.total / count
    return None if width < shop.allowances["narrowest_stave"] else Staves(count, width, fixed=False)


@dataclass(frozen=True, slots=True)
class _Section:
    """A length of a board from which `count` equal staves are ripped, `width` wide when jointed.

    `cost` is how much of the board's width that takes, with what is too narrow to be of use.
    """

    count: int
    width: Fraction
    cost: Fraction

    @property
    def gives(self) -> Fraction:
        return self.count * self.width


@dataclass(frozen=True, slots=True)
class _Group:
    """Lengths of a line's boards that are alike: what one of them may give, and how many."""

    sections: tuple[_Section, ...]
    number: int
    length: Fraction


def as_boards_give(
    blank: Blank, lines: Sequence[Have], unit: str, shop: Shop, more: int | None = None
) -> Staves | None:
    """Return the staves of a panel, each as wide as its board gives within the shop's limits.

    `blank` are the panel's equal staves.  Together they are as wide as those.  Of all choices of
    lengths of boards the one that takes the least of their faces; None where the boards do not
    give the width, or give nothing better than equal staves.  With `more` they are so many more
    than the equal ones.
    """
    part = blank.part
    assert part.staves is not None
    if part.bookmatched:
        return None
    low, high = _limits(part, part.staves, shop)
    groups = [group for line in lines for group in _sections(blank, line, (low, high), unit, shop)]
    fixed = part.staves.count if part.staves.fixed else None
    if more is not None and fixed is None:
        fixed = part.staves.count + more
    chosen = _cheapest(groups, part.staves.total, low, fixed)
    if chosen is None:
        return None
    widths = _closed(chosen, part.staves.total, low)
    if len(set(widths)) == 1 and len(widths) == part.staves.count:
        return None
    alike = len(set(widths)) == 1
    return replace(part.staves, count=len(widths), width=widths[0], widths=() if alike else widths)


def _limits(part: Part, staves: Staves, shop: Shop) -> tuple[Fraction, Fraction]:
    """Return how narrow and how wide a stave may be; the maker's own number goes before both."""
    low, high = shop.allowances["narrowest_stave"], shop.allowances["widest_stave"]
    if part.free_widths:
        high = UNKNOWN
    return min(low, staves.width), max(high, staves.width)


def _sections(
    blank: Blank, line: Have, limits: tuple[Fraction, Fraction], unit: str, shop: Shop
) -> Iterator[_Group]:
    """Yield what one length of a board of the line may give, nothing where it gives no stave."""
    low, high = limits
    rough = rough_sizes(blank, line, shop)
    long, wide, _ = sizes(line)
    if rough is None or UNKNOWN in (long, wide):
        return
    kerf, room = rip_at_boards(shop), rip_room(line, shop)
    # Of a slab what it has at its narrow end, between both edges where both are under bark.
    narrow = min(line.sizes[1] or wide, line.other_width or wide)
    usable = narrow - rough_edge(line) - (ROUGH_EDGE if line.waney > 1 else 0)
    across = crosscut_at_boards(shop)
    lengths = (usable_face(line, shop)[0] + across) // (rough.length + across)
    panels = len(blank.part.copies)
    number = min(lengths * line.count // panels, _MOST_SECTIONS)
    sections = []
    for count in range(1, int(usable // (low + room)) + 1):
        width = _whole((usable - (count - 1) * kerf) / count - room, unit)
        width = min(width, high)
        if width < low or rough_sizes(_wide(blank, width), line, shop) is None:
            continue
        taken = count * (width + room) + (count - 1) * kerf
        rest = usable - taken - kerf
        sections.append(_Section(count, width, usable if rest < USELESS else taken + kerf))
    if number > 0 and sections:
        yield _Group(tuple(sections), number, rough.length)


def _wide(blank: Blank, width: Fraction) -> Blank:
    return replace(blank, to_width=width)


def _whole(width: Fraction, unit: str) -> Fraction:
    step = INCH / 16 if unit == "in" else Fraction(1)
    return width // step * step


def _cheapest(
    groups: Sequence[_Group],
    total: Fraction,
    low: Fraction,
    fixed: int | None,
) -> tuple[_Section, ...] | None:
    """Return the sections that give the width for the least face of boards (dynamic programming).

    Of what gives the same width by as many staves only the cheapest is followed; with a fixed
    number of staves only that number counts.
    """
    found: dict[tuple[Fraction, int], tuple[Fraction, tuple[_Section, ...]]] = {
        (Fraction(0), 0): (Fraction(0), ())
    }
    for group in groups:
        for _ in range(group.number):
            further = dict(found)
            for (gives, staves), (cost, chosen) in found.items():
                if gives >= total:
                    continue
                for section in group.sections:
                    key = (gives + section.gives, staves + section.count)
                    if fixed is not None and key[1] > fixed:
                        continue
                    price = cost + section.cost * group.length
                    known = further.get(key)
                    if known is None or price < known[0]:
                        further[key] = (price, (*chosen, section))
            if len(further) == len(found) and further == found:
                break
            found = further
    shortest = min((group.length for group in groups), default=Fraction(0))
    enough = [
        (cost - _strip(gives - total, _widest(chosen), low) * shortest, staves, chosen)
        for (gives, staves), (cost, chosen) in found.items()
        if gives >= total and (fixed is None or staves == fixed)
    ]
    return min(enough, key=lambda each: each[:2])[2] if enough else None


def _widest(chosen: Sequence[_Section]) -> Fraction:
    return max(each.width for each in chosen)


def _strip(over: Fraction, widest: Fraction, low: Fraction) -> Fraction:
    """Return how wide a strip is left where one stave takes up all that is too much.

    Nothing where the strip is of no use, or the stave would be too narrow.
    """
    return over if over >= USELESS and widest - over >= low else Fraction(0)


def _closed(chosen: Sequence[_Section], total: Fraction, low: Fraction) -> tuple[Fraction, ...]:
    """Return the widths, made so much narrower that together they are the panel.

    One alone where that leaves a strip of use; else the widest alike, or all, for fewer settings.
    """
    widths = sorted((each.width for each in chosen for _ in range(each.count)), reverse=True)
    over = sum(widths, Fraction(0)) - total
    widest = 1 if _strip(over, widths[0], low) else widths.count(widths[0])
    narrower = widths[0] - over / widest
    if narrower < low:
        widest, narrower = len(widths), total / len(widths)
    return tuple(sorted((*(narrower,) * widest, *widths[widest:]), reverse=True))
