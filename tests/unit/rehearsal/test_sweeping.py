"""What a cutter takes: near and far face, spacers, sled base, passes (TRADE 0.4 to 0.7, I1)."""

from fractions import Fraction

import pytest

from dryfit.plan.operation import Work
from dryfit.plan.setting import Hold, Pass, Setting
from dryfit.rehearsal.at_machines.cutters import Mounted, Toolbox
from dryfit.rehearsal.at_machines.standing import Axes
from dryfit.rehearsal.at_machines.sweeping import cleared, swept, through
from dryfit.rehearsal.blank import Blank
from dryfit.rehearsal.fault import Reason, Trouble
from dryfit.rehearsal.goal import Ranges
from dryfit.shop.shop import Accessory, Cutter

ZERO = Fraction(0)
DADO = Cutter("dado", "table saw", "set", Fraction(6), Fraction(20), Fraction(1, 10))
CHISEL = Cutter("chisel 8", "mortiser", "chisel", Fraction(8), Fraction(8), ZERO)
TOOLS = Toolbox(
    {"dado 20": Mounted(DADO, Fraction(20)), "chisel 8": Mounted(CHISEL, Fraction(8))},
    {
        "sled": Accessory("sled", "table saw", Fraction(12), Fraction(600)),
        "rip fence": Accessory("rip fence", "table saw", ZERO, None),
    },
)


def mm(axis: str, value: int, *, to: str | None = None, far: int | None = None) -> Setting:
    far_face = None if far is None else Fraction(far)
    return Setting(axis, Fraction(value), to=to, far=far_face)


def on_sled(stop: int, height: int = 27) -> Axes:
    return {
        "cutter": Setting("cutter", "dado 20"),
        "accessory": Setting("accessory", "sled"),
        "height": mm("height", height),
        "stop": mm("stop", stop, to="near", far=stop + 20),
    }


def box(along: tuple[int, int], across: tuple[int, int], deep: tuple[int, int]) -> Ranges:
    one, two, three = (tuple(Fraction(end) for end in pair) for pair in (along, across, deep))
    return (one[0], one[1]), (two[0], two[1]), (three[0], three[1])


def post() -> Blank:
    """A post of the boot bench, 430 x 45 x 30, all true."""
    true = {"F", "B", "E", "E2", "R", "R2"}
    return Blank("post", (Fraction(430), Fraction(45), Fraction(30)), true)


def cut(axes: Axes, hold: Hold, *passes: Pass) -> tuple[Ranges, ...] | Trouble:
    return swept("table saw", Work("post", ("post",), (), hold, passes), axes, post(), (), TOOLS)


def test_a_lap_at_the_far_end_lies_there_and_is_as_deep_as_the_blade_above_the_sled() -> None:
    """I1: the stop at 25 with a cutter of 20 makes a lap of 45; height 27 on a sled of 12 is 15."""
    hold = Hold("B", "E2", "R2")
    taken = cut(on_sled(25), hold, Pass(), Pass(between=True), Pass(between=True))
    assert taken == (box((385, 430), (0, 45), (15, 30)),)


def test_a_spacer_moves_the_cut_toward_the_stop() -> None:
    """I1: housing 80 to 125, stop 105, spacer 25."""
    hold = Hold("B", "E", "R")
    taken = cut(on_sled(105), hold, Pass(), Pass(spacer=Fraction(25)), Pass(between=True))
    assert taken == (box((80, 125), (0, 45), (15, 30)),)


def test_without_the_pass_between_wood_is_left() -> None:
    taken = cut(on_sled(105), Hold("B", "E", "R"), Pass(), Pass(spacer=Fraction(25)))
    assert isinstance(taken, Trouble)
    assert taken.reason is Reason.CUT


def test_near_and_far_face_have_to_agree_with_the_cutter() -> None:
    """TRADE H84."""
    axes = on_sled(25) | {"stop": mm("stop", 25, to="near", far=46)}
    taken = cut(axes, Hold("B", "E2", "R2"), Pass())
    assert isinstance(taken, Trouble)
    assert taken.reason is Reason.SETTING


def test_a_groove_runs_along_the_fence_from_end_to_end() -> None:
    axes = on_sled(25) | {
        "accessory": Setting("accessory", "rip fence"),
        "height": mm("height", 9),
        "fence": mm("fence", 12, to="near", far=32),
    }
    assert cut(axes, Hold("B", "E", None), Pass()) == (box((0, 430), (12, 32), (21, 30)),)


def test_a_chisel_goes_down_into_the_surface_that_looks_up() -> None:
    axes: Axes = {
        "cutter": Setting("cutter", "chisel 8"),
        "depth": mm("depth", 21),
        "fence": mm("fence", 13, to="near", far=21),
        "stop": mm("stop", 335, to="both", far=375),
    }
    work = Work("post", ("post",), (), Hold("F", "E", "R"), (Pass(),))
    taken = swept("mortiser", work, axes, post(), (), TOOLS)
    assert taken == (box((335, 375), (13, 21), (9, 30)),)


def test_a_cutter_of_another_machine_is_no_cutter() -> None:
    axes = on_sled(25) | {"cutter": Setting("cutter", "chisel 8")}
    taken = cut(axes, Hold("B", "E2", "R2"), Pass())
    assert isinstance(taken, Trouble)
    assert taken.reason is Reason.MACHINE


@pytest.mark.parametrize(
    ("near", "passes", "limits"),
    [
        (0, [Pass()], (0, 20)),
        (25, [Pass(), Pass(between=True), Pass(between=True)], (0, 45)),
        (105, [Pass(), Pass(spacer=Fraction(15))], (90, 125)),
    ],
)
def test_passes_clear_what_lies_between_their_limits(
    near: int, passes: list[Pass], limits: tuple[int, int]
) -> None:
    low, high = limits
    assert cleared(Fraction(near), Fraction(20), passes) == (Fraction(low), Fraction(high))


def test_a_saw_that_stands_no_higher_than_the_wood_does_not_come_through() -> None:
    low = on_sled(25, height=42)
    assert isinstance(through(low, post(), "F", TOOLS), Trouble)
    assert through(on_sled(25, height=43), post(), "F", TOOLS) is None
