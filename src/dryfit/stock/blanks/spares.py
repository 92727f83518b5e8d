"""Blanks that become no part: spares, and test pieces for settings and joints (TRADE A3.4, H55)."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction

from dryfit.placing.model import Model, Part
from dryfit.shop.shop import Shop
from dryfit.stock.blanks.blank import Blank, made_of

WIDEST_TEST = Fraction(100)
"""No joint is tried on a wider strip than this, mm (common practice)."""


def with_spoiled(model: Model) -> Iterator[Part]:
    """Yield the parts, each with one spare more for each copy that was spoiled."""
    for part in model.parts:
        count = sum(each.count for each in model.spoiled if each.part == part.name)
        yield replace(part, spare=part.spare + count) if count else part


def asked_for(blank: Blank, shop: Shop) -> tuple[Blank, ...]:
    """Return the spares of a part.

    Of a glued panel it is one more stave, of a gang a blank of one piece, of leaves a strip.
    """
    if not blank.part.spare:
        return ()
    leaves = blank.leaves
    spare = _spare(blank, -(-blank.part.spare // leaves), shop)
    return (replace(spare, each=leaves, leaves=leaves),)


def if_there_is_room(blanks: Sequence[Blank], shop: Shop) -> tuple[Blank, ...]:
    """Return a test piece of each thickness on which joints are tried, and one spare, if any.

    `blanks` are those of the parts.  The spare is of the part with the most cuts, unless the notes
    ask for one: made later it would have another thickness.
    """
    cut = [each for each in blanks if _is_cut(each) and each.first == 1]
    tests = tuple(_tests(cut, shop))
    if not cut:
        return tests
    hardest = max(cut, key=lambda each: len(each.part.features))
    if any(each.part.name == hardest.part.name for each in blanks if each.what == "spare"):
        return tests
    return (*tests, replace(_spare(hardest, 1, shop), if_room=True))


def _is_cut(blank: Blank) -> bool:
    # What is resawn would be planed out of a thick board alone.
    solid = not (blank.sheet or blank.staves or blank.leaves > 1)
    return blank.what == "part" and solid and bool(blank.part.features)


def _tests(cut: Sequence[Blank], shop: Shop) -> Iterator[Blank]:
    """Yield one for each wood and thickness, as wide as the part that has the most cuts."""
    kinds = dict.fromkeys((each.part.timber, each.to_thickness) for each in cut)
    for timber, thick in kinds:
        own = [each for each in cut if (each.part.timber, each.to_thickness) == (timber, thick)]
        like = max(own, key=lambda each: len(each.part.features))
        yield _test_piece(like, shop)


def _test_piece(like: Blank, shop: Shop) -> Blank:
    wide = min(like.to_width, WIDEST_TEST)
    long = replace(like.part, length=shop.allowances["test_piece"], horns=Fraction(0), sloped=None)
    return replace(
        made_of(_spare(like, 1, shop), long, 1, shop),
        what="test piece",
        if_room=True,
        between_strips=False,
        width=wide + like.width - like.to_width,
        to_width=wide,
        sawn_width=wide + like.sawn_width - like.to_width,
    )


def _spare(blank: Blank, count: int, shop: Shop) -> Blank:
    blank = made_of(blank, blank.part, 1, shop) if not blank.sheet else blank
    return replace(
        blank, what="spare", pieces=(), count=count, first=1, group="", rule="", leaves=1
    )
