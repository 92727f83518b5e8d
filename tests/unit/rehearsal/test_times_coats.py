"""Coats dry before what follows, and no dust is made while they are wet (TRADE D5, D7)."""

from dataclasses import replace

from tests.unit.rehearsal.damaged_times import DAY, HOUR, Built, built

from dryfit.rehearsal.times.coats_dry import Coat, coats_wanted

FRAME = "flat_lap_frame"
STOOL = "step_stool"


def with_apart(plan: Built, apart: int | None, product: str | None = None) -> Built:
    """The same piece with another time between coats in its notes, or another product."""
    rows = tuple(
        replace(
            row, products=tuple((product or name, count, apart) for name, count, _ in row.products)
        )
        for row in plan.goal.coats
    )
    return replace(plan, goal=replace(plan.goal, coats=rows))


def test_notes_then_shop_say_how_long_a_coat_dries() -> None:
    """Hard wax oil: 8 h in the notes of the stool, 12 h in the shop file."""
    stool = built(STOOL)
    assert coats_wanted(stool.goal, stool.shop)["seat / coat 2"] == Coat("hard wax oil", 8 * HOUR)
    shop = coats_wanted(with_apart(stool, None).goal, stool.shop)
    assert shop["seat / coat 2"] == Coat("hard wax oil", 12 * HOUR)
    assert sorted(shop) == ["base / coat 1", "base / coat 2", "seat / coat 1", "seat / coat 2"]


def test_a_finish_that_nobody_describes_dries_a_day() -> None:
    stool = with_apart(built(STOOL), None, "bear grease")
    assert coats_wanted(stool.goal, stool.shop)["base / coat 1"] == Coat("bear grease", DAY)


def test_coats_of_single_surfaces_have_names_of_their_own() -> None:
    """`finish seat bottom` comes before the seat is finished all round."""
    trestle = built("trestle")
    assert "seat / coat 1 / bottom" in coats_wanted(trestle.goal, trestle.shop)


def test_the_next_coat_waits_until_the_one_before_is_dry() -> None:
    """Coats a day apart, where the notes ask for a day and a half."""
    frame = built(FRAME)
    slow = with_apart(frame, 36 * HOUR).with_operation("frame / coat 1", after_tenths=36 * HOUR)
    number = frame.plan.step_of("frame / coat 1").number
    hurried = slow.with_minutes(number, after=36 * HOUR)
    told = [fault for fault in hurried.faults() if fault.operation == "frame / coat 2"]
    assert "begins 24 h after frame / coat 1, which needs 36 h to dry" in told[0].message
    assert hurried.reasons() == {"WAIT"}


def test_a_coat_that_is_laid_too_soon_is_found() -> None:
    """The last coat of the frame two hours early."""
    frame = built(FRAME)
    number = frame.plan.step_of("frame / coat 2").number
    back = -(frame.step(number).starts.tenths % DAY)
    assert frame.moved(number, back, back).summed().reasons() == {"WAIT"}


def test_a_coat_rests_as_long_as_it_dries() -> None:
    frame = built(FRAME)
    number = frame.plan.step_of("frame / coat 2").number
    short = frame.with_operation("frame / coat 2", after_tenths=HOUR)
    assert short.with_minutes(number, after=HOUR).summed().reasons() == {"WAIT"}


def test_nothing_is_fitted_on_a_wet_coat() -> None:
    """The seat is screwed on when the base is dry, though the seat itself is not in that coat."""
    stool = built(STOOL)
    fit, coat = (stool.plan.step_of(name) for name in ("seat / fit", "base / coat 2"))
    back = coat.ends.tenths + HOUR - fit.starts.tenths
    early = stool.moved(fit.number, back, back).summed()
    assert early.reasons() == {"WAIT"}
    told = {fault.message for fault in early.faults() if fault.operation == "seat / fit"}
    assert "seat / fit begins 1 h after base / coat 2, which needs 8 h to dry" in told


def test_what_is_finished_before_a_glue_up_is_dry_by_then() -> None:
    """The panel of the door is coated before the door is glued round it."""
    door = built("panel_door")
    wanted = coats_wanted(door.goal, door.shop)
    last = max(name for name in wanted if name.startswith("panel / coat "))
    glue, coat = (door.plan.step_of(name) for name in ("door / glue up", last))
    assert glue.starts.tenths >= coat.ends.tenths + wanted[last].recoat
    number = coat.number
    rest = glue.starts.tenths - coat.ends.tenths + 1
    slow = with_apart(door, rest)
    assert any(
        fault.operation == "door / glue up" and last in fault.message for fault in slow.faults()
    )
    assert door.step(number).operations[0].id == last


def test_no_dust_is_made_in_the_room_of_a_wet_coat() -> None:
    """The base is sanded two days after the seat got its last coat; dust-free takes three."""
    stool = built(STOOL).with_product("hard wax oil", dust_free=3 * DAY)
    assert stool.reasons() == {"DUST"}
    assert {fault.operation for fault in stool.faults()} == {"base / sand 120", "base / sand 180"}
    rooms = replace(stool, shop=replace(stool.shop, one_room=False))
    assert rooms.faults() == ()


def test_sanding_by_hand_makes_dust_too() -> None:
    stool = built(STOOL).with_product("hard wax oil", dust_free=3 * DAY)
    name = "base / sand 120"
    assert stool.operation(name).kind == "sand"
    number = stool.plan.step_of(name).number
    by_hand = stool.with_step(number, station="bench", settings=(), changed=())
    assert name in {each.operation for each in by_hand.faults() if each.reason.name == "DUST"}


def test_test_cuts_make_dust() -> None:
    """Dust begins with the test cuts, which come just before the work."""
    stool = built(STOOL)
    number = stool.plan.step_of("base / sand 120").number
    coat = stool.plan.step_of("seat / coat 2")
    wait = stool.step(number).starts.tenths - coat.ends.tenths
    just = stool.with_product("hard wax oil", dust_free=wait)
    assert just.faults() == ()
    assert "DUST" in just.with_minutes(number, tests=30).reasons()


def test_a_finish_unknown_to_the_shop_is_wet_for_eight_hours_at_most() -> None:
    """TRADE D7; what may be coated again is dry, whatever it is."""
    stool = built(STOOL)
    number = stool.plan.step_of("base / sand 120").number
    late = stool.plan.step_of("base / glue up").ends.tenths
    names = ("bear grease", 8 * HOUR)
    unknown = with_apart(stool, names[1], names[0])
    assert unknown.faults() == ()
    assert stool.step(number).starts.tenths > late
