"""The order within a glue-up: every member has a straight path when its turn comes."""

from fractions import Fraction
from itertools import pairwise

import pytest
from tests.pieces.reading import FILES, checked_piece, errors, model_of, text_of
from tests.unit.operations.worked import listed, operation, piece, said

from dryfit.geometry.box import Box, spanning
from dryfit.geometry.solid import Solid
from dryfit.operations.gluing.glue_notes import cannot_go_together
from dryfit.operations.gluing.insertion import DIRECTIONS, insertion_of, put_together
from dryfit.operations.members import all_copies, assembly_named
from dryfit.placing.model import Model

FRAME = """piece Framed panel
units mm
overall 400 wide, 22 deep, 560 high
timber walnut
2 stiles, upright, 50 x 22, at left and right
{}
glue up frame: stiles, panel, rails, cure 1 h
"""
RAILS = "2 rails, across, 60 x 22, at top and bottom, tenon 30 long 8 thick into stiles"
PANEL = "1 panel, facing front, 10 thick, inside stiles and rails, groove 9"


def order(model: Model, name: str) -> tuple[str, ...]:
    assembly = assembly_named(model, name)
    assert assembly is not None
    return insertion_of(assembly, model).order


def test_a_panel_goes_in_before_the_groove_that_closes_on_it() -> None:
    # TRADE C4.4: one stile, the rails, the panel dry, the other stile.
    assert order(piece("panel_door"), "door") == (
        "left stile",
        "bottom rail",
        "top rail",
        "panel",
        "right stile",
    )


def test_a_stile_goes_in_last_however_the_notes_list_the_parts() -> None:
    row = order(model_of(FRAME.format(f"{RAILS}\n{PANEL}")), "frame")
    assert row[0] == "left stile"
    assert row[-1] == "right stile"


def test_shelves_go_in_before_the_second_side() -> None:
    row = order(piece("shelf_box"), "case")
    assert row == ("left side", "top", "bottom", "shelf 1", "shelf 2", "right side")


def test_rails_tenoned_into_two_ladders_go_in_between_them() -> None:
    row = order(piece(), "base")
    assert row == ("end frame 1", "front apron", "back apron", "end frame 2")


def test_a_stretcher_between_rails_goes_in_before_the_second_rail() -> None:
    row = order(piece("housed_stretcher"), "base")
    assert row[:3] == ("front long rail", "stretcher", "back long rail")


def test_parts_that_close_two_ways_are_put_together_first_and_go_on_as_one() -> None:
    # All of a base at once: a leg with tenons from two sides cannot go in last, a ladder can.
    text = text_of("apron_table")
    kept = [line for line in text.splitlines() if not line.startswith("glue up")]
    kept.append("glue up base: legs, long aprons, short aprons, cure 2 h")
    model = model_of("\n".join(kept) + "\n")
    base = model.assemblies[0]
    found = insertion_of(base, model)
    assert found.stuck == ()
    assert [len(unit) for unit in found.units] == [3]
    assert found.order[3:5] == ("front long apron", "back long apron")
    work, _ = listed(model)
    first = said(operation(work, "base / glue up").details[0])
    assert first.startswith("Put the ")
    assert first.endswith(" together first: they go on as one")


def test_members_that_hold_one_another_every_way_are_named() -> None:
    members = ("shell", "core")
    each = {"shell": frozenset({"core"}), "core": frozenset({"shell"})}
    found = put_together(members, dict.fromkeys(DIRECTIONS, each), {})
    assert found.stuck == members
    assert found.holders == ("core",)
    assembly = piece("panel_door").assemblies[0]
    (finding,) = cannot_go_together(assembly, found)
    assert (finding.code, finding.rule, finding.severity.value) == (
        "cannot-go-together",
        "H57",
        "error",
    )
    assert "shell and core hold one another" in finding.message
    assert "stopped by core" in finding.notes[0].message


def cells(member: str, model: Model) -> list[Box]:
    inner = assembly_named(model, member)
    rows: list[Box] = []
    for name in (member,) if inner is None else all_copies(inner, model):
        copy = model.copy(name)
        cuts = tuple(
            feature.box(copy.box, copy.frame)
            for feature in model.part_of(name).features
            if copy.hand in feature.hands
        )
        rows += Solid(copy.box, cuts).cells()
    return rows


def free_way(moving: list[Box], fixed: list[Box]) -> bool:
    """Whether the boxes can be pulled off along some axis: the space behind them is empty."""
    far = Fraction(10**6)
    for axis, side in DIRECTIONS:
        swept = []
        for box in moving:
            low, high = list(box.low), list(box.high)
            (high if side > 0 else low)[axis] += side * far
            swept.append(Box((low[0], low[1], low[2]), (high[0], high[1], high[2])))
        around = spanning(tuple(swept))
        near = [box for box in fixed if around.overlap(box)]
        if not any(a.overlap(b) for a in swept for b in near):
            return True
    return False


@pytest.mark.parametrize("name", sorted(FILES))
def test_every_member_has_a_straight_path_when_its_turn_comes(name: str) -> None:
    found = checked_piece(name)
    if errors(found):
        pytest.skip("a piece with errors is not built")
    model = found.model
    assert model is not None
    for assembly in model.assemblies:
        insertion = insertion_of(assembly, model)
        assert sorted(insertion.order) == sorted(assembly.of)
        assert not insertion.stuck
        if insertion.units:
            continue
        joined: list[Box] = []
        for member in insertion.order:
            own = cells(member, model)
            assert free_way(own, joined), (assembly.name, member)
            joined += own


def test_the_glue_up_lists_its_parts_in_that_order() -> None:
    work, _ = listed(piece("panel_door"))
    glue = operation(work, "door / glue up").glue_up
    assert glue is not None
    assert glue.parts == order(piece("panel_door"), "door")
    assert all(a != b for a, b in pairwise(glue.parts))


def test_a_solid_panel_stays_dry() -> None:
    # TRADE B9, C4.4: glued in, it would split.
    work, _ = listed(piece("panel_door"))
    details = [said(row) for row in operation(work, "door / glue up").details]
    assert details[0] == "Glue goes on 4 mortises and tenons of rail into stile"
    assert details[1].startswith("No glue in the grooves of stile and rail: the panel stays dry")
    assert details[1].endswith("in the middle of the top rail and the bottom rail")


def test_a_plywood_bottom_lies_dry_in_its_grooves() -> None:
    work, _ = listed(piece("tray"))
    details = operation(work, "tray / glue up").details
    assert (
        said(details[-1])
        == "No glue in the grooves of long side and end: the bottom lies in them dry"
    )


def test_a_rail_left_out_of_the_frame_it_is_tenoned_into_cannot_go_in_later() -> None:
    text = """piece Ladder
units mm
overall 400 wide, 22 deep, 560 high
timber walnut
2 stiles, upright, 50 x 22, at left and right
2 rails, across, 60 x 22, at top and bottom, tenon 30 long 8 thick into stiles
1 rung, across, 40 x 22, up 260, tenon 30 long 8 thick into stiles
glue up frame: stiles, rails, cure 1 h
glue up ladder: frame, rung, cure 1 h
"""
    _, findings = listed(model_of(text))
    (found,) = [each for each in findings if each.code == "cannot-go-together"]
    assert found.message.startswith("glue up ladder: frame and rung hold one another")
    assert found.span is not None
    assert found.span.line == 9


def test_boards_that_lie_on_screwed_cleats_go_into_the_glued_chest_after_these() -> None:
    model = piece("linen_chest")
    chest = next(each for each in model.assemblies if each.name == "chest")
    found = insertion_of(chest, model)
    assert found.order[:3] == ("second end", "front floor cleat", "back floor cleat")
    # Tongues hold the boards of the floor together: they go down as one.
    assert [len(unit) for unit in found.units] == [7]
