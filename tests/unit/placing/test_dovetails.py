"""A dovetailed drawer and a chest worked by hand; what keeps tails out (TRADE B14, B15, B25)."""

from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import pytest
from tests.pieces.reading import changed, checked, codes, mm, model_of, text_of
from tests.unit.rehearsal.played import Played, played

from dryfit import workshop
from dryfit.booklet.drawing.tails import tail_ends, tails_drawing
from dryfit.booklet.text import Say
from dryfit.diagnostics import Severity, Source
from dryfit.joinery.feature import Feature
from dryfit.notes import source_of
from dryfit.operations.gluing.insertion import insertion_of
from dryfit.placing.model import Model
from dryfit.plan.operation import Operation
from dryfit.rehearsal.fault import Reason

DRAWER, CHEST = text_of("dovetailed_drawer"), text_of("dovetailed_chest")
CODE = "dovetails-do-not-fit"
INCH = Fraction("25.4")


@pytest.fixture(scope="module")
def drawer() -> Model:
    return model_of(DRAWER)


@pytest.fixture(scope="module")
def chest() -> Model:
    return model_of(CHEST)


def sockets(model: Model, part: str, surface: str) -> list[Feature]:
    """What is cut out of an end between tails or pins, from the reference edge."""
    own = (each for each in model.part(part).features if each.flare is not None)
    return sorted((each for each in own if each.surface == surface), key=lambda each: each.along)


def test_lengths_reach_to_the_outside_or_to_the_lap(drawer: Model) -> None:
    # B25: through to the outside of 350 at the back; 350 - 18 + 13 with the lap of 5 in front.
    front, side, back = (drawer.part(name) for name in ("front", "side", "back"))
    assert (front.length, side.length, back.length) == mm(400, 345, 400)
    # Between the faces that the shoulders meet: 350 - 18 - 12, and 400 less two sides of 12.
    assert (side.shoulder_length, back.shoulder_length) == mm(320, 376)


def test_three_tails_in_a_width_of_100(drawer: Model) -> None:
    # Pins 6 at their ends: (100 - 12 - 12) / 3 is 76/3 wide at the end of each tail.  Over 13 deep
    # at 1 in 8 each side leans 13/8; at half depth a tail is 13/8 narrower.
    tail, lean = Fraction(76, 3), Fraction(13, 8)
    assert {joint.fingers for joint in drawer.joints if joint.kind.startswith("half")} == {3}
    pins = sockets(drawer, "front", "R")
    assert [each.along[1] - each.along[0] for each in pins] == [tail - lean] * 3
    assert [each.along[0] for each in pins] == [
        6 + lean / 2 + turn * (tail + 6) for turn in range(3)
    ]
    assert {each.depth for each in pins} == {*mm(12)}
    # 13 from the inner face, so that 5 of 18 stay.
    assert {each.across[1] - each.across[0] for each in pins} == {*mm(13)}


def test_tails_and_pins_fill_the_corner(drawer: Model) -> None:
    tails, pins = sockets(drawer, "side", "R"), sockets(drawer, "front", "R")
    if len(tails) != 4:
        tails = sockets(drawer, "side", "R2")
    total = sum((each.along[1] - each.along[0] for each in (*tails, *pins)), Fraction(0))
    assert total == 100


def test_pins_are_narrow_on_the_outside(chest: Model) -> None:
    # Pine: 1 in 6 (B14).  3/4 deep: each side leans 1/8, half of it at half depth.
    tails = sockets(chest, "side", "R")
    assert [each.flare.toward for each in tails if each.flare] == ["R"] * len(tails)
    assert {each.flare.low for each in tails[1:] if each.flare} == {INCH / 16}
    assert tails[0].flare is not None
    assert tails[0].flare.low == 0
    assert tails[0].along == (Fraction(0), INCH / 4 + INCH / 16)


def test_tails_are_as_many_as_fit_and_the_line_says_so(chest: Model) -> None:
    # B14: (6 - 1/2 + 1/4) / (1 + 1/4) = 4.6, five tails.
    assert {joint.fingers for joint in chest.joints if joint.kind == "through dovetail"} == {5}
    (told,) = (each for each in chest.assumptions if "dovetails" in each.text)
    assert "slopes of 1 in 6" in told.text
    assert told.instead is not None
    assert "5 through dovetails into sides" in told.instead


def test_sides_carry_the_tails_unless_the_line_says_otherwise(chest: Model) -> None:
    def with_tails(model: Model) -> set[str]:
        return {
            part.name
            for part in model.parts
            if any(each.role == "tail socket" for each in part.features)
        }

    assert with_tails(chest) == {"side"}
    words = ("dovetails into sides", "dovetails into sides, walls carry the tails")
    assert with_tails(model_of(changed(CHEST, words))) == {"wall"}


@pytest.mark.parametrize(
    "changes",
    [
        (("3 half-blind dovetails", "9 half-blind dovetails"),),
        (("13 deep", "16 deep"),),
        (("13 deep", "18 deep"),),
        (("2 dovetails into sides", "5 dovetails into sides"),),
        (("1 back, across, on edge", "1 back, across, flat"),),
    ],
)
def test_tails_without_room_are_refused(changes: tuple[tuple[str, str], ...]) -> None:
    assert CODE in codes(checked(changed(DRAWER, *changes)))


def test_a_thin_strip_beside_the_outer_pin_is_warned_of() -> None:
    found = checked(changed(DRAWER, ("flush with top of sides", "3 below the top of sides")))
    (told,) = (each for each in found.findings if each.code == CODE)
    assert told.severity is Severity.WARNING
    assert "a strip of 3" in told.message


def test_a_groove_in_a_pin_is_warned_of() -> None:
    # Tails of 1 in, the first from 1/4 to 1 1/4 from the bottom: a groove of 1/4 within it shows
    # nowhere, one 1 1/8 up runs into the pin.
    assert "groove-in-pin" not in codes(checked(CHEST))
    assert "groove-in-pin" in codes(checked(changed(CHEST, ("up 1/2", "up 1 1/8"))))


def test_tails_are_drawn_as_they_slope(play: Played) -> None:
    model = model_of(DRAWER)
    (step,) = (
        step for step in play.plan.steps if any(op.id == "side / tails" for op in step.operations)
    )
    first, second = tail_ends(model, step)
    assert {first.surface, second.surface} == {"R", "R2"}
    drawn = tails_drawing((first, second), Say(model.display), "tails")
    # Pins of 6 at their ends, as they are marked: not the width at half depth.
    assert 'data-mm="6"' in drawn.markup


def test_the_boards_with_tails_go_on_last(chest: Model) -> None:
    # Tails slide between their pins along the pin boards only: no wall comes off to the front.
    (assembly,) = chest.assemblies
    order = insertion_of(assembly, chest).order
    assert {name.rpartition(" ")[2] for name in order[-1:]} == {"side"}
    assert not insertion_of(assembly, chest).stuck


@pytest.fixture(scope="module")
def play() -> Played:
    return played(DRAWER)


def test_pins_are_cut_after_the_tails_that_mark_them(play: Played) -> None:
    assert not play.faults()
    ids = [op.id for step in play.plan.steps for op in step.operations]
    assert ids.index("side / tails") < ids.index("front / pins")
    assert ids.index("side / tails") < ids.index("back / pins")
    assert ids.index("drawer / sand inside 180") < ids.index("side / tails")


def test_minutes_are_those_of_the_trade(play: Played) -> None:
    # B14, B15: 28 min a corner of 100 mm through, 40 half-blind.  Two of each, the backs 80 of 100
    # wide by their pins: tails 4 x 12, pins 2 x 28 and 2 x 16 x 0.8.
    tenths = {op.id: op.tenths for step in play.plan.steps for op in step.operations}
    assert tenths["side / tails"] == 480
    assert tenths["front / pins"] == 560
    assert tenths["back / pins"] == 256


def test_pins_that_nobody_cuts_are_seen(play: Played) -> None:
    assert Reason.FIT in play.without("front / pins").reasons()


def test_tails_one_short_are_seen(play: Played) -> None:
    def one_less(op: Operation) -> Operation:
        work = tuple(replace(row, features=row.features[:-1]) for row in op.work)
        return replace(op, work=work) if op.id == "side / tails" else op

    assert Reason.FIT in play.with_operations(one_less).reasons()


JIG = """format = "dryfit-shop/1"
[accessory]
"dovetail jig" = { station = "bench", base = "0 mm" }
"""


def test_a_shop_with_a_jig_routs_tails_and_pins(tmp_path: Path) -> None:
    # B26: 20 to set up; 6 a corner of 100 through, 8 half-blind.  Tails 4 x 3 and the jig, pins
    # 2 x 5, and 2 x 3 x 0.8 for the lower back.
    file = tmp_path / "shop.toml"
    file.write_text(JIG, encoding="utf-8")
    source = source_of("notes.dryfit", DRAWER.encode())
    assert isinstance(source, Source)
    found = workshop.check(source, file, {})
    plan, _ = workshop.plan(found, lambda _: None)
    assert plan is not None
    plan, faults = workshop.rehearse(found, plan, lambda _: None)
    assert not faults
    assert plan is not None
    done = {op.id: op for step in plan.steps for op in step.operations}
    tenths = [done[name].tenths for name in ("side / tails", "front / pins", "back / pins")]
    assert sum(tenths) == 200 + 4 * 30 + 2 * 50 + 2 * 24
    assert done["side / tails"].cautions == ("router-jig",)
    assert done["side / tails"].tests == 2
