"""Clamps by length, places at the benches and the calendar: what the shop file counts is kept."""

from dataclasses import replace
from datetime import date, timedelta
from pathlib import Path

import pytest
from tests.pieces.planning import planned
from tests.pieces.reading import text_of

from dryfit.booklet import booklet_view, page
from dryfit.plan.plan import Plan, Step
from dryfit.rehearsal import rehearse
from dryfit.rehearsing import goal_of
from dryfit.workshop import Checked

STOOL = text_of("step_stool")
"""Two side frames with a bar each, a seat with two coats, then the base with two."""
FIRST, SECOND = "side frame 1 / glue up", "side frame 2 / glue up"
HOUR = 600


def shop(tmp_path: Path, *lines: str) -> Path:
    file = tmp_path / "shop.toml"
    file.write_text("\n".join(('format = "dryfit-shop/1"', *lines)) + "\n", encoding="utf-8")
    return file


def sound(file: Path) -> tuple[Checked, Plan]:
    checked, plan, findings = planned(STOOL, file)
    assert plan is not None, findings
    assert checked.model is not None
    assert checked.shop is not None
    assert rehearse(plan, goal_of(checked.model), checked.shop) == ()
    return checked, plan


def clamps(step: Step) -> dict[str, int]:
    return {held.resource: held.count for operation in step.operations for held in operation.held}


def one_bar(tmp_path: Path, more: str = "") -> Path:
    return shop(
        tmp_path,
        "[clamp]",
        '"bar 1200" = false',
        '"bar 700" = { opens = "700 mm", count = 1 }',
        more,
    )


def test_the_second_frame_waits_for_the_only_bar(tmp_path: Path) -> None:
    _, plan = sound(one_bar(tmp_path))
    first, second = plan.step_of(FIRST), plan.step_of(SECOND)
    assert clamps(first) == clamps(second) == {"bar 700": 1}
    assert second.starts.tenths >= first.ends.tenths + HOUR


def test_a_longer_bar_serves_for_it(tmp_path: Path) -> None:
    longer = '"bar 1500" = { opens = "1500 mm", count = 1 }'
    checked, plan = sound(one_bar(tmp_path, longer))
    first, second = plan.step_of(FIRST), plan.step_of(SECOND)
    assert (clamps(first), clamps(second)) == ({"bar 700": 1}, {"bar 1500": 1})
    assert second.starts.tenths < first.ends.tenths + HOUR
    assert checked.model is not None
    assert checked.shop is not None
    html = page(booklet_view(checked.model, plan, checked.shop, ()), "a4")
    assert html.count("<td>bar 700</td>") == html.count("<td>bar 1500</td>") == 1


def test_one_place_at_the_glue_bench_holds_one_frame(tmp_path: Path) -> None:
    _, plan = sound(shop(tmp_path, 'station."glue bench".places = 1'))
    first, second = plan.step_of(FIRST), plan.step_of(SECOND)
    assert second.starts.tenths >= first.ends.tenths + HOUR
    assert second.release is not None
    assert (second.release.step, second.release.lag) == (first.number, HOUR)
    assert second.release.reason == "every place at the glue bench is taken until then"


def test_the_rehearsal_counts_the_places(tmp_path: Path) -> None:
    checked, plan = sound(shop(tmp_path, "workers = 1"))
    assert checked.model is not None
    assert checked.shop is not None
    stations = dict(checked.shop.stations)
    for name in ("glue bench", "finish bench"):
        stations[name] = replace(stations[name], places=1)
    faults = rehearse(plan, goal_of(checked.model), replace(checked.shop, stations=stations))
    assert [fault.operation for fault in faults] == [SECOND]
    assert faults[0].message == f"{SECOND}: the glue bench has 1 places, all are taken"
    assert faults[0].needed.startswith("a free place: not before day ")


@pytest.mark.parametrize(
    ("lines", "first", "off"),
    [
        (("workers = 1",), None, {5, 6}),
        (('start = "Thursday"',), "Thu", {2, 3}),
        # Saturday the 5th and Sunday are free, and Wednesday the 9th is a holiday.
        (
            ("start = 2026-12-05", 'days_off = ["Saturday", "Sunday", "2026-12-09"]'),
            "Mon 7 Dec",
            {2, 5, 6},
        ),
    ],
)
def test_days_have_the_names_that_the_start_gives_them(
    tmp_path: Path, lines: tuple[str, ...], first: str | None, off: set[int]
) -> None:
    """`off` are the days without work of the first week from day 1, counted from 0."""
    _, plan = sound(shop(tmp_path, *lines))
    assert plan.steps[0].starts.on == (f"day 1 ({first})" if first else "day 1")
    moments = [moment for step in plan.steps for moment in (step.starts, step.ends)]
    assert off.isdisjoint(moment.day - 1 for moment in moments)
    for moment in moments:
        then = date(2026, 12, 6) + timedelta(days=moment.day)
        if first == "Mon 7 Dec":
            assert moment.name == f"{then:%a} {then.day} {then:%b}"
    assert plan.done is not None
    last = date(2026, 12, 6) + timedelta(days=plan.done.day)
    dated = f"{last:%A} {last.day} {last:%B} {last.year}"
    assert (plan.done_on == dated) == (first == "Mon 7 Dec")
