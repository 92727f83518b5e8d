"""Every cut of the notes has a step; shapes that are no boxes with their settings and reasons."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest
from tests.pieces.reading import checked
from tests.unit.rehearsal.played import played

from dryfit import workshop
from dryfit.diagnostics import Findings, Severity
from dryfit.operations.cuts.curves import radius_of
from dryfit.plan.operation import Operation
from dryfit.plan.plan import Plan
from dryfit.plan.setting import Setting
from dryfit.rehearsal.fault import Reason

HAND_TOOLS = Path(__file__).resolve().parents[2] / "shops" / "hand_tools.toml"
TABLE = """piece Table
units mm
overall 600 wide, 400 deep, 480 high
timber oak
4 legs, upright, 45 x 45, at corners
2 long aprons, across, on edge, 90 x 20, at front and back,
    tenon 14 long 8 thick 40 wide, 20 from bottom, into legs
2 short aprons, front to back, on edge, 90 x 20, at left and right,
    tenon 14 long 8 thick 40 wide, 20 from bottom, into legs
glue up base: legs, long aprons, short aprons
finish hard wax oil, 2 coats, 8 h apart
"""


def planned(line: str) -> tuple[Plan, Findings]:
    found = checked(f"{TABLE}{line}\n")
    plan, findings = workshop.plan(found, lambda _: None)
    assert plan is not None, [each.message for each in findings]
    return plan, findings


def steps(plan: Plan) -> dict[str, str]:
    """The station of each operation, by id."""
    return {op.id: step.station for step in plan.steps for op in step.operations}


@pytest.mark.parametrize(
    ("line", "operation", "station"),
    [
        ("groove in long aprons: inside, 6 wide, 6 deep, 8 from top, through",
         "long apron / groove / 1", "table saw"),
        ("groove in long aprons: inside, 6 wide, 6 deep, 8 from top, stopped 60 from left",
         "long apron / groove", "router table"),
        ("groove in legs: outside, 20 wide, 6 deep, 30 from bottom, through",
         "leg / groove", "table saw"),
        ("rabbet in long aprons: bottom inside edge, 8 wide, 6 deep, through",
         "long apron / rabbet / 1", "table saw"),
        ("rabbet in legs: bottom outside end, 20 wide, 6 deep, through",
         "leg / rabbet", "table saw"),
        ("holes in long aprons: inside, 8 dia, 12 deep, 20 from bottom, 200 from left",
         "long apron / hole", "drill press"),
        ("notch in long aprons: bottom edge, 60 wide, 20 deep, 200 from left",
         "long apron / notch", "bench"),
        ("chamfer on long aprons: bottom edges, 2", "long apron / chamfer", "bench"),
        ("round-over on base: top outer edges, 4, after glue up base",
         "long apron / round-over", "bench"),
        ("slot in long aprons: outside, 20 wide, 80 long, through, 20 from bottom",
         "long apron / slot", "bench"),
        ("taper in legs: inside faces, from 100 below the top to the bottom end, 45 to 28",
         "leg / taper", "table saw"),
        ("curve in long aprons: bottom edge, 20 deep, from 60 from left to 60 from right",
         "long apron / curve", "band saw"),
        ("bevel in long aprons: bottom outside edge, 15 degrees",
         "long apron / bevel", "table saw"),
        ("bevel in legs: bottom inside end, 5 degrees",
         "leg / bevel", "mitre saw"),
    ],
)  # fmt: skip
def test_a_cut_with_square_sides_is_in_the_plan(line: str, operation: str, station: str) -> None:
    plan, findings = planned(line)
    made = {at for name, at in steps(plan).items() if name.startswith(operation)}
    assert made == {station}, sorted(steps(plan))
    assert all(each.severity is not Severity.ERROR for each in findings)


TAPER = "taper in legs: inside faces, from 100 below the top to the bottom end, 45 to 28"
BEVEL = "bevel in long aprons: bottom outside edge, 15 degrees"
CURVE = "curve in long aprons: bottom edge, 20 deep, from 60 from left to 60 from right"


def deed(plan: Plan, name: str) -> Operation:
    return next(op for step in plan.steps for op in step.operations if op.id == name)


def settings(operation: Operation) -> dict[str, Setting]:
    return {each.axis: each for each in operation.settings}


def test_a_taper_is_cut_on_the_jig_by_what_is_left_at_both_ends() -> None:
    # By hand: the leg is 480 long, the taper runs 380; 45 are whole, 28 are left at the foot.
    plan, _ = planned(TAPER)
    first, second = (settings(deed(plan, f"leg / taper / {turn}")) for turn in (1, 2))
    assert first == second
    assert [first["jig"].value, first["jig"].far, first["stop"].value] == [28, 45, 380]
    assert (first["accessory"].value, first["fence"].value) == ("taper jig", "off")
    # Jig floor 12 + leg 45 + 3 of the blade above it.
    assert first["height"].value == 60


def test_each_leg_lies_on_a_flat_face_when_it_is_tapered_left_and_right_alike() -> None:
    plan, _ = planned(TAPER)
    gone: dict[str, set[str]] = {}
    for turn in (1, 2):
        for work in deed(plan, f"leg / taper / {turn}").work:
            assert work.hold is not None
            for copy in work.copies:
                faces = gone.setdefault(copy, set())
                assert not faces & {work.hold.down, work.hold.against_fence}
                faces |= {name.partition(" on ")[2] for name in work.features}
    assert {len(faces) for faces in gone.values()} == {2}


def test_joints_come_before_shapes_and_shapes_before_the_dry_fit() -> None:
    plan, _ = planned(f"{TAPER}\n{CURVE}\n{BEVEL}")
    order = [op.id for step in plan.steps for op in step.operations]
    shapes = [name for name in order if {"taper", "curve", "bevel"} & set(name.split())]
    for part in ("leg", "long apron"):
        own = [name for name in order if name.startswith(f"{part} / ")]
        joints = [name for name in own if "mortise" in name or "tenon" in name]
        assert max(map(own.index, joints)) < min(own.index(name) for name in shapes if name in own)
    assert max(map(order.index, shapes)) < order.index("base / dry fit")
    assert order.index("long apron / bevel") < order.index("long apron / curve")


def test_a_bevel_is_sawn_by_its_tilt_and_the_point_at_the_table() -> None:
    # By hand: 20 thick at 15 degrees is 20 x 0.26795 = 5.359, told up to 1/10,000 of the tangent.
    plan, _ = planned(BEVEL)
    cut = settings(deed(plan, "long apron / bevel"))
    assert cut["tilt"].value == 15
    assert float(cut["fence"].value) == pytest.approx(90 - 5.359, abs=0.002)
    (work,) = deed(plan, "long apron / bevel").work
    assert work.hold is not None
    assert (work.hold.against_fence, work.hold.down) == ("E2", "F")


@pytest.mark.parametrize(
    ("span", "rise", "radius"),
    [
        # The sagitta of a circle, a general formula: s^2/8h + h/2.
        (600, 40, Fraction(1145)),
        (480, 20, Fraction(1450)),
        (200, 100, Fraction(100)),
        (200, 101, None),
    ],
)
def test_the_radius_of_an_arch_follows_from_span_and_rise(
    span: int, rise: int, radius: Fraction | None
) -> None:
    found = radius_of(Fraction(span), Fraction(rise))
    assert found == radius
    if radius is not None:
        assert found == Fraction(span * span, 8 * rise) + Fraction(rise, 2)


def test_sawn_curves_are_faired_before_the_dry_fit() -> None:
    plan, _ = planned(CURVE)
    order = [op.id for step in plan.steps for op in step.operations]
    assert order.index("long apron / curve") < order.index("long apron / fair curve")
    assert order.index("long apron / fair curve") < order.index("base / dry fit")
    said = str(deed(plan, "long apron / curve").details)
    assert "template" in said
    # The apron is 600 - 2 x 45 + 2 x 14 long; 2 x 60 less spans 418, with a rise of 20 that is
    # 418^2 / 160 + 10.
    assert repr(Fraction(418 * 418, 160) + 10) in said


ALL_ROUND = "taper in legs: all faces, from 100 below the top to the bottom end, 45 to 29"


def test_four_faces_share_what_is_off_and_the_last_two_lie_on_their_strips() -> None:
    plan, _ = planned(ALL_ROUND)
    order = [op.id for step in plan.steps for op in step.operations]
    deeds = ["leg / taper / 1", "leg / taper / 2", "leg / tape strips", "leg / taper / 3",
             "leg / taper / 4", "base / dry fit"]  # fmt: skip
    assert [order.index(each) for each in deeds] == sorted(map(order.index, deeds))
    # 16 are off the leg, 8 off each face: all four at one setting.
    tapers = [deed(plan, f"leg / taper / {turn}") for turn in (1, 2, 3, 4)]
    assert len({tuple(each.token() for each in taper.settings) for taper in tapers}) == 1
    assert settings(deed(plan, "leg / taper / 1"))["jig"].value == 45 - 8
    # 2 strips of each of 4 legs, a minute each (common practice).
    assert deed(plan, "leg / tape strips").tenths == 80


def test_by_hand_all_faces_are_planed_in_one_go() -> None:
    found = checked(f"{TABLE}{ALL_ROUND}\n")
    plan, _ = workshop.plan(workshop.check(found.source, HAND_TOOLS, {}), lambda _: None)
    assert plan is not None
    assert {name for work in deed(plan, "leg / taper").work for name in work.features} == {
        "taper on B", "taper on E", "taper on E2", "taper on F"
    }  # fmt: skip
    assert "leg / tape strips" not in steps(plan)


def test_without_the_strips_the_last_tapers_have_nothing_to_lie_on() -> None:
    sound = played(f"{TABLE}{ALL_ROUND}\n")
    assert sound.faults() == ()
    assert Reason.REFERENCE in sound.without("leg / tape strips").reasons()
