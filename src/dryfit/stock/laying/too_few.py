"""Where no way of making the parts suffices: the one for which the least has to be bought."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from dryfit.piece.declared import Have
from dryfit.shop.shop import Shop
from dryfit.stock.laid_out import StockBoard, Verdict
from dryfit.stock.laying.buying import bought, offered
from dryfit.stock.laying.mixing import Mixture, mixture_of
from dryfit.stock.laying.most_held import most_held
from dryfit.stock.laying.outcome import Outcome, laid_out
from dryfit.stock.laying.ways import Option

NEAR = 1
"""So many ways beside the usual one are searched with all effort where none suffices at once."""


@dataclass(frozen=True, slots=True)
class There:
    """The wood on hand, and what the yard sells."""

    boards: Sequence[StockBoard]
    yard: Sequence[Have]
    shop: Shop


@dataclass(frozen=True, slots=True)
class Taken:
    """The way that was taken for one wood, laid out on hand and with what is bought."""

    way: Option
    verdict: Verdict
    on_hand: Outcome
    bought: Outcome | None
    work: int
    proved: Outcome | None = None


def too_few(
    ways: Sequence[Option], mixture: Mixture | None, least: Outcome, there: There, effort: int
) -> Taken:
    """Return the way for which the least is bought, or one that suffices after a long search.

    `least` is what was laid out of the least that any way takes, and maybe proved to be too much.
    """
    each = (*ways, *([] if mixture is None else [mixture.way]))
    proved = least if least.verdict == "not enough" else None
    work, surely = least.work, True
    tried = [laid_out(way.blanks, there.boards, there.shop, 0) for way in each]
    others = sorted(range(1, len(each)), key=lambda number: (tried[number].lost, number))
    for place, number in enumerate([0, *others]):
        if place > NEAR and (proved is not None or not surely):
            break
        if tried[number].verdict == "not enough":
            continue
        outcome = laid_out(each[number].blanks, there.boards, there.shop, effort, prove=False)
        work += outcome.work
        tried[number] = outcome
        if outcome.verdict == "enough":
            return Taken(each[number], "enough", outcome, None, work)
        surely = surely and outcome.verdict == "not enough"
    near = [_with_bought(each[at], tried[at], there, effort) for at in [0, *others[:NEAR]]]
    near += _cheapest_mixture(ways, min(near, key=_price), there, effort)
    # "Not enough" is said where it is proved of the least that any way to make the parts takes.
    return replace(
        min(near, key=_price),
        verdict="not found" if proved is None else "not enough",
        work=work + sum(one.work for one in near),
        proved=proved,
    )


def _cheapest_mixture(
    ways: Sequence[Option], best: Taken, there: There, effort: int
) -> list[Taken]:
    """Return the mixture of ways for which the least is bought, where that is another one."""
    kept = [way for way in ways if not way.gives_up]
    boards = [*there.boards, *offered(best.on_hand, there.yard, there.shop)]
    found = mixture_of(kept, boards, there.shop, effort, cheapest=True)
    if found is None or found.way.blanks == best.way.blanks:
        return []
    outcome = laid_out(found.way.blanks, there.boards, there.shop, effort, prove=False)
    return [_with_bought(found.way, outcome, there, effort)]


def _with_bought(way: Option, outcome: Outcome, there: There, effort: int) -> Taken:
    held = most_held(outcome)
    buys = bought(outcome, held, there.yard, there.shop, effort)
    return Taken(way, "not found", held, buys, buys.work)


def _price(one: Taken) -> tuple[int, ...]:
    """Return what is laid out nowhere, what is paid for the rest, and how unusual the way is."""
    assert one.bought is not None
    return one.bought.lost, *one.bought.cost, one.way.unusual
