"""Grit after grit, each part with all of them, and nothing behind a closed joint."""

from dataclasses import replace

import pytest
from tests.pieces.reading import text_of
from tests.unit.rehearsal.played import Played, played

from dryfit.plan.operation import Operation
from dryfit.rehearsal.deeds import deeds_of
from dryfit.rehearsal.fault import Reason
from dryfit.rehearsal.sanding import sanding


@pytest.fixture(scope="module")
def tray() -> Played:
    return played(text_of("tray"))


def said(of: Played) -> list[str]:
    return [fault.message for fault in sanding(deeds_of(of.plan), of.goal, of.shop)]


def swapped(of: Played, first: str, second: str) -> Played:
    """The plan with two operations each in the place of the other."""
    by_id = {op.id: op for step in of.plan.steps for op in step.operations}

    def change(op: Operation) -> Operation:
        return by_id[{first: second, second: first}.get(op.id, op.id)]

    return of.with_operations(change)


def test_the_plan_as_it_is_passes(tray: Played) -> None:
    assert said(tray) == []


def test_a_coarse_grit_after_a_fine_one_leaves_scratches(tray: Played) -> None:
    turned = swapped(tray, "tray / sand 120", "tray / sand 180")
    assert said(turned) == ["tray: 120 comes after 180 and leaves its scratches"]


def test_a_part_sanded_with_one_grit_is_rough(tray: Played) -> None:
    rough = tray.without("tray / sand 180", "tray / sand inside 180", "end / sand faces 180")
    assert "front long side is not sanded with 180" in said(rough)
    assert "left end is not sanded with 180" in said(rough)


def test_the_inside_is_not_sanded_when_it_is_closed(tray: Played) -> None:
    late = swapped(tray, "tray / sand inside 180", "tray / glue up")
    assert said(late) == ["tray: the glue-up of tray has closed what is sanded"]


def test_coats_wait_for_the_last_sanding_not_for_that_of_the_inside(tray: Played) -> None:
    rough = tray.without("tray / sand 180")
    assert Reason.SURFACE in {fault.reason for fault in rough.faults()}


def test_the_grits_are_those_of_the_shop(tray: Played) -> None:
    shop = replace(tray.shop, sanding=replace(tray.shop.sanding, grits=("120", "180", "240")))
    finer = replace(tray, shop=shop)
    assert "front long side is not sanded with 240" in said(finer)
