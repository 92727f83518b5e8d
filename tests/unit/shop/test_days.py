"""Weekdays and dates by the calendar on the wall: 5 December 2026 is a Saturday (ISO 8601)."""

from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from dryfit.shop import Shop, read_shop, shop_assumptions
from dryfit.shop.days import first_date, first_weekday, full_name, short_name, single_days_off
from dryfit.shop.taken_for_granted import moved_start


def shop_with(tmp_path: Path, *lines: str) -> Shop:
    file = tmp_path / "shop.toml"
    file.write_text('format = "dryfit-shop/1"\n' + "\n".join(lines), encoding="utf-8")
    shop, findings = read_shop(file, {})
    assert shop is not None, findings
    return shop


def test_nobody_told_means_a_monday_without_a_name(tmp_path: Path) -> None:
    shop = shop_with(tmp_path)
    assert (first_date(shop), first_weekday(shop), short_name(shop, 3)) == (None, 0, "")
    assert full_name(shop, 4) == "Thursday of the first week"
    assert full_name(shop, 11) == "Thursday of the second week"
    assert full_name(shop, 71) == "Monday of week 11"


def test_a_weekday_is_enough_for_the_names(tmp_path: Path) -> None:
    shop = shop_with(tmp_path, 'start = "Thursday"')
    assert (first_weekday(shop), short_name(shop, 1), short_name(shop, 5)) == (3, "Thu", "Mon")
    assert full_name(shop, 5) == "Monday of the second week"
    assert single_days_off(shop) == frozenset()


@pytest.mark.parametrize("told", ['"2026-12-05"', "2026-12-05"])
def test_work_begins_on_the_first_day_that_is_worked(tmp_path: Path, told: str) -> None:
    # Saturday and Sunday are free, and so is Monday the 7th.
    shop = shop_with(
        tmp_path,
        f"start = {told}",
        'days_off = ["Saturday", "Sunday", "2026-12-07", "2026-12-24", 2026-12-25]',
    )
    assert first_date(shop) == date(2026, 12, 8)
    assert (first_weekday(shop), short_name(shop, 1)) == (1, "Tue 8 Dec")
    assert single_days_off(shop) == frozenset({16, 17})
    assert short_name(shop, 17) == "Thu 24 Dec"
    assert full_name(shop, 25) == "Friday 1 January 2027"


def test_a_weekday_that_is_free_gives_way_to_the_next(tmp_path: Path) -> None:
    shop = shop_with(tmp_path, 'start = "Saturday"', 'days_off = ["Saturday"]')
    assert first_weekday(shop) == 6


def test_days_off_that_nothing_places_are_said_to_be_left_out(tmp_path: Path) -> None:
    shop = shop_with(tmp_path, 'days_off = ["Sunday", "2026-12-25"]')
    said = [each.text for each in shop_assumptions(shop)]
    assert "the single day off is not taken off, because the plan has no dates" in said
    assert "day 1 is a Monday; free is Sunday" in said


def test_a_start_that_is_not_worked_is_said_to_be_moved(tmp_path: Path) -> None:
    said = [each.text for each in shop_assumptions(shop_with(tmp_path, 'start = "2026-12-05"'))]
    assert "day 1 is Monday 7 December 2026, the first working day from the start on" in said
    assert not any("day 1 is a" in text for text in said)


@pytest.mark.parametrize(
    ("start", "said"),
    [
        (date(2026, 12, 5), "day 1 is Monday 7 December 2026, the first working day"),
        (5, "day 1 is a Monday, the first working day"),
        (date(2026, 12, 7), ""),
        (2, ""),
        (None, ""),
    ],
)
def test_it_is_told_that_work_begins_on_another_day(
    tmp_path: Path, start: date | int | None, said: str
) -> None:
    """5 December 2026 is a Saturday, as 5 is: Monday is 0."""
    moved = moved_start(replace(shop_with(tmp_path), start=start))
    assert moved == (f"{said} from the start on" if said else "")
