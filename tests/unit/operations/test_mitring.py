"""How mitres are cut: at which machine, lying how, with what set."""

from dataclasses import replace
from pathlib import Path

import pytest
from tests.pieces.reading import changed, model_of, model_of_piece, text_of

from dryfit.operations.listing.work_list import work_list
from dryfit.plan.operation import Operation
from dryfit.shop.read import read_shop
from dryfit.shop.shop import Shop

FRAME = text_of("mitred_frame")
BOX = text_of("mitred_box")
SHOPS = Path(__file__).resolve().parents[2] / "shops"


def shop_of(shop_file: str | None) -> Shop:
    """The shop of one of the shop files of the tests, or the one that is shipped."""
    shop, _ = read_shop(None if shop_file is None else SHOPS / shop_file, {})
    assert shop is not None
    return shop


def mitres(text: str, shop_file: str | None = None) -> list[Operation]:
    """The operations that cut mitres."""
    work, _ = work_list(model_of(text), shop_of(shop_file))
    assert work is not None
    return [each for each in work.operations if each.kind == "mitre"]


def figures(operation: Operation) -> list[tuple[str, object]]:
    """What is set, axis by axis."""
    return [(setting.axis, setting.value) for setting in operation.settings]


def held(operation: Operation) -> list[tuple[str | None, str | None, str | None]]:
    """Down, at the fence, at the stop: a row for each end."""
    holds = [work.hold for work in operation.work]
    return [(h.down, h.against_fence, h.at_stop) for h in holds if h is not None]


def test_a_frame_is_sawn_at_the_mitre_saw_from_one_stop_for_both_ends() -> None:
    stile, rail = mitres(FRAME)
    assert stile.station == rail.station == "mitre saw"
    assert dict(figures(stile)) == {"angle": 45, "stop": 560}
    assert dict(figures(rail)) == {"angle": 45, "stop": 420}
    # The outer edge at the fence each time, so the part is turned over for its other end.
    assert held(stile) == [("F", "E", "R2"), ("B", "E", "R")]
    # TRADE B26: two tests, once for all that one angle cuts; one visit.
    assert stile.tests == rail.tests == 2
    assert stile.trial == rail.trial == stile.together == rail.together


def test_a_box_is_sawn_with_the_blade_tilted_the_outer_face_down() -> None:
    long, short = mitres(BOX)
    assert long.station == short.station == "table saw"
    # 18 of wood, 12 of sled and 3 above; along the slope of the blade 33 x 1.41 is 47 of 79.
    assert figures(long) == [
        ("cutter", "combination blade"),
        ("accessory", "sled"),
        ("tilt", 45),
        ("height", 33),
        ("stop", 520),
    ]
    assert {down for down, _, _ in held(long)} == {"F"}


def test_a_board_too_long_for_the_sled_stands_on_edge_at_the_mitre_saw() -> None:
    long, _ = mitres(changed(BOX, ("520 wide", "900 wide")))
    assert long.station == "mitre saw"
    assert [(down, fence) for down, fence, _ in held(long)] == [("E", "F"), ("E2", "F")]


@pytest.mark.parametrize("text", [FRAME, BOX])
def test_without_machines_they_are_shot_by_hand(text: str) -> None:
    by_hand = mitres(text, "hand_tools.toml")
    assert len(by_hand) == 2
    for operation in by_hand:
        assert operation.station == "bench"
        assert "shooting board" in str(operation.details)


def test_the_mitre_saw_cuts_no_wider_than_its_blade_reaches_slantwise() -> None:
    """300 wide square is 212 wide at 45 degrees (general formula: 300 / root 2)."""
    assert mitres(changed(FRAME, ("48 x 20", "190 x 20")))[0].station == "mitre saw"
    wide = changed(FRAME, ("420 wide", "620 wide"), ("48 x 20", "215 x 20"))
    assert mitres(wide)[0].station == "bench"


def test_the_groove_is_cut_before_the_ends_are_mitred() -> None:
    """TRADE B26: groove -> mitre."""
    shop, _ = read_shop(None, {})
    assert shop is not None
    work, _ = work_list(model_of(FRAME), shop)
    assert work is not None
    pairs = {(rule.before, rule.after) for rule in work.rules}
    assert ("rail / groove for panel / 1", "rail / mitre") in pairs


def test_boards_of_one_plinth_go_to_one_machine() -> None:
    """TRADE B0.2: one method for each family; the long front is no work for the sled."""
    plinth = """piece Plinth
units mm
overall 800 wide, 300 deep, 80 high
timber oak
1 front, across, on edge, 80 x 18, at front
2 returns, front to back, on edge, 300 x 80 x 18, at left and right
returns crossing front: mitre, 1 spline 3.2 thick 10 deep
glue up plinth: front, returns
"""
    assert {each.station for each in mitres(plinth)} == {"mitre saw"}
    # Its two corners are keyed, and its open ends are not.
    (row,) = (each for each in model_of(plinth).hardware if each.item == "key")
    assert row.count == 2


def test_the_stop_waits_for_what_the_length_waited_for_and_no_longer_than_it() -> None:
    model = model_of_piece("beaded_door")
    bead = model.part("side bead")
    taken = replace(
        bead, measures=tuple(replace(each, taken=each.nominal) for each in bead.measures)
    )
    known = replace(model, parts=tuple(taken if each is bead else each for each in model.parts))
    for row, waits in ((model, "door height"), (known, None)):
        work, _ = work_list(row, shop_of(None))
        assert work is not None
        stops = [
            setting
            for each in work.operations
            if each.id in {"side bead / length", "side bead / mitre"}
            for setting in each.settings
            if setting.axis == "stop"
        ]
        assert [stop.waits for stop in stops] == [waits, waits]
        assert {stop.worked for stop in stops} == {("door height",)}
