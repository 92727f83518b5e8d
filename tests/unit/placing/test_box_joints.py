"""A finger-jointed box worked by hand, and what keeps fingers out (TRADE B13, H12, B25)."""

from dataclasses import replace
from pathlib import Path

import pytest
from tests.pieces.reading import changed, checked, codes, mm, model_of, text_of
from tests.unit.rehearsal.played import Played, played

from dryfit import workshop
from dryfit.diagnostics import Source
from dryfit.notes import source_of
from dryfit.placing.model import Model
from dryfit.plan.operation import Operation
from dryfit.rehearsal.fault import Reason
from dryfit.workshop import Checked

SHOPS = Path(__file__).parents[2] / "shops"

BOX = text_of("finger_box")
CODE = "box-joint-does-not-fit"


@pytest.fixture(scope="module")
def box() -> Model:
    return model_of(BOX)


def checked_in(text: str, shop: str) -> Checked:
    """The notes checked in one of the other shops."""
    source = source_of("notes.dryfit", text.encode())
    assert isinstance(source, Source)
    return workshop.check(source, SHOPS / f"{shop}.toml", {})


def sockets(model: Model, part: str, surface: str) -> list[tuple[int, int]]:
    """Where the sockets of an end begin and stop, from the reference edge, in whole mm."""
    return [
        (int(each.along[0]), int(each.along[1]))
        for each in sorted(model.part(part).features, key=lambda each: each.along)
        if each.role == "finger socket" and each.surface == surface
    ]


def test_both_boards_keep_the_outside_length(box: Model) -> None:
    # B25: plus the mate's thickness at each end, which is the full outside.
    side, end = box.part("side"), box.part("end")
    assert (side.length, end.length) == mm(200, 320)
    # Between the inner faces of the mates: 200 and 320 less twice 12.
    assert (side.shoulder_length, end.shoulder_length) == mm(176, 296)


def test_thirteen_fingers_of_eight_fill_104(box: Model) -> None:
    # The ends, which are named first, begin with a finger at both edges and have six sockets;
    # the sides begin with a socket and have seven.
    assert sockets(box, "end", "R") == [(8 + 16 * turn, 16 + 16 * turn) for turn in range(6)]
    assert sockets(box, "side", "R") == [(16 * turn, 8 + 16 * turn) for turn in range(7)]
    depths = {each.depth for each in box.part("side").features if each.role == "finger socket"}
    assert depths == {*mm(12)}
    assert {joint.fingers for joint in box.joints if joint.kind == "box joint"} == {13}


def test_into_says_the_same_as_crossing(box: Model) -> None:
    text = changed(BOX, ("ends crossing sides: box joint 8", "ends into sides: finger joint 8"))
    again = model_of(text)
    for name in ("side", "end", "bottom"):
        assert again.part(name).length == box.part(name).length
        assert sockets(again, name, "R") == sockets(box, name, "R")


def test_a_width_that_fingers_do_not_fill_is_told_with_its_neighbours() -> None:
    found = checked(changed(BOX, ("104 x 12", "100 x 12"), ("104 high", "100 high")))
    (told,) = (each for each in found.findings if each.code == CODE)
    assert "12.5" in told.message
    assert told.hints[0].message == (
        "make the boards 96 or 104 wide; or have 11 or 13 fingers in all: `box joint 100 / 13`"
    )


@pytest.mark.parametrize(
    "changes",
    [
        (("box joint 8", "box joint 52"),),
        (("box joint 8", "box joint 1"),),
        (("2 ends, across, on edge, 104 x 12", "2 ends, across, on edge, 96 x 12, up 0"),),
        (("2 ends, across, on edge, 104 x 12", "2 ends, across, flat, 104 x 12"),),
    ],
)
def test_boards_that_fingers_cannot_hold(changes: tuple[tuple[str, str], ...]) -> None:
    assert CODE in codes(checked(changed(BOX, *changes)))


def test_a_finger_that_nobody_sized_is_listed_with_the_line_to_write() -> None:
    model = model_of(changed(BOX, ("box joint 8", "box joint")))
    (told,) = (each for each in model.assumptions if "fingers" in each.text)
    assert told.text == "end and side: fingers 8 wide"
    assert told.instead == "ends crossing sides: box joint 8"
    assert sockets(model, "end", "R") == sockets(model_of(BOX), "end", "R")


def test_the_fingers_that_are_offered_are_cut() -> None:
    text = changed(
        BOX, ("104 x 12", "100 x 12"), ("104 high", "100 high"), ("joint 8", "joint 100 / 13")
    )
    model = model_of(text)
    assert {joint.fingers for joint in model.joints if joint.kind == "box joint"} == {13}


@pytest.fixture(scope="module")
def play() -> Played:
    return played(BOX)


def _fingers(op: Operation) -> bool:
    return op.kind == "fingers"


def test_the_jig_is_set_a_finger_from_its_pin(play: Played) -> None:
    # TRADE B13: pin as thick as the finger, one finger from the cutter; 12 deep over a sled of 12.
    (step,) = (step for step in play.plan.steps if any(map(_fingers, step.operations)))
    settings = {axis: setting for axis, setting in step.settings if setting is not None}
    assert (settings["stop"].value, settings["stop"].far) == mm(8, 16)
    assert settings["height"].value == mm(24)[0]
    side = next(op for op in step.operations if op.id == "side / finger sockets")
    first, second, *_ = side.work[0].passes
    assert (first.spacer, first.moved) == (*mm(8), None)
    assert (second.spacer, second.moved) == (None, *mm(8))


def test_fingers_are_sanded_before_they_are_cut(play: Played) -> None:
    ids = [op.id for step in play.plan.steps for op in step.operations]
    for part in ("side", "end"):
        assert ids.index("box / sand inside 180") < ids.index(f"{part} / finger sockets")
        assert ids.index(f"{part} / groove for bottom") < ids.index(f"{part} / finger sockets")


def test_a_socket_that_is_left_out_is_seen(play: Played) -> None:
    assert not play.faults()

    def one_less(op: Operation) -> Operation:
        work = tuple(replace(row, passes=row.passes[:-1]) for row in op.work)
        return replace(op, work=work) if op.id == "end / finger sockets" else op

    assert Reason.FIT in play.with_operations(one_less).reasons()


def test_a_socket_that_goes_over_no_pin_is_seen(play: Played) -> None:
    def out_of_order(op: Operation) -> Operation:
        if op.id != "end / finger sockets":
            return op
        work = tuple(replace(row, passes=(row.passes[0], row.passes[2])) for row in op.work)
        return replace(op, work=work)

    assert Reason.HOLD in play.with_operations(out_of_order).reasons()


def test_in_a_shop_without_a_dado_set_the_router_table_or_the_hand_cuts_them() -> None:
    for shop, station in (("no_dado", "router table"), ("hand_tools", "bench")):
        found = checked_in(BOX, shop)
        plan, _ = workshop.plan(found, lambda _: None)
        assert plan is not None
        ops = [op for step in plan.steps for op in step.operations if _fingers(op)]
        assert {op.station for op in ops} == {station}
