"""Lips of sheet parts as operations, their settings and their order (TRADE A10)."""

from fractions import Fraction
from pathlib import Path

import pytest
from tests.pieces.lipped import CASE, planned_with_lips, played_with_lips
from tests.unit.rehearsal.played import Played, played

from dryfit import workshop
from dryfit.diagnostics import Source
from dryfit.notes import source_of
from dryfit.plan.operation import Operation
from dryfit.plan.plan import Step

SHOPS = Path(__file__).parents[2] / "shops"
ALL_ROUND = ("side", (("E", 8, "birch"), ("E2", 8, "birch"), ("R", 8, "birch")))
FRONT = ("shelf", (("E2", 8, "birch"),))
THIN = ("top", (("E", 3, "birch"),))
BANDED = ("bottom", (("E", 1, None),))


@pytest.fixture(scope="module")
def case() -> Played:
    return played_with_lips(ALL_ROUND, FRONT, THIN, BANDED)


def _rows(case: Played) -> dict[str, tuple[Step, Operation]]:
    return {row.id: (step, row) for step in case.plan.steps for row in step.operations}


def _set(case: Played, name: str, axis: str) -> object:
    _, row = _rows(case)[name]
    return next(setting.value for setting in row.settings if setting.axis == axis)


def test_fence_and_stop_are_set_to_the_core(case: Played) -> None:
    # TRADE A10: core width = W - n x t.  Sides 300 wide with two lips of 8, and one at R of 500.
    assert _set(case, "side / width", "fence") == 300 - 2 * 8
    assert _set(case, "side / length", "stop") == 500 - 8
    assert _set(case, "shelf / width", "fence") == 292 - 8
    assert _set(case, "bottom / width", "fence") == 299


def test_strips_are_milled_as_thick_as_the_lip_and_wider_than_the_sheet(case: Played) -> None:
    # 1 mm proud of both faces of 18, and 10 past both ends of 576.
    assert _set(case, "shelf lip / thickness", "thickness") == 8
    assert _set(case, "shelf lip / width", "fence") == 20
    assert _set(case, "shelf lip / length", "stop") == 596


def test_ends_are_lipped_and_flush_before_the_edges_and_cuts_come_last(case: Played) -> None:
    found = _rows(case)
    order = ["length", "lip / ends", "trim lip / ends", "lip / edges", "trim lip / edges"]
    deeds = [f"side / {deed}" for deed in (*order, "housing for shelf")]
    assert [name for name in found if name in deeds] == deeds
    # The glue is a day old when a cutter crosses it, by the shop's white glue.
    glued, cut = (found[name][0] for name in ("side / lip / edges", "side / housing for shelf"))
    assert cut.starts.tenths >= glued.ends.tenths + 24 * 600


def test_strips_are_there_before_the_glue(case: Played) -> None:
    found = list(_rows(case))
    assert found.index("shelf lip / length") < found.index("shelf / lip")


def test_thick_strips_take_clamps_and_thin_ones_tape(case: Played) -> None:
    # 576 less 50 at both ends, in gaps of no more than 200: three gaps, four clamps; 292 and two
    # cauls of 20 and 25 for the screw make an opening of 357.
    _, lip = _rows(case)["shelf / lip"]
    assert lip.glue_up is not None
    (row,) = lip.glue_up.clamps
    assert (row.count, row.length) == (4, Fraction(357))
    _, taped = _rows(case)["top / lip"]
    assert taped.glue_up is not None
    assert taped.glue_up.clamps == ()
    assert taped.held == ()


def test_banding_is_ironed_on_and_waits_for_no_glue(case: Played) -> None:
    step, band = _rows(case)["bottom / band"]
    assert (band.station, band.glue_up, band.cautions) == ("bench", None, ("hot-iron",))
    assert _rows(case)["bottom / trim band"][0].number == step.number


def test_the_plan_is_played_without_a_fault(case: Played) -> None:
    assert case.faults() == ()


def test_as_many_parts_at_once_as_there_are_clamps_for() -> None:
    # A side 900 long takes five clamps (800 in four gaps of 200), and the shop has six such bars.
    text = CASE.replace("500 high", "900 high")
    case = planned_with_lips(text, ("side", (("E", 8, "birch"),)))
    found = [name for name in _rows(case) if name.startswith("side / lip")]
    assert found == ["side / lip / 1", "side / lip / 2"]
    assert case.faults() == ()


def test_without_a_router_the_lip_is_planed_flush() -> None:
    case = planned_with_lips(CASE, FRONT, shop=SHOPS / "hand_tools.toml")
    _, trim = _rows(case)["shelf / trim lip"]
    assert trim.sentence.endswith("with a plane")
    assert trim.cautions == ()
    assert case.faults() == ()


TOP = """piece Long top
units mm
overall {long} wide, 900 deep, 18 high
timber birch plywood
1 top, flat, across, {long} x 900 x 18, lipped 12 of oak all round
"""


@pytest.mark.parametrize(("long", "severity"), [(1500, None), (2400, "notice"), (9600, "error")])
def test_a_lip_that_its_glue_leaves_no_time_for_is_told(long: int, severity: str | None) -> None:
    # H60, as of any glue-up: a slower glue is told, and where there is none it is an error.
    source = source_of("top.dryfit", TOP.format(long=long).encode())
    assert isinstance(source, Source)
    checked = workshop.check(source, None, {})
    plan, findings = workshop.plan(checked, lambda _: None)
    late = [each for each in findings if each.code == "glue-time-short"]
    assert [each.severity.value for each in late] == ([severity] if severity else [])
    assert (plan is None) == (severity == "error")
    # A lip is no stage of the notes: nothing there parts it or names helpers.
    assert not any("two people" in hint.message for each in late for hint in each.hints)


DOOR = """piece Door case
units mm
overall 500 wide, 300 deep, 600 high
timber oak
2 sides, upright, facing side, of birch ply, 300 x 18, at left and right, banded 1 thick at front
1 top, across, flat, of birch ply, 300 x 18, between sides, housing 6, flush top
1 bottom, across, flat, of birch ply, 300 x 18, between sides, housing 6, flush bottom
bay = opening between sides and top and bottom
1 door, of birch ply, 18 thick, in bay, gap 2, lipped 6 thick of oak all round, facing front
door to side: 2 hinges
glue up case: sides, top, bottom
finish hard wax oil, 2 coats, 8 h apart
"""


def test_a_lipped_door_is_planed_to_its_gap_when_the_glue_is_hard() -> None:
    # Without that rule it began some minutes before the 24 h that the glue takes.
    assert played(DOOR).faults() == ()


def test_a_cut_of_the_sheet_for_several_lipped_parts_comes_before_their_lips() -> None:
    """It counts with the part that it frees first, and is no cut across the lips of the others."""
    sound = played("""piece Little case
units mm
overall 700 wide, 300 deep, 500 high
timber birch ply
have 1 sheet of birch ply, 1525 x 1525 x 18
have 1 board of oak, 1600 x 80 x 27, rough
2 sides, upright, facing side, depth x 18, at left and right, lipped 6 of oak at front
1 top, across, flat, depth x 18, into sides, housing 6, flush top, lipped 6 of oak at front
1 bottom, across, flat, depth x 18, into sides, housing 6, flush bottom, lipped 6 of oak at front
glue up case: sides, top, bottom
""")
    rows = _rows(sound)
    lips = [step.number for name, (step, _) in rows.items() if name.endswith(" / lip")]
    cuts = [step.number for step, row in rows.values() if row.board_cuts]
    assert lips
    assert max(cuts) < min(lips)
