"""Where planners of shop work usually go wrong: a test for each trap, on whole plans (TRADE J)."""

from fractions import Fraction
from functools import cache

from tests.pieces.reading import changed, text_of
from tests.property.plan_oracle.documents import documents
from tests.property.plan_oracle.durations import exact
from tests.property.plan_oracle.reading import Json, Row, length, rows_of
from tests.property.test_plan_shops import SHOPS

WHOLE_HOUR = Fraction(60)


@cache
def planned(name: str, *changes: tuple[str, str], shop: str | None = None) -> tuple[Json, Json]:
    """The steps and parts documents of a piece with words of its notes replaced."""
    text = changed(text_of(name), *changes)
    found, errors = documents(text, SHOPS[shop] if shop is not None else None)
    assert found is not None, errors
    return found


def rows(document: Json, operation: str) -> list[Row]:
    """The work rows of an operation, which must be there."""
    found = [row for row in rows_of(document) if row.work["operation"] == operation]
    assert found, operation
    return found


def stands(row: Row, axis: str) -> Fraction:
    """The exact value on an axis while the row is worked."""
    return length(row.step["settings"][axis])


def begins(row: Row) -> Fraction:
    """The minute at which the row's step begins."""
    return exact(row.step["starts"]["minute"])


def ended(row: Row) -> Fraction:
    """The minute at which the row's step ends."""
    return exact(row.step["ends"]["minute"])


def test_j2_the_far_face_of_an_end_lap_stands_at_its_length() -> None:
    """45 long: the near face at 45 - 20 with the dado set, at 45 - 3.2 with the blade."""
    for shop, near in ((None, Fraction(25)), ("no_dado", Fraction(418, 10))):
        (row, *_) = rows(planned("boot_bench", shop=shop)[0], "post / end lap")
        assert stands(row, "stop") == near
        assert length(row.step["settings"]["stop"]["far"]) == 45


def test_j3_the_spacer_moves_the_cut_towards_the_end_at_the_stop() -> None:
    """Housing 80 to 125: near 105 at the stop, 105 - 25 = 80 with the spacer."""
    (row, *_) = rows(planned("boot_bench")[0], "post / housing for bottom end rail")
    (spacer,) = (length(each["spacer"]) for each in row.work["passes"] if each.get("spacer"))
    assert (stands(row, "stop"), stands(row, "stop") - spacer) == (Fraction(105), Fraction(80))


def test_j4_equal_depths_on_sled_and_bare_table_are_two_heights() -> None:
    """A groove 7 deep at the fence, cheeks 7 deep on a sled of 12."""
    steps, _ = planned("boot_bench", ("9 deep, 12 from top", "7 deep, 12 from top"))
    (groove, *_), (cheek, *_) = (
        rows(steps, "apron / groove / 1"),
        rows(steps, "apron / tenon cheeks"),
    )
    assert (stands(groove, "height"), stands(cheek, "height")) == (Fraction(7), Fraction(19))


def test_j5_parts_are_cut_to_their_length_not_to_their_shoulders() -> None:
    """Apron: 880 + 2 x 20; end rail: 250 + 2 x 45 (TRADE I1)."""
    steps, _ = planned("boot_bench")
    for name, long in (("apron", 920), ("top end rail", 340)):
        assert {stands(row, "stop") for row in rows(steps, f"{name} / length")} == {long}


def test_j6_mirrored_parts_share_height_and_depth_but_not_the_stop() -> None:
    steps, _ = planned("boot_bench")
    (one,), (other,) = (rows(steps, f"post / mortise for apron / hand {h}") for h in "AB")
    for axis in ("depth", "fence"):
        assert stands(one, axis) == stands(other, axis)
    sides = {row.step["settings"]["stop"]["side"] for row in (one, other)}
    assert sides == {"left", "right"}
    laps = rows(steps, "post / end lap")
    assert {row.number for row in laps} == {laps[0].number}
    assert {row.work["hold"]["against_fence"] for row in laps} == {"E", "E2"}


def test_j7_a_housing_follows_the_mate_and_waits_for_it() -> None:
    """Rails 47 wide: the slot is 47, so the spacer is 47 - 20, and the rails are ripped before."""
    steps, _ = planned("boot_bench", ("on edge, 45 x 30", "on edge, 47 x 30"))
    (row, *_) = rows(steps, "post / housing for bottom end rail")
    assert [length(p["spacer"]) for p in row.work["passes"] if p.get("spacer")] == [27]
    (ripped,) = rows(steps, "bottom end rail / width")
    assert ripped.number < row.number


def test_j8_every_wait_after_glue_is_its_own() -> None:
    """Next stage 60 min, level 12 h, machine 24 h, coat 24 h (shop file, TRADE C2.4)."""
    steps, _ = planned("boot_bench")
    lags: dict[str, set[float]] = {}
    for step in steps["steps"]:
        for wait in step["waits_for"]:
            if wait["lag_minutes"]:
                for row in step["work"]:
                    lags.setdefault(row["operation"], set()).add(wait["lag_minutes"])
    assert lags["base / glue up"] == {60}
    assert lags["end frame 1 / level"] == {720}
    # What else is done in the step of the top may wait for glue of its own.
    assert max(lags["top / flatten"]) == 1440
    assert lags["top / coat 2"] == {1440}
    (flat, *_), (glued, *_) = rows(steps, "top / flatten"), rows(steps, "top / glue up")
    assert begins(flat) >= ended(glued) + 24 * WHOLE_HOUR


def test_j8_glue_ups_and_coats_are_not_split_by_the_evening() -> None:
    for name in ("boot_bench", "step_stool", "panel_door"):
        for row in rows_of(planned(name)[0]):
            if row.deed == "glue up" or row.deed.startswith("coat "):
                worked = exact(row.step["minutes"]["work"])
                assert ended(row) // 1440 == (ended(row) - worked) // 1440, row.work["operation"]


def test_j9_only_the_length_waits_for_the_measurement() -> None:
    steps, _ = planned("boot_bench")
    (measure,) = steps["measures"]
    waiting = [
        row.work["operation"]
        for row in rows_of(steps)
        if any(wait["operation"] == "base length / measure" for wait in row.step["waits_for"])
    ]
    assert set(waiting) == {"slat / length"}
    (cut, *_) = rows(steps, "slat / length")
    assert cut.number > measure["step"]
    stop = cut.step["settings"]["stop"]
    assert (stop["nominal"], stop["measure"], stop["formula"]) == (
        True,
        "base length",
        "base length",
    )
    assert measure["formula"] == "along the bottom end rails, where the slats will lie"


def test_j10_buttons_stand_off_and_still_hold_when_the_top_has_moved() -> None:
    """Ash 360 wide moves 360 x 0.00274 x 4 = 3.95, 2 to each side (TRADE I1, B26.2).

    Buttons stand 2 + 0.5 off the apron, their tongue is 2.5 + 6 long: `wood.button_stand_off`
    without the movement, or `wood.movement` along the grain, breaks it.
    """
    _, parts = planned("boot_bench")
    (button,) = (part for part in parts["parts"] if part["name"] == "button")
    assert {each["along"][1] for each in button["features"]} == {"17/2 mm"}


def test_j10_what_is_tied_across_its_grain_is_told() -> None:
    """A wide top glued down all over is told, though it moves no more than one on buttons.

    `checks.restraint` looks at what is tied to what; a look at amounts alone would pass both.
    """
    _, errors = documents(
        changed(text_of("boot_bench"), ("top onto aprons: 6 buttons", "top onto aprons: glue"))
    )
    assert any("glued across its grain" in each or "H72" in each for each in map(str, errors))


def test_j11_cuts_right_through_share_the_blade_height_where_one_serves() -> None:
    """At the fence the thickness + 3, on the sled + 12 of its base besides (TRADE E2, 0.5).

    Parts of 30, 22, 20 and 18 would ask for six heights; a height that serves a thick part also
    serves a thin one, and the fence what stands from the sled, but none stands far above its cut.
    """
    steps, parts = planned("boot_bench")
    thick = {part["name"]: Fraction(part["thickness"]["mm"]) for part in parts["parts"]}
    heights: set[Fraction] = set()
    for row in rows_of(steps):
        through = row.deed in {"width", "length"} and row.step["station"] == "table saw"
        if through and row.work["part"] in thick:
            base = {"rip fence": 0, "sled": 12}[row.step["settings"]["accessory"]]
            stand, needed = stands(row, "height"), thick[row.work["part"]] + 3 + base
            assert needed <= stand <= needed + 12
            heights.add(stand)
    assert len(heights) <= 4


def test_j12_what_has_to_agree_is_done_in_one_visit() -> None:
    for name in ("boot_bench", "step_stool", "apron_table", "tee_laps"):
        steps, parts = planned(name)
        kind = {
            (part["name"], feature["id"]): feature["kind"]
            for part in parts["parts"]
            for feature in part["features"]
        }
        visits: dict[tuple[str, object], set[int]] = {}
        for row in rows_of(steps):
            kinds = {kind.get((row.work["part"], each)) for each in row.work["features"]}
            if "end lap" in kinds and row.work["hold"] is not None:
                key = ("cut", row.step["settings"]["height"]["exact"])
                visits.setdefault(key, set()).add(row.step["visit"])
            if row.deed == "thickness" and row.step["station"] == "planer":
                key = ("plane", stands(row, "thickness"))
                visits.setdefault(key, set()).add(row.step["visit"])
        assert visits
        assert {key: len(found) for key, found in visits.items()} == dict.fromkeys(visits, 1)
