"""Rabbets along an edge in two cuts of the saw, where one cutter cannot make them (TRADE B0)."""

from dataclasses import replace
from pathlib import Path

import pytest
from tests.pieces.reading import text_of
from tests.property.plan_oracle import faults
from tests.property.plan_oracle.documents import documents, shop_tables
from tests.property.plan_oracle.reading import Json, Row, rows_of
from tests.unit.rehearsal.played import Played

from dryfit import workshop
from dryfit.diagnostics import Source
from dryfit.notes import source_of
from dryfit.rehearsal.fault import Reason
from dryfit.rehearsing import goal_of

SAW_ALONE = """format = "dryfit-shop/1"
name = "Saw without a dado set, and no router table"
cutter."dado" = false
station."router table" = false
"""
RACK = text_of("lapped_back")
SECOND = "side / rabbet for back board / 2"


@pytest.fixture(scope="module")
def shop(tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("shop") / "saw_alone.toml"
    path.write_text(SAW_ALONE, encoding="utf-8")
    return path


def _steps(text: str, shop: Path | None) -> Json:
    found, errors = documents(text, shop)
    assert found is not None, errors
    return found[0]


def _rows(steps: Json, word: str) -> list[Row]:
    return [row for row in rows_of(steps) if row.work["operation"].startswith(word)]


def test_both_cuts_stand_by_the_formula(shop: Path) -> None:
    # TRADE B0: cut 1, face down: h = d, near = w - c; cut 2, edge down: h = w, near = T - d.
    # The back is 12 thick, the rabbet 10 deep in 20, the blade 3.2: 12 - 3.2 = 8.8, 20 - 10 = 10.
    steps = _steps(RACK, shop)
    first, second = (_rows(steps, f"side / rabbet for back board / {turn}")[0] for turn in (1, 2))
    held = [
        (row.work["hold"]["down"], row.work["hold"]["against_fence"]) for row in (first, second)
    ]
    assert held == [("B", "E"), ("E", "F")]
    settings = [
        (row.step["settings"]["height"], row.step["settings"]["fence"]) for row in (first, second)
    ]
    assert [(height["mm"], fence["mm"], fence["far"]["mm"]) for height, fence in settings] == [
        (10, 8.8, 12),
        (12, 10, 13.2),
    ]


@pytest.mark.parametrize(
    "name", ["lapped_back", "tool_cupboard", "nail_drawer", "sliding_lid_box", "rabbeted_box"]
)
def test_plans_with_two_cuts_are_sound(name: str, shop: Path) -> None:
    found, errors = documents(text_of(name), shop)
    assert found is not None, errors
    assert faults(*found, shop_tables(shop)) == []


def test_where_a_dado_set_or_a_router_table_is_there_the_rabbet_stays_one_cut() -> None:
    rows = _rows(_steps(RACK, None), "side / rabb")
    assert {row.work["hold"]["down"] for row in rows} == {"B"}


@pytest.mark.parametrize(
    ("old", "new"),
    [
        # No deeper than the blade is wide, nothing is left for a second cut.
        ("rabbet 10, ship lap 9, gap 1, screws", "rabbet 3, ship lap 9, gap 1"),
        # On its edge a board wider than 200 sways at a fence (common practice).
        ("140", "210"),
    ],
)
def test_other_rabbets_are_cut_in_passes(old: str, new: str, shop: Path) -> None:
    text = RACK.replace(old, new)
    assert text != RACK
    rows = _rows(_steps(text, shop), "side / rabbet for back board")
    assert {row.work["hold"]["down"] for row in rows} == {"B"}


@pytest.fixture(scope="module")
def plan(shop: Path) -> Played:
    source = source_of("rack.dryfit", RACK.encode())
    assert isinstance(source, Source)
    found = workshop.check(source, shop, {})
    made, findings = workshop.plan(found, lambda _: None)
    assert made is not None, findings
    assert found.model is not None
    assert found.shop is not None
    return Played(made, goal_of(found.model), found.shop)


def test_the_rehearsal_lets_the_strip_fall(plan: Played) -> None:
    assert plan.said() == ""


def test_without_the_second_cut_the_strip_stays_where_the_back_goes(plan: Played) -> None:
    assert Reason.FIT in plan.idle(SECOND).reasons()


def test_cut_edge_down_first_the_strip_is_trapped_and_refused(plan: Played) -> None:
    steps = list(plan.plan.steps)
    at = [
        number
        for number, step in enumerate(steps)
        if any(op.id.startswith("side / rabbet for back board") for op in step.operations)
    ]
    one, two = at
    steps[one], steps[two] = steps[two], steps[one]
    turned = replace(plan, plan=replace(plan.plan, steps=tuple(steps)))
    assert "trapped between blade and fence" in turned.said()
