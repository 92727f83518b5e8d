"""Holes and mortises in a glued frame: under the machine where the whole frame lies free (M6)."""

from __future__ import annotations

from dataclasses import replace

from tests.pieces.reading import checked, checked_piece, errors, text_of

from dryfit import workshop
from dryfit.plan.operation import Operation
from dryfit.rehearsal import rehearse
from dryfit.rehearsing import goal_of
from dryfit.workshop import Checked

TEXT = text_of("late_holes")


def holes(text: str = TEXT) -> tuple[Checked, list[Operation]]:
    found = checked(text)
    assert not errors(found)
    plan, findings = workshop.plan(found, lambda _: None)
    assert plan is not None, findings
    rows = [each for step in plan.steps for each in step.operations]
    return found, [each for each in rows if each.kind == "hole"]


def test_posts_of_a_glued_frame_are_bored_with_their_outer_edges_at_the_fence() -> None:
    # By hand: a hole of 12, 240 from the bottom end and in the middle of 50: its near sides lie
    # 240 - 6 = 234 from R and 25 - 6 = 19 from either edge.  Only the outer edges can touch.
    _, rows = holes()
    assert {row.station for row in rows} == {"drill press"}
    held = {work.copies: work.hold for row in rows for work in row.work}
    assert {names: hold.against_fence for names, hold in held.items() if hold} == {
        ("left post",): "E",
        ("right post",): "E2",
    }
    for row in rows:
        values = {each.axis: each.value for each in row.settings}
        assert [str(values[axis]) for axis in ("fence", "stop", "depth")] == ["19", "234", "25"]
        assert any(
            "Lay the glued side flat" in str(each) for detail in row.details for each in detail
        )


def test_a_frame_too_big_to_hold_is_bored_by_hand_with_the_limit() -> None:
    _, rows = holes(TEXT.replace("520 high", "1200 high"))
    (row,) = rows
    assert row.station == "bench"
    assert 900 in row.details[0]
    assert 1200 in row.details[0]


def test_a_hole_whose_face_lies_back_in_the_frame_is_bored_by_hand() -> None:
    _, rows = holes(TEXT.replace("hole in posts: front", "hole in posts: left edge"))
    assert {row.station for row in rows} == {"bench"}


def test_mortises_in_glued_laps_are_chopped_before_the_next_glue_up_is_tried() -> None:
    # The lap leaves 15 of 30 in each member, the mortise is 25 deep: only in the glued lap.  It is
    # in the middle of the rail, 440 + 30 up, and as its tenon is wide 36: 452 to 488 from R.
    found = checked_piece("face_rack")
    assert not errors(found)
    plan, _ = workshop.plan(found, lambda _: None)
    assert plan is not None
    order = [each for step in plan.steps for each in step.operations]
    rows = [each for each in order if each.id.startswith("post / mortise")]
    assert {row.station for row in rows} == {"mortiser"}
    ids = [each.id for each in order]
    for row in rows:
        assert ids.index("face 2 / level") < ids.index(row.id) < ids.index("rack / dry fit")
        (stop,) = [each for each in row.settings if each.axis == "stop"]
        assert [str(stop.value), str(stop.far)] == ["452", "488"]


def test_an_inner_edge_at_the_fence_is_found_by_the_rehearsal() -> None:
    found = checked(TEXT)
    assert found.model is not None
    assert found.shop is not None
    plan, _ = workshop.plan(found, lambda _: None)
    assert plan is not None
    goal = goal_of(found.model)
    assert rehearse(plan, goal, found.shop) == ()

    def turned(row: Operation) -> Operation:
        if row.kind != "hole":
            return row
        works = tuple(
            replace(w, copies=("right post" if w.copies == ("left post",) else "left post",))
            for w in row.work
        )
        return replace(row, work=works)

    steps = tuple(
        replace(step, operations=tuple(turned(row) for row in step.operations))
        for step in plan.steps
    )
    said = [fault.message for fault in rehearse(replace(plan, steps=steps), goal, found.shop)]
    assert any("not outside on side" in message for message in said)
