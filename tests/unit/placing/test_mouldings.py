"""Applied mouldings: strips on faces and round openings, mitred, and kept off what moves."""

from tests.pieces.reading import changed, checked, codes, errors, model_of, text_of
from tests.unit.rehearsal.played import played

from dryfit.plan.operation import Operation
from dryfit.plan.plan import Plan

DOOR = text_of("beaded_door")
ON_A_FACE = text_of("moulded_door")
IN_AN_OPENING = """piece Beaded door
units mm, to nearest 1
overall 420 wide, 24 deep, 640 high
timber oak
2 stiles, upright, facing front, 640 x 60 x 24, at left and right
2 rails, across, on edge, 60 x 24, tenon 35 long 8 thick into stiles, at bottom and top
1 panel, upright, facing front, 6 thick, glued from 3, inside stiles and rails, groove 9
bay = opening between stiles and rails
1 beading, as moulding, 9 deep, in bay, strip 9, gap 0, 0 from front
beading's side strips against stiles: glued
beading's end strips against rails: glued
glue up door: stiles, rails, panel, cure 2 h
glue up beaded door: door, beading, with slow white glue, pins
finish oil, 2 coats
"""


def operations(plan: Plan) -> dict[str, Operation]:
    return {op.id: op for step in plan.steps for op in step.operations}


def test_a_bead_is_as_long_as_its_opening_from_point_to_point() -> None:
    """Inside 420 - 2 x 60 and 640 - 2 x 60; TRADE B25: outside point to point = outside."""
    model = model_of(DOOR)
    assert model.part("end bead").length == 300
    assert model.part("side bead").length == 520
    assert model.part("end bead").shoulder_length == 300 - 2 * 9


def test_it_is_measured_along_what_is_glued_by_then() -> None:
    """The beads that it is mitred to are not in the door yet when the door is measured."""
    model = model_of(DOOR)
    along = {part.name: measure.along for part in model.parts for measure in part.measures}
    assert along == {
        "side bead": "along the stiles, where the side beads will lie",
        "end bead": "along the rails, where the end beads will lie",
    }


def test_it_is_glued_to_the_frame_and_not_to_the_panel() -> None:
    model = model_of(DOOR)
    beads = {"side bead", "end bead"}
    pairs = {
        frozenset({model.part_of(joint.guest).name, model.part_of(joint.host).name})
        for joint in model.joints
        if joint.glued
    }
    assert not any("panel" in pair and pair & beads for pair in pairs)
    assert {frozenset({"side bead", "stile"}), frozenset({"end bead", "rail"})} <= pairs


def test_it_is_measured_then_cut_and_mitred_at_the_measured_stop() -> None:
    """TRADE C5.1 to C5.3: glued, cured, measured, cut."""
    found = played(DOOR)
    order = [op.id for step in found.plan.steps for op in step.operations]
    measure = next(name for name in order if name.endswith("/ measure"))
    for part in ("side bead", "end bead"):
        row = [order.index(each) for each in (measure, f"{part} / length", f"{part} / mitre")]
        assert row == sorted(row)
        stop = next(
            s for s in operations(found.plan)[f"{part} / mitre"].settings if s.axis == "stop"
        )
        assert stop.measure is not None
    assert found.faults() == ()


def test_the_pins_go_into_the_frame() -> None:
    glued = operations(played(DOOR).plan)["beaded door / glue up"]
    said = " ".join(str(word) for detail in glued.details for word in detail)
    assert "pins through the side beads and the end beads into the stiles and the rails" in said
    assert "strap clamp" not in said


def test_strips_lie_on_a_face_and_are_refused_glued_across_solid_wood() -> None:
    """TRADE G8: nothing is glued across the grain of a solid panel over 125 mm."""
    model = model_of(ON_A_FACE)
    assert model.part("end strip").length == 400 - 2 * 40
    assert sum(joint.kind == "mitre" for joint in model.joints) == 4
    assert played(ON_A_FACE).faults() == ()
    solid = changed(ON_A_FACE, (", of plywood", ""), ("width x 18", "width x 18, glued from 4"))
    assert "glued-across-grain" in {each.code for each in errors(checked(solid))}


def test_the_shipped_pattern_lies_in_an_opening_and_is_cut_to_it() -> None:
    model = model_of(IN_AN_OPENING)
    end, side = (model.part(f"beading > {name} strip") for name in ("end", "side"))
    assert end.length == 300
    assert side.length == 520
    assert end.measure is not None
    assert "mitre-does-not-close" not in codes(checked(IN_AN_OPENING))
    assert played(IN_AN_OPENING).faults() == ()


def test_strips_in_an_opening_are_glued_to_what_bounds_it() -> None:
    side = "2 side beads, upright, facing front, 9 x 9, in bay, spread across"
    end = "2 end beads, across, on edge, 9 x 9, in bay, spread up and down"
    mitred = "end beads crossing side beads: mitre"
    lines = (*(f"{each}, no gap at ends, 0 from front, glued" for each in (side, end)), mitred)
    text = changed(
        IN_AN_OPENING,
        ("1 beading, as moulding, 9 deep, in bay, strip 9, gap 0, 0 from front", "\n".join(lines)),
        ("beading's side strips against stiles: glued\n", ""),
        ("beading's end strips against rails: glued\n", ""),
        ("door, beading,", "door, side beads, end beads,"),
    )
    model = model_of(text)
    butts = [each for each in model.joints if each.kind == "glued butt"]
    pairs = sorted((model.part_of(j.guest).name, model.part_of(j.host).name) for j in butts)
    assert pairs == [("end bead", "rail")] * 2 + [("side bead", "stile")] * 2
    assert played(text).faults() == ()
