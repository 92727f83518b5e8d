"""What each machine takes: the shipped shop's limits, which are those of TRADE A6."""

from dataclasses import replace
from fractions import Fraction

import pytest
from tests.unit.operations.worked import shipped_shop

from dryfit.plan.operation import Operation
from dryfit.plan.setting import Setting
from dryfit.rehearsal.at_machines.cutters import Mounted, Toolbox
from dryfit.rehearsal.at_machines.limits import Job, beyond

ANY = Operation("x / y", "width", "table saw", "x", (), (), 0, "")


def distance(axis: str, near: int) -> Setting:
    """A fence or stop by the near face of the cutter."""
    return Setting(axis, Fraction(near), to="near", far=Fraction(near + 3), origin="E")


def told(kind: str, station: str, sizes: tuple[int, int, int], *settings: Setting) -> list[str]:
    """What is beyond the limits of a machine that stands as the work asks."""
    shop = shipped_shop()
    blade = next(each for each in shop.cutters if each.name == "combination blade")
    tools = Toolbox(
        {blade.name: Mounted(blade, blade.widest)}, {each.name: each for each in shop.accessories}
    )
    long, wide, thick = (Fraction(size) for size in sizes)
    job = Job(
        replace(ANY, kind=kind, station=station, settings=settings),
        shop.stations[station],
        {setting.axis: setting for setting in settings},
        (long, wide, thick),
        tools,
    )
    return [trouble.message for trouble in beyond(job)]


RIP_FENCE = Setting("accessory", "rip fence", unit="name")


@pytest.mark.parametrize("near", [0, 2, 6])
def test_a_groove_may_stand_at_the_fence_in_a_strip_of_waste(near: int) -> None:
    # TRADE B0, rabbet: nothing is severed, so the narrowest rip is no limit.
    settings = (RIP_FENCE, distance("fence", near))
    assert told("groove", "table saw", (400, 60, 20), *settings) == []


@pytest.mark.parametrize(("near", "count"), [(5, 1), (6, 0), (760, 0), (761, 1)])
def test_a_rip_is_as_wide_as_the_fence_can_stand(near: int, count: int) -> None:
    settings = (RIP_FENCE, distance("fence", near))
    assert len(told("width", "table saw", (900, 900, 20), *settings)) == count


def test_what_is_shorter_along_the_fence_than_wide_from_it_turns_at_the_blade() -> None:
    # TRADE A6.2.
    settings = (RIP_FENCE, distance("fence", 400))
    assert told("width", "table saw", (400, 410, 6), *settings) == []
    (message,) = told("width", "table saw", (399, 410, 6), *settings)
    assert "turns at the blade" in message
    # A groove severs nothing.
    assert told("groove", "table saw", (399, 410, 6), *settings) == []


@pytest.mark.parametrize("kind", ["lap", "housing", "tenon cheek", "tenon shoulder"])
def test_a_short_part_goes_across_the_router_on_a_mitre_sled(kind: str) -> None:
    # TRADE A6: 200 along the fence, "use sled below"; B0: no longer than 600 on it.
    stop = distance("stop", 20)
    assert told(kind, "router table", (120, 50, 20), stop) == []
    assert len(told(kind, "router table", (601, 50, 20), stop)) == 1


def test_a_groove_along_the_router_fence_is_not_short_because_a_stop_stands_there() -> None:
    fence = distance("fence", 5)
    assert told("groove", "router table", (200, 50, 20), fence) == []
    assert len(told("groove", "router table", (199, 50, 20), fence)) == 1


@pytest.mark.parametrize(
    ("long", "limits", "count"),
    [
        (1000, (100, 900), 0),  # the stops 900 and 900 from the bit
        (1900, (94, 1886), 2),  # met by R at 1886, by R2 at 1806
        (1900, (0, 900), 0),  # open at R, so one stop
        (1900, (1100, 1900), 0),
        (1900, (0, 1886), 1),
    ],
)
def test_stops_stand_no_farther_from_the_bit_than_the_fence_is_long(
    long: int, limits: tuple[int, int], count: int
) -> None:
    begin, end = map(Fraction, limits)
    stop = Setting("stop", begin, to="both", far=end, origin="R", side="left")
    assert len(told("groove", "router table", (long, 50, 20), stop)) == count
