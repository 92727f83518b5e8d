"""Which way to make the parts: of several, the first that the wood on hand is enough for.

Where it is enough for none, the one that the least has to be bought for.  Each wood is looked at by
itself, and takes the way that suits it.  A way is looked at in passing first; where none suffices,
they are mixed.  Thick boards are spared where thinner ones do.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from functools import partial

from dryfit.piece.declared import Have
from dryfit.shop.shop import Shop
from dryfit.stock.blanks.blank import Blank
from dryfit.stock.blanks.needs import Needs
from dryfit.stock.blanks.spares import if_there_is_room
from dryfit.stock.boards import serves
from dryfit.stock.laid_out import StockBoard, Verdict
from dryfit.stock.laying.at_least import at_least
from dryfit.stock.laying.outcome import Outcome, all_of, laid_out
from dryfit.stock.laying.sufficing import Ways, of_the_first_boards, sufficing
from dryfit.stock.laying.too_few import Taken, There, too_few
from dryfit.stock.laying.ways import Option, Wood, options, woods


@dataclass(frozen=True, slots=True)
class Chosen:
    """Ways laid out on the wood `on_hand`, and with what is `bought` where that is not enough.

    `verdict` is of the wood on hand, whichever way the parts are made.  `unlisted` are the blanks
    of a wood that no line tells of.  `proved` is the least that any way takes of the woods of which
    there is surely not enough, laid out.  `work` counts the steps of all searches.
    """

    needs: Needs
    verdict: Verdict
    on_hand: Outcome
    bought: Outcome | None
    unlisted: tuple[Blank, ...]
    proved: Outcome
    work: int


def chosen(
    ways: Sequence[Needs],
    boards: Sequence[StockBoard],
    yard: Sequence[Have],
    shop: Shop,
    effort: int,
    ways_of: Callable[[Sequence[StockBoard]], Sequence[Needs]],
) -> Chosen:
    """Return the ways to take, wood by wood; `ways_of` are those for other boards on hand."""
    lines = [*(board.line for board in boards), *yard]
    taken: list[Taken] = []
    unlisted: list[Blank] = []
    for wood in woods(ways[0], lines):
        each = options(wood, ways, lines)
        asked = [blank for option in each for blank in option.blanks]
        if not any(serves(line, blank.part) for line in lines for blank in asked):
            unlisted += each[0].blanks
            continue
        there = _serving(boards, asked)
        sold = [line for line in yard if any(serves(line, blank.part) for blank in asked)]
        others = [board for board in boards if board not in there]
        of = partial(_of_fewer, wood, others, lines, ways_of)
        taken.append(_taken(of, each, There(there, sold, shop), effort))
    outcomes = [one.on_hand for one in taken]
    more = [one.bought or one.on_hand for one in taken]
    verdicts = {one.verdict for one in taken}
    order: tuple[Verdict, ...] = ("not enough", "not found", "enough")
    return Chosen(
        _needs(ways[0], taken, shop),
        next((verdict for verdict in order if verdict in verdicts), "enough"),
        all_of(outcomes),
        all_of(more) if any(one.bought for one in taken) else None,
        tuple(unlisted),
        all_of([one.proved for one in taken if one.proved is not None]),
        sum(one.work for one in taken),
    )


def suffices(usual: Needs, boards: Sequence[StockBoard], yard: Sequence[Have], shop: Shop) -> bool:
    """Return whether at a glance the wood on hand is enough for the usual way to make the parts.

    Then `chosen` takes it, whatever other ways there are, and they need not be worked out.
    """
    lines = [*(board.line for board in boards), *yard]
    return all(
        laid_out(option.blanks, there, shop, 0, sparing=True).verdict == "enough"
        for wood in woods(usual, lines)
        for option in options(wood, (usual,), lines)
        if any(serves(line, blank.part) for line in lines for blank in option.blanks)
        for there in [_serving(boards, option.blanks)]
    )


def _of_fewer(
    wood: Wood,
    others: Sequence[StockBoard],
    lines: Sequence[Have],
    ways_of: Callable[[Sequence[StockBoard]], Sequence[Needs]],
    boards: Sequence[StockBoard],
) -> list[Option]:
    """Return the ways to make the parts of a wood out of fewer boards."""
    return options(wood, ways_of([*boards, *others]), lines)


def _serving(boards: Sequence[StockBoard], blanks: Sequence[Blank]) -> list[StockBoard]:
    """Return the boards of which a blank may be made."""
    return [board for board in boards if any(serves(board.line, one.part) for one in blanks)]


def _taken(of: Ways, ways: Sequence[Option], there: There, effort: int) -> Taken:
    """Return how the parts of one wood are made; where nothing suffices, with what is bought."""
    near = sufficing(ways, there, effort)
    if isinstance(near, Taken):
        return near
    least = at_least([way.blanks for way in ways], there.boards, there.shop, effort)
    if least.verdict != "not enough":
        found = of_the_first_boards(of, there, effort)
        if found is not None:
            return found
    return too_few(ways, near, least, there, effort)


def _needs(usual: Needs, taken: Sequence[Taken], shop: Shop) -> Needs:
    """Return all that is laid out, in the order of the notes, as one way to make the parts."""
    others = {made.name: made.part for one in taken for made in one.way.made}
    parts = tuple(others.get(part.name) or part for part in usual.model.parts)
    order: dict[str, int] = {}
    for place, blank in enumerate(usual.blanks):
        order.setdefault(blank.part.name, place)
    blanks = [blank for one in taken for blank in one.way.blanks]
    blanks.sort(key=lambda blank: order[blank.part.name])
    whys = dict.fromkeys(one.way.why for one in taken if one.way.why)
    return Needs(
        replace(usual.model, parts=parts),
        (*blanks, *if_there_is_room(blanks, shop)),
        "; ".join(whys),
    )
