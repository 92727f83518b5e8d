"""A case with biscuits worked by hand: butted lengths, and slots that stand over one another."""

from dataclasses import replace
from fractions import Fraction

import pytest
from tests.pieces.reading import changed, checked, codes, mm, model_of, text_of
from tests.unit.rehearsal.played import Played, played

from dryfit.placing.model import Model, Part
from dryfit.rehearsal.fault import Reason

CASE = text_of("biscuit_case")


@pytest.fixture(scope="module")
def case() -> Model:
    return model_of(CASE)


def slots(part: Part, mate: str) -> list[tuple[str, tuple[Fraction, ...]]]:
    """Surface, then along, across and depth of the slots for a mate, in mm."""
    return [
        (each.surface, (*each.along, *each.across, each.depth))
        for each in part.features
        if each.mate == mate
    ]


def halves(*values: str) -> tuple[Fraction, ...]:
    return tuple(Fraction(value) for value in values)


def test_biscuits_add_nothing_to_a_length(case: Model) -> None:
    # 600 over all less two sides of 18; the sides end under the top of 18.
    assert (case.part("shelf").length, case.part("rail").length) == mm(564, 564)
    assert case.part("side").length == 400
    assert case.part("shelf").adds == ()


def test_a_number_20_stands_in_wood_of_18(case: Model) -> None:
    # 300 take three at 50, 150, 250; 56 long, in the middle of 18; 23 / 2 + 1 = 12.5 deep.
    top, side = slots(case.part("top"), "side"), slots(case.part("side"), "top")
    assert side == [
        ("R2", halves("22", "78", "7", "11", "12.5")),
        ("R2", halves("122", "178", "7", "11", "12.5")),
        ("R2", halves("222", "278", "7", "11", "12.5")),
    ]
    assert top == [
        ("B", halves(*along, *across, "12.5"))
        for along in (("7", "11"), ("589", "593"))
        for across in (("22", "78"), ("122", "178"), ("222", "278"))
    ]


def test_as_many_and_as_long_as_written(case: Model) -> None:
    # 280 take two at 60 and 220; 53 long; 19 / 2 + 1 = 10.5 deep; the shelf lies 150 to 168 up
    # and 10 behind the front edge of the sides.
    ends = slots(case.part("shelf"), "side")
    assert {(low, high) for _, (low, high, *_) in ends} == {
        halves("33.5", "86.5"),
        halves("193.5", "246.5"),
    }
    assert slots(case.part("side"), "shelf") == [
        ("B", halves("157", "161", "43.5", "96.5", "10.5")),
        ("B", halves("157", "161", "203.5", "256.5", "10.5")),
    ]


def test_they_are_bought_by_their_number(case: Model) -> None:
    bought = [(each.size, each.count) for each in case.hardware if each.item == "biscuit"]
    # Two at each end of the shelf, one #0 in each end of the rail of 60, three on each side.
    assert bought == [("#10", 4), ("#0", 2), ("#20", 6)]


def test_what_is_usual_is_listed_with_the_line_to_write(case: Model) -> None:
    told = {each.text: each.instead for each in case.assumptions if "biscuit" in each.text}
    assert told == {
        "rail into side: 1 biscuit 47 mm long, which is #0": "1 rail, across, on edge, 60 x 18, "
        "1 biscuit 47 mm long into sides, up 20",
        "top into side: 3 biscuits 56 mm long, which is #20": "top onto sides: 3 biscuits 56 mm "
        "long",
    }
    again = model_of(
        changed(
            CASE,
            ("18, biscuits into", "18, 1 biscuit 47 mm long into"),
            ("sides: biscuits", "sides: 3 biscuits 56 mm long"),
        )
    )
    assert [slots(part, "side") for part in again.parts] == [
        slots(part, "side") for part in case.parts
    ]


@pytest.mark.parametrize(
    "words",
    [
        "biscuits 50 long",  # not sold
        "1 biscuit 56 long",  # 56 + 10 in a rail of 60
        "2 biscuits 47 long",
    ],
)
def test_biscuits_without_room_are_refused(words: str) -> None:
    found = checked(changed(CASE, ("60 x 18, biscuits", f"60 x 18, {words}")))
    told = [each for each in found.findings if each.code == "biscuits-do-not-fit"]
    assert [each.severity.value for each in told] == ["error"]


def test_thin_wood_shows_a_biscuit() -> None:
    """TRADE H17: in wood under 12."""
    found = checked(changed(CASE, ("60 x 18, biscuits", "60 x 11, biscuits")))
    told = [each for each in found.findings if each.code == "biscuits-do-not-fit"]
    assert [each.severity.value for each in told] == ["warning"]


def test_slots_from_both_faces_of_one_board_meet() -> None:
    """Two shelves at one height on a divider of 18: 10.5 from either face."""
    text = changed(
        text_of("divided_box"),
        ("housing 6 into divider and left side", "2 biscuits 53 long into divider and left side"),
        ("housing 6 into divider and right side", "2 biscuits 53 long into divider and right side"),
        ("up 160", "up 120"),
    )
    found = checked(text)
    told = [each for each in found.findings if each.code == "opposed-slots"]
    assert [each.severity.value for each in told] == ["error"] * 2


def test_what_biscuits_do_not_take_is_told() -> None:
    found = checked(changed(CASE, ("18, biscuits into", "18, biscuits 47 long 9 deep into")))
    assert "joint-size-unused" in codes(found)


@pytest.fixture(scope="module")
def plan() -> Played:
    return played(CASE)


def test_the_plan_passes_its_rehearsal(plan: Played) -> None:
    assert plan.said() == ""


def test_slots_are_plunged_at_the_bench_and_the_glue_up_is_told_of_haste(plan: Played) -> None:
    rows = {op.id: op for step in plan.plan.steps for op in step.operations}
    # A shelf has two in each end: the rate of the shop file for four slots.
    assert rows["shelf / biscuit slots"].tenths == 4 * 3
    assert rows["shelf / biscuit slots"].station == "bench"
    told = ["".join(map(str, detail)) for detail in rows["case / glue up"].details]
    assert any("12 biscuits" in each or "6 biscuits of top" in each for each in told)
    assert any("swells" in each for each in told)


@pytest.mark.parametrize("part", ["shelf", "side", "top", "rail"])
def test_a_biscuit_without_its_slot_stops_the_joint(plan: Played, part: str) -> None:
    assert "find no hole in it" in plan.idle(f"{part} / biscuit slots").said()


def test_slots_that_the_notes_do_not_ask_for_are_refused(plan: Played) -> None:
    joints = tuple(replace(joint, loose_pieces=()) for joint in plan.goal.joints)
    bare = replace(plan, goal=replace(plan.goal, joints=joints))
    assert Reason.CUT in bare.reasons()


def test_the_line_to_write_keeps_where_the_glue_goes() -> None:
    found = model_of(
        changed(CASE, ("top onto sides: biscuits", "top onto sides: biscuits, unglued"))
    )
    (line,) = (each.instead for each in found.assumptions if "top into side" in each.text)
    assert line == "top onto sides: 3 biscuits 56 mm long, unglued"
