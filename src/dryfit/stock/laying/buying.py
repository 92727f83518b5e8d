"""What has to be bought where the wood on hand is not enough: by price, then by count.

Blanks that came out of the boards on hand are left there, with all that shares boards with none of
what is missing; the others are laid out anew on their boards and on those of the yard. The layout
library takes a board that costs something only where nothing else does.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction

from dryfit.piece.declared import Have
from dryfit.quantities.units import INCH
from dryfit.shop.shop import Shop
from dryfit.stock.blanks.blank import Blank
from dryfit.stock.blanks.rough_sizes import rough_sizes
from dryfit.stock.laid_out import StockBoard
from dryfit.stock.laying.job import key
from dryfit.stock.laying.on_hand_first import on_hand_first
from dryfit.stock.laying.outcome import Outcome, all_of, laid_out
from dryfit.stock.saws import ROUGH_EDGE

STEPS_MM = (Fraction(50), Fraction(5), Fraction(1))
STEPS_IN = (INCH, INCH / 2, INCH / 8)
"""Length, width and thickness of a board that no line tells of are whole steps."""
THICKER = 60
"""So many steps of thickness at most are tried."""
MOST = 40
"""So many boards of one line at most are looked at; more are never bought for a piece."""


def bought(
    outcome: Outcome, held: Outcome, yard: Sequence[Have], shop: Shop, effort: int
) -> Outcome:
    """Return the blanks laid out with what the yard sells.

    The boards on hand are cut as they `held` the most without it, or as in `outcome`, where what is
    bought at the least price serves the rest.

    Where no line says that, it is more boards like those on hand, and boards as large as it takes
    for what comes out of none of them.
    """
    kept = [(split, answer) for split, answer in outcome.pairs if answer.verdict == "enough"]
    short = [split for split, answer in outcome.pairs if answer.verdict != "enough"]
    blanks = [*outcome.none, *(blank for split in short for blank in split.blanks)]
    on_hand = [board for split in short for _, alike in split.boards for board in alike]
    boards = [*on_hand, *offered(outcome, yard, shop)]
    least = laid_out(blanks, boards, shop, effort, prove=False)
    new = on_hand_first(least, held, effort, of_any=not yard)
    if new == least:
        new = on_hand_first(least, outcome, effort)
    enough = Outcome(tuple(one for one, _ in kept), tuple(one for _, one in kept), ())
    return all_of((enough, new))


def offered(outcome: Outcome, yard: Sequence[Have], shop: Shop) -> list[StockBoard]:
    """Return boards that may be bought for what the outcome lacks, as many of each as serve."""
    short = [split for split, answer in outcome.pairs if answer.verdict != "enough"]
    blanks = [*outcome.none, *(blank for split in short for blank in split.blanks)]
    count = min(MOST, sum(blank.count for blank in blanks))
    return [
        StockBoard(f"{number} {copy}", line, on_hand=False)
        for number, line in enumerate(yard or tuple(_that_would_do(outcome, shop)))
        for copy in range(count if line.at_most is None else min(count, line.at_most))
    ]


def _that_would_do(outcome: Outcome, shop: Shop) -> Iterator[Have]:
    """Yield boards that would do, where nobody said what the yard sells."""
    alone = list(outcome.none)
    for split, answer in outcome.pairs:
        if answer.verdict == "enough":
            continue
        names = {name for proof in answer.proofs if proof.bound == "part" for name in proof.parts}
        hopeless = [blank for blank in split.blanks if key(blank) in names]
        alone += hopeless
        if len(hopeless) == len(split.blanks):
            continue
        lines = [alike[0].line for _, alike in split.boards]
        yield from [line for line in lines if line.kind != "offcut" and not line.avoid] or lines
    kinds: dict[tuple[str | None, bool, Fraction], list[Blank]] = {}
    for blank in alone:
        kinds.setdefault((blank.part.timber, blank.sheet, blank.thickness), []).append(blank)
    for group in kinds.values():
        board = large_enough(group, shop)
        if board is not None:
            yield board


def large_enough(group: Sequence[Blank], shop: Shop) -> Have | None:
    """Return a board, in round sizes, that any of these blanks comes out of, or None.

    It is rough, but where they all come out of planed wood.
    """
    found = _least(group, shop, rough=True) or _least(group, shop, rough=False)
    as_usual = [replace(blank, state="trued") for blank in group]
    return found or _least(as_usual, shop, rough=True)


def _least(group: Sequence[Blank], shop: Shop, *, rough: bool) -> Have | None:
    """Return the least board, rough or planed; None where one of the blanks comes out of none."""
    one, sheet = group[0], group[0].sheet
    waney, span = max(len(blank.part.waney) for blank in group), one.part.spans[0]
    kind = "sheet" if sheet else "slab" if waney else "board"
    rough = rough and not sheet
    thick = one.thickness if rough or sheet else one.to_thickness
    long, wide = Fraction(1), Fraction(1)
    steps = STEPS_MM if one.step.denominator == 1 else STEPS_IN
    ends, edge = (Fraction(0),) * 2 if sheet else (2 * shop.allowances["end_trim"], ROUGH_EDGE)
    for blank in group:
        for _ in range(THICKER):
            # Rough sizes hang on the state of the board, and not on how large it is.
            sizes = (long, wide, thick)
            line = Have(1, kind, one.part.timber, sizes, rough, "", span, waney=waney)
            sawn = rough_sizes(blank, line, shop)
            if sawn is not None:
                long, wide = max(long, sawn.length + ends), max(wide, sawn.width + edge)
                break
            thick += steps[2]
        else:
            return None
    sizes = (long, wide, thick)
    if not sheet:
        long, wide, thick = (
            step * -(-size // step) for size, step in zip(sizes, steps, strict=True)
        )
    return Have(1, kind, one.part.timber, (long, wide, thick), rough, "", span, waney=waney)
