"""A top of leaves that are resawn from a slab and opened like a book (TRADE A8, K11)."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest
from tests.unit.operations.worked import said
from tests.unit.rehearsal.played import Played, played

EXAMPLES = Path(__file__).parents[3] / "examples"
INCH = Fraction(254, 10)


@pytest.fixture(scope="module")
def table() -> Played:
    return played((EXAMPLES / "tea_table.dryfit").read_text(encoding="utf-8"))


def test_the_leaves_are_sawn_before_they_are_planed_and_rest_a_day(table: Played) -> None:
    assert not table.faults()
    rows = [(step, row) for step in table.plan.steps for row in step.operations]
    names = [row.id for _, row in rows]
    # The strips come out of the slab first.
    assert names.index("top stave / rough length") < names.index("top / resaw")
    assert names.index("top / resaw") < names.index("top stave / face")
    faced = next(step for step, row in rows if row.id == "top stave / face")
    assert faced.release is not None
    assert "fresh leaf" in faced.release.reason


def test_the_fence_is_set_to_the_leaf_as_it_is_sawn(table: Played) -> None:
    # TRADE A8.2: the leaf as sawn, not half of the slab.  7/8 and 1.6 for flattening are planed
    # from 1 mm more, for the one sawn face; two of them, a kerf of 1.3 and 2 lost to warp (A8.1).
    (row,) = (
        row for step in table.plan.steps for row in step.operations if row.id == "top / resaw"
    )
    (fence,) = (each for each in row.settings if each.axis == "fence")
    assert isinstance(fence.value, Fraction)
    assert fence.value > INCH * 7 / 8 + 1
    # A strip that is no thicker than two leaves and a kerf gives two alike (A8.1).
    (planed,) = (
        row
        for step in table.plan.steps
        for row in step.operations
        if row.id == "top / strip thickness"
    )
    (thick,) = (each.value for each in planed.settings if each.axis == "thickness")
    assert thick == 2 * fence.value + Fraction(13, 10)
    assert row.check == "each leaf is as thick along one edge as along the other"


def test_they_are_numbered_opened_and_flattened_past_the_planer(table: Played) -> None:
    rows = {row.id: row for step in table.plan.steps for row in step.operations}
    assert any("Number the leaves" in said(each) for each in rows["top / resaw"].details)
    assert any("like a book" in said(each) for each in rows["top / dry fit"].details)
    assert any("router on a sled" in said(each) for each in rows["top / flatten"].details)
