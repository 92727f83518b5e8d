"""What is carried to the place: each load with size, weight, hands, and how it gets in."""

from __future__ import annotations

from dataclasses import dataclass

from dryfit.booklet.bench import Bench
from dryfit.booklet.text import Text, capital
from dryfit.geometry.passing import diagonal
from dryfit.placing.hands import hands_needed
from dryfit.placing.loads import Load
from dryfit.placing.weights import weight_of
from dryfit.wood.weight import weight_words


@dataclass(frozen=True, slots=True)
class LoadRow:
    """One line of the table: what, how many, its sizes, and words for the rest.

    `ways` has an entry for each way in; `note` says what it takes to stand it up.
    """

    title: str
    count: int
    size: Text
    weight: str
    hands: int
    ways: tuple[str, ...]
    note: Text


def load_rows(loads: tuple[Load, ...], bench: Bench) -> tuple[LoadRow, ...]:
    """Return the loads as the booklet lists them."""
    return tuple(_row(load, bench) for load in loads)


def _row(load: Load, bench: Bench) -> LoadRow:
    weight = weight_of(bench.model, load.copies)
    unit = bench.model.display.unit
    known = weight.kilograms > 0
    shown = weight_words(weight.kilograms, unit) if known else "not known"
    more = " and more" if known and weight.unknown else ""
    return LoadRow(
        capital(load.title),
        load.count,
        bench.say.sizes(load.size),
        f"{shown}{more}",
        hands_needed(weight.kilograms, max(load.size)),
        tuple(way or "does not go through" for way in load.ways),
        _standing_up(load, bench),
    )


def _standing_up(load: Load, bench: Bench) -> Text:
    """Return what headroom a load takes that was carried lying and stands in the end."""
    wide, deep, high = load.size
    thin = min(wide, deep)
    needs = diagonal(high, thin)
    place = bench.model.place
    hangs = place is not None and place.wall is not None and place.wall.hangs
    if hangs or "upright" in load.ways or high <= 2 * thin or needs - high < 2:
        return ()
    return ("to stand it up: ", bench.say.size_with_unit(needs), " of headroom")
