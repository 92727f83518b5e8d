"""What a plan takes for granted about the shop, as sentences for the booklet."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from dryfit.diagnostics import Assumption
from dryfit.shop.days import DAY_NAMES, date_in_words, first_date, first_weekday
from dryfit.shop.resting import in_words
from dryfit.shop.shop import Shop


@dataclass(frozen=True, slots=True)
class Resting:
    """Which wood of a piece may rest while it is milled: for which of the reasons of A3.7.

    `straight` are the kinds of parts that have to stay straight; `resawn` is known beforehand only
    where the notes ask for it.
    """

    much: bool
    straight: tuple[str, ...]
    unknown: bool
    resawn: bool


def shop_assumptions(
    shop: Shop, *, glued: int = 0, coated: int = 0, resting: Resting | None = None
) -> tuple[Assumption, ...]:
    """Return the assumptions: the shop itself, sets built to a width, the first day, room, rest.

    A dado set is named because many shops cannot mount one, and it decides how laps are cut.  Room
    is named where several things are `glued` or `coated` and nobody has counted the places; the
    rest of wood where some may be `resting`.
    """
    said = [
        Assumption(
            f"the shop is {shop.name}, read from {' and '.join(shop.files)}",
            None,
            "--shop FILE, with a shop file that names what differs",
            "shop file",
        )
    ]
    said += [
        Assumption(
            f"the {cutter.station} can mount the {cutter.name}",
            None,
            f"in the shop file under [cutter]: {cutter.name} = false",
            "shop file",
        )
        for cutter in shop.cutters
        if cutter.narrowest != cutter.widest
    ]
    said += _first_day(shop)
    said += _room(shop, glued, coated)
    if resting is not None:
        said += _rests(shop, resting)
    return tuple(said)


def moved_start(shop: Shop) -> str:
    """Return which day is the first where the shop is closed on that of the start; else nothing."""
    first, weekday = first_date(shop), first_weekday(shop)
    told = weekday if first is None else first
    if shop.start is None or told == shop.start:
        return ""
    name = f"a {DAY_NAMES[weekday]}" if first is None else date_in_words(first)
    return f"day 1 is {name}, the first working day from the start on"


def _first_day(shop: Shop) -> Iterator[Assumption]:
    """Yield which day is the first, as far as nobody told it, and which days are free."""
    off = " and ".join(DAY_NAMES[number] for number in sorted(shop.days_off)) or "no day"
    first = first_date(shop)
    if shop.start is None:
        free = f"day 1 is a {DAY_NAMES[first_weekday(shop)]}; free is {off}"
        instead = '--start Thursday or --start 2026-12-05; in the shop file: days_off = ["Sunday"]'
        yield Assumption(free, None, instead, "shop file")
    moved = moved_start(shop)
    if moved:
        yield Assumption(moved, None, "--start with another day", "shop file")
    if shop.start is not None:
        instead = 'in the shop file: days_off = ["Sunday", "2026-12-24"]'
        yield Assumption(f"free is {off}", None, instead, "shop file")
    if shop.holidays and first is None:
        yield Assumption(
            f"{_days(shop)} not taken off, because the plan has no dates",
            None,
            "--start with the date of the first day, such as 2026-12-05",
            "shop file",
        )


def _room(shop: Shop, glued: int, coated: int) -> Iterator[Assumption]:
    """Yield that there is room for all that waits, where nobody has counted it (TRADE C2.5)."""
    lying = (
        ("glue bench", glued, "glue-up in its clamps"),
        ("finish bench", coated, "coat while it dries"),
    )
    for name, count, what in lying:
        station = shop.stations.get(name)
        if count > 1 and station is not None and station.places is None:
            yield Assumption(
                f"there is room for every {what}",
                None,
                f'in the shop file: station."{name}".places = 2',
                "shop file",
            )


def _rests(shop: Shop, resting: Resting) -> Iterator[Assumption]:
    """Yield how long wood lies while it is milled, with the line that says another time."""
    last = "on stickers before its last pass through the planer"
    in_file = "in the shop file under [rest]"
    if resting.much and shop.rests.planed:
        rest = in_words(shop.rests.planed)
        yield Assumption(
            f"wood that loses more than a quarter of its thickness lies {rest} {last}",
            None,
            f'{in_file}: planed = "{rest}"  # "0 h" for no rest',
            "shop file",
        )
    if resting.straight and shop.rests.straight:
        rest, what = in_words(shop.rests.straight), " and ".join(resting.straight)
        yield Assumption(
            f"what has to stay straight, here {what}, lies {rest} {last}",
            None,
            f'{in_file}: straight = "{rest}"  # "0 h" for no rest',
            "shop file",
        )
    if resting.unknown:
        rest = in_words(shop.rests.unknown)
        yield Assumption(
            f"boards whose moisture nobody told lie {rest} {last}"
            if shop.rests.unknown
            else "boards whose moisture nobody told are as dry as the shop's air, and need no rest",
            None,
            f'{in_file}: unknown = "{rest}"  # "24 h" for a rest',
            "shop file",
        )
    if resting.resawn:
        yield rest_of_leaves(shop)


def rest_of_leaves(shop: Shop) -> Assumption:
    """Return how long leaves lie after they are resawn, with the line that says another time."""
    rest = in_words(shop.rests.resawn)
    return Assumption(
        f"leaves lie {rest} on stickers after they are resawn",
        None,
        f'in the shop file under [rest]: resawn = "{rest}"  # 1 to 7 days',
        "shop file",
    )


def _days(shop: Shop) -> str:
    count = len(shop.holidays)
    return "the single day off is" if count == 1 else f"the {count} single days off are"
