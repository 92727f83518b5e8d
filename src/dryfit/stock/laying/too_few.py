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
"""So many ways beside the usual one are looked at."""


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
    """Return the way for which the least is bought.

    `least` is what was laid out of the least that any way takes, and maybe proved to be too much.
    """
    each, tried = [*ways], [laid_out(way.blanks, there.boards, there.shop, 0) for way in ways]
    if mixture is not None:
        each.append(mixture.way)
        tried.append(_laid_out_as_known(mixture, there))
    others = sorted(range(1, len(each)), key=lambda number: (tried[number].lost, number))
    near = [_with_bought(each[at], tried[at], there, effort) for at in [0, *others[:NEAR]]]
    near += _cheapest_mixture(ways, min(near, key=_price), there, effort)
    # "Not enough" is said where it is proved of the least that any way to make the parts takes.
    proved = least.verdict == "not enough"
    return replace(
        min(near, key=_price),
        verdict="not enough" if proved else "not found",
        work=least.work + sum(one.work for one in near),
        proved=least if proved else None,
    )


def _laid_out_as_known(mixture: Mixture, there: There) -> Outcome:
    blanks = mixture.way.blanks
    return laid_out(blanks, there.boards, there.shop, 0, known=mixture.known)


def _cheapest_mixture(
    ways: Sequence[Option], best: Taken, there: There, effort: int
) -> list[Taken]:
    """Return the mixture of ways for which the least is bought, where that is another one."""
    kept = [way for way in ways if not way.gives_up]
    boards = [*there.boards, *offered(best.on_hand, there.yard, there.shop)]
    found = mixture_of(kept, boards, there.shop, effort, cheapest=True)
    if found is None or found.way.blanks == best.way.blanks:
        return []
    outcome = laid_out(found.way.blanks, there.boards, there.shop, 0)
    return [_with_bought(found.way, outcome, there, effort)]


def _with_bought(way: Option, outcome: Outcome, there: There, effort: int) -> Taken:
    held = most_held(outcome)
    buys = bought(outcome, held, there.yard, there.shop, effort)
    return Taken(way, "not found", held, buys, buys.work)


def _price(one: Taken) -> tuple[int, ...]:
    """Return what is laid out nowhere, what is paid for the rest, and how unusual the way is."""
    assert one.bought is not None
    return one.bought.lost, *one.bought.cost, one.way.unusual
