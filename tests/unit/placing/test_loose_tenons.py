"""A frame with loose tenons worked by hand: butted rails, mortises that face one another."""

from dataclasses import replace
from fractions import Fraction

import pytest
from tests.pieces.reading import changed, checked, codes, mm, model_of, text_of
from tests.unit.rehearsal.played import Played, played

from dryfit.joinery.feature import Range
from dryfit.placing.model import Model, Part
from dryfit.quantities.units import INCH
from dryfit.rehearsal.fault import Reason

FRAME = text_of("loose_tenon_frame")


@pytest.fixture(scope="module")
def frame() -> Model:
    return model_of(FRAME)


def mortises(part: Part, mate: str) -> list[tuple[str, tuple[int, ...]]]:
    """Surface, then along, across and depth of the mortises for a mate, in whole mm."""
    return [
        (each.surface, tuple(int(x) for x in (*each.along, *each.across, each.depth)))
        for each in part.features
        if each.mate == mate
    ]


def test_loose_tenons_add_nothing_to_a_length(frame: Model) -> None:
    # 500 over all less two stiles of 60.
    rail = frame.part("top rail")
    assert rail.length == 380
    assert rail.adds == ()


def test_one_of_a_third_stands_in_a_rail_of_60(frame: Model) -> None:
    # 24 / 3 = 8, five times that is 40, 60 less 12 on either side is 36: 12 to 48, and 8 to 16 of
    # 24; 25 deep.  The rail lies 640 to 700 up.
    assert mortises(frame.part("top rail"), "stile") == [
        ("R", (12, 48, 8, 16, 25)),
        ("R2", (12, 48, 8, 16, 25)),
    ]
    assert mortises(frame.part("stile"), "top rail") == [("E2", (652, 688, 8, 16, 25))]


def test_as_many_and_as_large_as_written(frame: Model) -> None:
    # 90 less two of 24 are three gaps of 14; 40 and 1 at either end are 21 in both.
    assert mortises(frame.part("stile"), "bottom rail") == [
        ("E2", (14, 38, 8, 16, 21)),
        ("E2", (52, 76, 8, 16, 21)),
    ]
    listed = [each for each in frame.hardware if each.item == "loose tenon"]
    assert [(each.size, each.count, each.purpose) for each in listed] == [
        ("48 x 36 x 8", 2, "top rail into stiles, made of offcuts"),
        ("40 x 24 x 8", 4, "bottom rail into stiles, made of offcuts"),
    ]


def test_what_is_usual_is_listed_with_the_line_to_write(frame: Model) -> None:
    (told,) = (each for each in frame.assumptions if "loose tenon" in each.text)
    words = "1 loose tenon 48 long 8 thick 36 wide"
    assert told.text == f"top rail into stile: {words}"
    assert told.instead is not None
    assert f"{words} into stiles" in told.instead
    again = model_of(changed(FRAME, ("24, loose tenon into", f"24, {words} into")))
    assert again.part("stile").features == tuple(
        replace(each, span=other.span)
        for each, other in zip(
            frame.part("stile").features, again.part("stile").features, strict=True
        )
    )


def test_in_inches_the_usual_thickness_is_that_of_an_inch_chisel() -> None:
    """A third of 1 in is nearer to the chisel of 8 mm, which no line in inches can name."""
    text = """piece Frame
units inches, to nearest 1/16
overall 20 wide, 1 deep, 28 high
timber ash
2 stiles, upright, facing front, 2 1/2 x 1, at left and right
1 rail, across, on edge, 2 1/2 x 1, loose tenon into stiles, flush top
glue up frame: stiles, rail
"""
    model = model_of(text)
    (told,) = (each for each in model.assumptions if "loose tenon" in each.text)
    assert told.instead is not None
    again = model_of(text.replace(text.splitlines()[5], told.instead))
    rows = mortises_of(model)
    assert rows == mortises_of(again)
    assert {across[1] - across[0] for _, across, _ in rows} == {INCH * 5 / 16}


def mortises_of(model: Model) -> list[tuple[Range, Range, Fraction]]:
    features = (each for part in model.parts for each in part.features)
    return [(each.along, each.across, each.depth) for each in features]


@pytest.mark.parametrize("word", ["loose tenon", "slip tenon", "floating tenon", "1 loose tenon"])
def test_its_names_in_the_trade(word: str) -> None:
    model = model_of(changed(FRAME, ("24, loose tenon into", f"24, {word} into")))
    assert [joint.kind for joint in model.joints] == ["loose tenon"] * 4


def test_loose_alone_still_keeps_a_joint_dry() -> None:
    text = changed(FRAME, ("24, loose tenon into stiles", "24, tenon 20 into stiles, loose"))
    model = model_of(text)
    tenons = [joint for joint in model.joints if joint.kind == "mortise and tenon"]
    assert [joint.glued for joint in tenons] == [False] * 2


@pytest.mark.parametrize(
    "words",
    [
        "loose tenon 14 thick",  # more than half of 24
        "loose tenon 120 long",  # 122 less 55 in the stile: in the end of the rail is room
        "loose tenon 30 long",  # 16 in either part
        "loose tenon 56 wide",  # 2 beside it
        "3 loose tenons",  # (60 - 48) / 3 each
    ],
)
def test_loose_tenons_without_room_are_refused(words: str) -> None:
    found = checked(changed(FRAME, ("24, loose tenon into", f"24, {words} into")))
    refused = codes(found).count("loose-tenon-does-not-fit")
    assert refused == (0 if "120" in words else 1)


def test_a_loose_tenon_that_reaches_too_little_is_told_so() -> None:
    found = checked(changed(FRAME, ("24, loose tenon into", "24, loose tenon 30 long into")))
    (told,) = (each for each in found.findings if each.code == "loose-tenon-does-not-fit")
    # TRADE B4: 20 mm deep at least in either part, 1 mm of it for the glue: 2 x 19.
    assert "is only 16 deep in the" in told.message
    assert "`38 long` or more" in told.hints[0].message
    model_of(changed(FRAME, ("24, loose tenon into", "24, loose tenon 38 long into")))


def test_what_loose_tenons_do_not_take_is_told() -> None:
    found = checked(changed(FRAME, ("24, loose tenon into", "24, loose tenon 20 deep into")))
    assert "joint-size-unused" in codes(found)


@pytest.mark.parametrize(
    ("wide", "words", "told"),
    [
        # As with tenons: one is no row; a row of them warns over 150 (H72).
        (110, "1 loose tenon", []),
        (140, "2 loose tenons", []),
        (160, "2 loose tenons", ["warning"]),
        (210, "2 loose tenons", ["error"]),
    ],
)
def test_a_wide_rail_held_by_a_row_of_them_splits(wide: int, words: str, told: list[str]) -> None:
    found = checked(
        changed(FRAME, ("90 x 24, 2 loose tenons 40 long 8 thick 24 wide", f"{wide} x 24, {words}"))
    )
    codes_told = [
        each.severity.value for each in found.findings if each.code == "glued-across-grain"
    ]
    assert codes_told == told


def test_two_that_meet_inside_a_part_collide() -> None:
    """Rails from both sides of a mullion of 40: 25 from either edge (H05)."""
    lines = (
        "1 mullion, upright, facing front, 40 x 24, loose tenon into top rail and bottom rail",
        "1 left rail, across, on edge, 60 x 24, loose tenon into left stile and mullion, up 300",
        "1 right rail, across, on edge, 60 x 24, loose tenon into mullion and right stile, up 300",
    )
    text = changed(FRAME, ("\n\nglue up frame:", "\n".join(("", *lines, "", "glue up frame:"))))
    found = checked(text)
    assert "mortises-collide" in codes(found), [each.message for each in found.findings]


@pytest.fixture(scope="module")
def plan() -> Played:
    return played(FRAME)


def test_the_plan_passes_its_rehearsal(plan: Played) -> None:
    assert plan.said() == ""


def test_stiles_are_mortised_by_machine_and_ends_by_hand(plan: Played) -> None:
    stations = {
        op.id: op.station
        for step in plan.plan.steps
        for op in step.operations
        if "mortise" in op.id
    }
    assert stations == {
        "stile / mortise for bottom rail / 1": "mortiser",
        "stile / mortise for bottom rail / 2": "mortiser",
        "stile / mortise for top rail": "mortiser",
        "top rail / mortise for stile": "bench",
        "bottom rail / mortise for stile": "bench",
    }


def test_the_dry_fit_says_how_much_strip_is_milled(plan: Played) -> None:
    (dry,) = (op for step in plan.plan.steps for op in step.operations if op.kind == "dry fit")
    told = [tuple(detail) for detail in dry.details]
    # Two of 48 and four of 40, with 3 for the saw each; 15 min a batch, 3 and four times 0.5.
    assert [detail[1:6:2] for detail in told] == [mm(102, 36, 8), mm(172, 24, 8)]
    assert dry.tenths == 2 * 150 + 30 + 4 * 5


@pytest.mark.parametrize("part", ["stile", "top rail", "bottom rail"])
def test_a_tenon_without_its_mortise_stops_the_joint(plan: Played, part: str) -> None:
    assert "find no hole in it" in plan.idle(f"{part} / mortise").said()


def test_mortises_that_the_notes_do_not_ask_for_are_refused(plan: Played) -> None:
    joints = tuple(replace(joint, loose_pieces=()) for joint in plan.goal.joints)
    bare = replace(plan, goal=replace(plan.goal, joints=joints))
    assert Reason.CUT in bare.reasons()
