"""Which way to make the parts: of several, the first that the wood on hand is enough for.

Where it is enough for none, the one that the least has to be bought for.  Each wood is looked at by
itself, and takes the way that suits it.  A way is looked at in passing first; only the usual one
and what comes near are searched with all effort.  Thick boards are spared where thinner ones do.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import product

from dryfit.piece.declared import Have
from dryfit.shop.shop import Shop
from dryfit.stock.blanks.blank import Blank
from dryfit.stock.blanks.needs import Needs
from dryfit.stock.boards import serves
from dryfit.stock.laid_out import StockBoard, Verdict
from dryfit.stock.laying.at_least import at_least
from dryfit.stock.laying.buying import bought
from dryfit.stock.laying.most_held import most_held
from dryfit.stock.laying.outcome import Outcome, all_of, laid_out

NEAR = 1
"""So many ways beside the usual one are searched with all effort where none suffices at once."""

Wood = tuple[str | None, bool]
"""The timber, None where a board or a part may be of any; whether it is sheet goods."""


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


@dataclass(frozen=True, slots=True)
class _Option:
    """How the parts of one wood are made, and the numbers of the ways that make them so."""

    blanks: tuple[Blank, ...]
    ways: frozenset[int]


@dataclass(frozen=True, slots=True)
class _Taken:
    option: _Option
    verdict: Verdict
    on_hand: Outcome
    bought: Outcome | None
    work: int
    proved: Outcome | None = None


def chosen(
    ways: Sequence[Needs],
    boards: Sequence[StockBoard],
    yard: Sequence[Have],
    shop: Shop,
    effort: int,
) -> Chosen:
    """Return the ways to take, wood by wood."""
    lines = [*(board.line for board in boards), *yard]
    taken: list[_Taken] = []
    unlisted: list[Blank] = []
    open_to = tuple(range(len(ways)))
    for wood in _woods(ways[0], lines):
        options = _options(wood, ways, open_to, lines)
        asked = [blank for option in options for blank in option.blanks]
        if not any(serves(line, blank.part) for line in lines for blank in asked):
            unlisted += options[0].blanks
            continue
        there = _serving(boards, asked)
        sold = [line for line in yard if any(serves(line, blank.part) for blank in asked)]
        one = _taken(options, there, sold, shop, effort)
        taken.append(one)
        # A panel glued from other staves makes another model: what comes after goes with it.
        models = [ways[number].model for number in one.option.ways]
        open_to = tuple(number for number in open_to if ways[number].model in models)
    outcomes = [one.on_hand for one in taken]
    more = [one.bought or one.on_hand for one in taken]
    verdicts = {one.verdict for one in taken}
    order: tuple[Verdict, ...] = ("not enough", "not found", "enough")
    return Chosen(
        _needs(ways, open_to, taken),
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
        for wood in _woods(usual, lines)
        for option in _options(wood, (usual,), (0,), lines)
        if any(serves(line, blank.part) for line in lines for blank in option.blanks)
        for there in [_serving(boards, option.blanks)]
    )


def _serving(boards: Sequence[StockBoard], blanks: Sequence[Blank]) -> list[StockBoard]:
    """Return the boards of which a blank may be made."""
    return [board for board in boards if any(serves(board.line, one.part) for one in blanks)]


def _woods(needs: Needs, lines: Sequence[Have]) -> list[Wood]:
    return list(dict.fromkeys(_wood(blank, lines) for blank in needs.blanks))


def _wood(blank: Blank, lines: Sequence[Have]) -> Wood:
    """Return the wood of a blank; where a line does not tell its own, all woods are one."""
    timber = None if any(line.timber is None for line in lines) else blank.part.timber
    return timber, blank.sheet


def _options(
    wood: Wood, ways: Sequence[Needs], open_to: Sequence[int], lines: Sequence[Have]
) -> list[_Option]:
    found: dict[tuple[Blank, ...], set[int]] = {}
    for number in open_to:
        blanks = tuple(
            blank
            for blank in ways[number].blanks
            if _wood(blank, lines) == wood and not blank.if_room
        )
        found.setdefault(blanks, set()).add(number)
    return [_Option(blanks, frozenset(numbers)) for blanks, numbers in found.items()]


def _taken(
    options: Sequence[_Option],
    boards: Sequence[StockBoard],
    yard: Sequence[Have],
    shop: Shop,
    effort: int,
) -> _Taken:
    work = 0
    tried: list[Outcome] = []
    for sparing, option in product((True, False), options):
        outcome = laid_out(option.blanks, boards, shop, 0, sparing=sparing)
        work += outcome.work
        if outcome.verdict == "enough":
            outcome = laid_out(option.blanks, boards, shop, effort, sparing=sparing)
            return _Taken(option, "enough", outcome, None, work + outcome.work)
        if not sparing:
            tried.append(outcome)
    least = at_least([option.blanks for option in options], boards, shop, effort)
    work += least.work
    proved = least if least.verdict == "not enough" else None
    others = sorted(range(1, len(options)), key=lambda number: (tried[number].lost, number))
    surely = True
    for place, number in enumerate([0, *others]):
        if place > NEAR and (proved is not None or not surely):
            break
        if tried[number].verdict == "not enough":
            continue
        outcome = laid_out(options[number].blanks, boards, shop, effort)
        work += outcome.work
        tried[number] = outcome
        if outcome.verdict == "enough":
            return _Taken(options[number], "enough", outcome, None, work)
        surely = surely and outcome.verdict == "not enough"
    near = [0, *others[:NEAR]]
    held = [most_held(tried[number]) for number in near]
    buys = [
        bought(tried[number], most, yard, shop, effort)
        for number, most in zip(near, held, strict=True)
    ]
    work += sum(outcome.work for outcome in buys)
    best = min(range(len(near)), key=lambda place: (buys[place].lost, buys[place].cost))
    option, on_hand = options[near[best]], held[best]
    # "Not enough" is said where it is proved of the least that any way to make the parts takes.
    verdict: Verdict = "not found" if proved is None else "not enough"
    return _Taken(option, verdict, on_hand, buys[best], work, proved)


def _needs(ways: Sequence[Needs], open_to: Sequence[int], taken: Sequence[_Taken]) -> Needs:
    """Return all that is laid out, in the order of the notes, as one way to make the parts."""
    model = ways[open_to[0]].model
    blanks = [blank for one in taken for blank in one.option.blanks]
    order: dict[str, int] = {}
    for place, blank in enumerate(ways[open_to[0]].blanks):
        order.setdefault(blank.part.name, place)
    blanks.sort(key=lambda blank: order[blank.part.name])
    spare = [blank for blank in ways[open_to[0]].blanks if blank.if_room]
    whys = [ways[min(one.option.ways)].why for one in taken]
    return Needs(model, (*blanks, *spare), "; ".join(dict.fromkeys(why for why in whys if why)))
