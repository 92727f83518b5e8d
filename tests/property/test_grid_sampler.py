"""Two judges of the finished piece agree: points of the parts document, and the rehearsal.

The sampler knows the cuts that the parts document tells, the rehearsal those that the machines have
made.  Both look at the same boxes, so what is spoilt in the one way must be found in the other.
"""

from __future__ import annotations

import json
from dataclasses import replace
from fractions import Fraction

import pytest
from tests.pieces.reading import FILES, checked_piece
from tests.property.grid_sampler import AXES, Json, complaints, span
from tests.rehearsal_damage.judging import faults_of_the_sound, sound

from dryfit.geometry.box import Box
from dryfit.placing.as_json import parts_document
from dryfit.plan.plan import Plan, Step
from dryfit.rehearsal import Fault, Goal, Reason, rehearse

SPOILT = {
    "boot_bench": ("half lap 1", "post", "cross slot for bottom end rail"),
    "step_stool": ("mortise and tenon 1", "leg", "mortise for long rail"),
    "shelf_box": ("housing 1", "side", "cross slot for top"),
    "tray": ("groove 1", "long side", "groove for bottom"),
}
"""A joint of the piece, a part of it and what is cut from that part for the joint or its like."""
OFF = Fraction(3)


def document(name: str) -> Json:
    """What `parts --json` prints."""
    found = checked_piece(name)
    made = parts_document(found.declared.piece, name, found.model, [], "mm")
    again: Json = json.loads(json.dumps(made))
    return again


def at_the_end(faults: tuple[Fault, ...]) -> list[Fault]:
    return [fault for fault in faults if fault.step is None]


@pytest.mark.parametrize("name", FILES)
def test_both_find_every_piece_sound(name: str) -> None:
    assert complaints(document(name)) == ()
    assert at_the_end(faults_of_the_sound(name)) == []


def moved(written: Json, by: Box) -> Json:
    """A box of the document at another place."""
    shifts = zip(AXES, by.low, strict=True)
    return {axis: [f"{each + shift} mm" for each in span(written[axis])] for axis, shift in shifts}


def shifted(box: Box, by: Box) -> Box:
    """The same box of the goal at the same other place."""
    low = tuple(at + shift for at, shift in zip(box.low, by.low, strict=True))
    high = tuple(at + shift for at, shift in zip(box.high, by.low, strict=True))
    return Box((low[0], low[1], low[2]), (high[0], high[1], high[2]))


def ways() -> list[Box]:
    """A shift, as a box of no size, to each of the six sides."""
    found = []
    for axis in range(3):
        for by in (OFF, -OFF):
            x, y, z = (by if each == axis else Fraction(0) for each in range(3))
            found.append(Box((x, y, z), (x, y, z)))
    return found


def found_by_both(name: str, spoilt: Json, goal: Goal) -> tuple[bool, bool]:
    """Whether the sampler minds a spoilt document, and the rehearsal a goal spoilt alike."""
    plan, _, shop = sound(name)
    return bool(complaints(spoilt)), bool(rehearse(plan, goal, shop))


@pytest.mark.parametrize("name", SPOILT)
def test_a_joint_that_stands_elsewhere_is_found_by_both(name: str) -> None:
    """A region that is moved into the wood of one part is as full as before, to the sampler."""
    joint_id, _, _ = SPOILT[name]
    _, goal, _ = sound(name)
    found = []
    for by in ways():
        spoilt = document(name)
        (joint,) = (each for each in spoilt["joints"] if each["id"] == joint_id)
        joint["region"] = moved(joint["region"], by)
        joints = tuple(
            replace(each, region=shifted(each.region, by)) if each.id == joint_id else each
            for each in goal.joints
        )
        found.append(found_by_both(name, spoilt, replace(goal, joints=joints)))
    assert (True, True) in found
    assert (True, False) not in found


@pytest.mark.parametrize("name", SPOILT)
def test_a_part_that_stands_elsewhere_is_found_by_both(name: str) -> None:
    _, part_name, _ = SPOILT[name]
    _, goal, _ = sound(name)
    for by in ways():
        spoilt = document(name)
        (part,) = (each for each in spoilt["parts"] if each["name"] == part_name)
        part["copies"][0]["box"] = moved(part["copies"][0]["box"], by)
        parts = tuple(
            replace(each, copies=(replace(first, box=shifted(first.box, by)), *each.copies[1:]))
            if each.name == part_name
            else each
            for each in goal.parts
            for first in each.copies[:1]
        )
        assert found_by_both(name, spoilt, replace(goal, parts=parts)) == (True, True), by


@pytest.mark.parametrize("name", SPOILT)
def test_a_cut_that_is_not_made_is_found_by_both(name: str) -> None:
    _, part_name, feature = SPOILT[name]
    spoilt = document(name)
    (part,) = (each for each in spoilt["parts"] if each["name"] == part_name)
    part["features"] = [each for each in part["features"] if each["id"] != feature]
    assert any(" share " in each for each in complaints(spoilt))
    plan, goal, shop = sound(name)
    faults = rehearse(without(plan, part_name, feature), goal, shop)
    assert any(fault.reason is Reason.FIT and " shares " in fault.message for fault in faults)


def without(plan: Plan, part: str, feature: str) -> Plan:
    """The plan without every cut of a feature."""
    steps = tuple(left for step in plan.steps if (left := _step_without(step, part, feature)))
    assert steps != plan.steps
    return replace(plan, steps=steps)


def _step_without(step: Step, part: str, feature: str) -> Step | None:
    operations = []
    for operation in step.operations:
        work = tuple(
            row for row in operation.work if row.part != part or feature not in row.features
        )
        if work or not operation.work:
            operations.append(replace(operation, work=work))
    return replace(step, operations=tuple(operations)) if operations else None


@pytest.mark.parametrize(
    ("number", "size", "said"),
    [(0, "width", "its width is not that of the cut list"), (2, "length", "its length is not")],
)
def test_a_size_that_is_not_that_of_the_box_is_found(number: int, size: str, said: str) -> None:
    spoilt = document("step_stool")
    spoilt["parts"][number][size]["exact"] = "41 mm"
    assert any(said in each for each in complaints(spoilt))


def test_an_overall_size_that_is_not_reached_is_found() -> None:
    spoilt = document("step_stool")
    spoilt["overall"]["depth"]["exact"] = "301 mm"
    assert complaints(spoilt) == ("the depth over all is 300",)


@pytest.mark.parametrize("name", ["mitred_frame", "mitred_box", "beaded_door"])
def test_a_mitre_that_runs_out_on_the_wrong_side_leaves_its_corner_open(name: str) -> None:
    other = {"E": "E2", "E2": "E", "F": "B", "B": "F"}
    spoilt = document(name)
    part = next(
        each for each in spoilt["parts"] if any(f["kind"] == "mitre" for f in each["features"])
    )
    for feature in part["features"]:
        if feature["kind"] == "mitre":
            feature["toward"] = other[feature["toward"]]
    assert any("filled by" in each for each in complaints(spoilt))
