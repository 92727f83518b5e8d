"""What is said to be least is: small purchases worked by hand, and lots held against a search."""

from dataclasses import replace

import pytest
from tests.property.cutting_lots import lot, planted

from dryfit.cutting import Answer, Board, Job, Part, Rules, lay_out
from dryfit.cutting.instance import compiled
from dryfit.cutting.least import Least
from dryfit.cutting.search import Search

RULES = Rules(300, 300)
RAIL = Part("rail", 90_000, 9_000, 2_000)
HAND = Board("hand", 100_000, 10_000, 2_000, value=1_000)
SMALL = Board("small", 100_000, 10_000, 2_000, price=30, count=9)
LARGE = Board("large", 100_000, 20_000, 2_000, price=50, count=9)


def bought(rails: int, *boards: Board) -> tuple[int, dict[str, int], Answer]:
    answer = lay_out(Job((replace(RAIL, quantity=rails),), boards, RULES))
    counts: dict[str, int] = {}
    for layout in answer.layouts:
        counts[layout.board] = counts.get(layout.board, 0) + 1
    return answer.price, counts, answer


@pytest.mark.parametrize(
    ("rails", "price", "counts"),
    [
        (1, 0, {"hand": 1}),
        (2, 30, {"hand": 1, "small": 1}),
        # Two on a large board are cheaper than on two small ones.
        (3, 50, {"hand": 1, "large": 1}),
        (4, 80, {"hand": 1, "small": 1, "large": 1}),
        (5, 100, {"hand": 1, "large": 2}),
    ],
)
def test_what_is_bought_costs_least(rails: int, price: int, counts: dict[str, int]) -> None:
    paid, taken, answer = bought(rails, HAND, SMALL, LARGE)
    assert (paid, taken) == (price, counts)
    assert answer.least


def test_no_more_is_bought_than_there_is() -> None:
    paid, taken, answer = bought(4, HAND, SMALL, replace(LARGE, count=1, price=10))
    assert (paid, taken) == (40, {"hand": 1, "large": 1, "small": 1})
    assert answer.least
    assert bought(5, HAND, replace(SMALL, count=1), replace(LARGE, count=1))[2].verdict != "enough"


def test_price_goes_before_value() -> None:
    # The dear board on hand is taken before anything is bought, however cheap.
    paid, taken, _ = bought(1, replace(HAND, value=10**6), replace(SMALL, price=1))
    assert (paid, taken) == (0, {"hand": 1})


def test_a_dearer_layout_is_not_said_to_be_the_least() -> None:
    job = Job((RAIL,), (HAND, replace(HAND, id="dear", value=2_000), SMALL), RULES)
    least = Least(compiled(job), 10_000)
    assert least.proved([0])
    assert not least.proved([1])
    assert not least.proved([2])
    assert not Least(compiled(job), 0).proved([0])


@pytest.mark.parametrize("seed", range(12))
def test_no_other_search_finds_less_than_what_is_proved_least(seed: int) -> None:
    for job in (lot(seed), planted(seed)):
        answer = lay_out(job)
        if not answer.least:
            continue
        search = Search(compiled(job), seed=7)
        search.run(100)
        stocks = search.instance.stocks
        worths = {stock.board.id: stock.worth for stock in stocks}
        worth = sum(worths[layout.board] for layout in answer.layouts)
        assert search.best.lost > 0 or search.best.worth >= worth
