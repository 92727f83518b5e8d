"""Tenons without a written place keep clear of laps, housings and mortises; written ones do not."""

from fractions import Fraction

from tests.pieces.reading import changed, checked, codes, mm, model_of, text_of

from dryfit.placing.free_places import Blocked, clear_place

PLACED = "tenon 20 long 8 thick 40 wide, 5 from bottom, into posts"
BENCH = text_of("boot_bench")


def place(
    usual: tuple[int, int], limits: tuple[int, int], *blocked: tuple[int, int], least: int = 20
) -> tuple[Fraction, Fraction] | None:
    low, high = mm(*usual)
    found = clear_place(
        (low, high),
        (Fraction(limits[0]), Fraction(limits[1])),
        [Blocked(Fraction(start), Fraction(end), "the lap") for start, end in blocked],
        Fraction(least),
    )
    return found[0] if found else None


def test_a_clear_place_stays() -> None:
    assert place((30, 70), (5, 95), (75, 120)) is None


def test_it_moves_no_further_than_it_must() -> None:
    assert place((30, 70), (5, 95), (50, 120)) == mm(10, 50)
    assert place((30, 70), (5, 95), (-20, 40)) == mm(40, 80)


def test_it_is_made_narrower_where_it_must_be() -> None:
    assert place((30, 70), (5, 95), (35, 120)) == mm(5, 35)


def test_where_there_is_no_room_it_stays_and_is_reported() -> None:
    assert place((30, 70), (5, 95), (15, 120)) is None


def test_the_wider_room_is_taken() -> None:
    assert place((30, 70), (5, 95), (25, 45)) == mm(45, 85)


def test_an_apron_keeps_clear_of_the_lap_in_its_post() -> None:
    # The lap stands 45 from the top; 5 between leaves 0 to 50 of the apron's 100.
    model = model_of(changed(BENCH, (PLACED, "tenon 20 long 8 thick into posts")))
    joint = next(each for each in model.joints if each.kind == "mortise and tenon")
    low = model.copy(joint.guest).box.low[2]
    assert (joint.region.low[2] - low, joint.region.high[2] - low) == mm(10, 50)
    (said,) = [each for each in model.assumptions if "clear of" in each.text]
    assert said.text == (
        "the tenons of the aprons are 40 wide, 10 from bottom, clear of the lap for the top end "
        "rail"
    )


def test_the_line_to_write_instead_says_the_same() -> None:
    model = model_of(changed(BENCH, (PLACED, "tenon 20 long 8 thick into posts")))
    said = next(each for each in model.assumptions if "clear of" in each.text)
    assert said.instead is not None
    line = next(line for line in BENCH.splitlines() if "2 aprons" in line)
    written = model_of(changed(BENCH, (line, said.instead)))
    regions = {joint.region for joint in model.joints}
    assert {joint.region for joint in written.joints} == regions


def test_a_written_place_is_never_moved() -> None:
    found = checked(changed(BENCH, ("5 from bottom, into posts", "30 from bottom, into posts")))
    (told,) = [each for each in found.findings if each.code == "mortise-meets-lap"]
    assert "with `after glue up end frame`" in told.hints[0].message


def test_a_joint_cut_after_the_glue_up_may_lie_in_the_lap() -> None:
    late = "30 from bottom, into posts, after glue up end frames"
    text = changed(BENCH, ("5 from bottom, into posts", late))
    assert codes(checked(text)) == []
    model = model_of(text)
    mortises = [each for each in model.part("post").features if each.role == "mortise"]
    assert {each.after for each in mortises} == {"end frame"}
    assert {each.after for each in model.part("apron").features if each.mate} == {None}
