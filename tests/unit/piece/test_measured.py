"""What the bench says: measured figures, done and spoiled, limits of the place (M8, K1)."""

from fractions import Fraction

import pytest
from tests.pieces.reading import changed, checked, codes, errors, model_of, text_of

from dryfit import workshop
from dryfit.diagnostics import Diagnostic, Severity

STOOL = text_of("step_stool")
CASE = text_of("wall_case")


def with_lines(*lines: str, text: str = STOOL) -> str:
    return "\n".join((text.rstrip("\n"), *lines, ""))


def told(text: str, code: str) -> Diagnostic:
    found = [finding for finding in checked(text).findings if finding.code == code]
    assert len(found) == 1, codes(checked(text))
    return found[0]


def test_a_measured_value_takes_the_place_of_the_planned_one_everywhere() -> None:
    planned, measured = model_of(STOOL), model_of(with_lines("measured overhang = 17"))
    assert planned.part("long rail").length == 350
    # Legs stand 2 further in on both sides.
    assert measured.part("long rail").length == 346


def test_a_measured_thickness_is_that_of_all_copies_and_of_what_hangs_on_it() -> None:
    model = model_of(with_lines("measured seat.thickness = 21.4"))
    assert model.part("seat").thickness == Fraction(107, 5)
    assert model.part("leg").length == Fraction(1093, 5)


def test_a_measured_sheet_is_that_of_every_part_of_it() -> None:
    text = changed(CASE, ("measured ply = 5.6\n", ""), ("ply thick", "6 thick"))
    model = model_of(with_lines("measured birch ply 6 = 5.6", text=text))
    assert model.part("back").thickness == Fraction(28, 5)
    assert "measured-unknown" in codes(checked(with_lines("measured birch ply 9 = 8.6", text=text)))


@pytest.mark.parametrize("wood", ["ply", "birch ply"])
@pytest.mark.parametrize("listed", ["", "\nhave 1 sheet of birch ply, 900 x 700 x 6, measures 5.7"])
def test_a_wood_without_its_thickness_is_told_how_it_is_written(wood: str, listed: str) -> None:
    case = changed(CASE, ("measured ply = 5.6\n", ""), ("ply thick", "6 thick"), ("ply = 6\n", ""))
    finding = told(with_lines(f"measured {wood} = 5.6{listed}", text=case), "measured-unknown")
    assert finding.hints[0].message == "say which thickness: `measured birch ply 6 = 5.6`"
    mended = with_lines(f"measured birch ply 6 = 5.6{listed}", text=case)
    assert "measured-unknown" not in codes(checked(mended))


def test_an_opening_measured_at_three_places_counts_by_its_smallest() -> None:
    text = with_lines("measured bay width = 664, 664.3, 668.5", text=CASE)
    finding = told(text, "opening-tapers")
    assert finding.figures == {"taper": Fraction(9, 2), "smallest": Fraction(664)}
    assert "measured-differs" not in codes(checked(text))


def test_what_the_piece_works_out_is_compared_with_the_bench() -> None:
    finding = told(with_lines("measured long rail.length = 349"), "measured-differs")
    assert finding.figures == {"planned": Fraction(350), "measured": Fraction(349)}


@pytest.mark.parametrize(
    ("line", "code"),
    [
        ("measured leg.width = 25", "measured-far-off"),
        ("measured front left leg.width = 39.6", "measured-one-copy"),
        ("measured leg.width = 39.5, 39.7", "measured-several"),
        ("measured leg.width = 39.5\nmeasured leg.width = 39.7", "measured-twice"),
    ],
)
def test_doubtful_measurements_are_asked_about(line: str, code: str) -> None:
    assert code in codes(checked(with_lines(line)))


def test_a_measurement_close_to_the_plan_is_taken_without_a_word() -> None:
    assert codes(checked(with_lines("measured leg.thickness = 39.6"))) == []


def planned_codes(*lines: str) -> list[str]:
    _, findings = workshop.plan(checked(with_lines(*lines)), lambda _: None)
    return sorted(finding.code for finding in findings)


def test_what_is_done_is_kept_and_must_be_an_operation_of_the_plan() -> None:
    text = with_lines("done: 3 of leg / rough length, seat / thickness, on 2026-12-05 at 14:10")
    done = model_of(text).done
    assert [(each.operation, each.count) for each in done] == [
        ("leg / rough length", 3),
        ("seat / thickness", None),
    ]
    assert {(each.date, each.clock) for each in done} == {("2026-12-05", "14:10")}
    assert planned_codes("done: leg / rough length") == ["progress-not-planned"]
    assert "done-unknown-operation" in planned_codes("done: leg / rough lenght")
    assert "done-more-than-there-are" in planned_codes("done: 5 of leg / rough length")
    assert "done-unknown" in codes(checked(with_lines("done: lge / rough length")))


def test_what_is_spoiled_is_kept_and_must_be_there() -> None:
    assert [(each.part, each.count) for each in model_of(with_lines("spoiled: 1 leg")).spoiled] == [
        ("leg", 1)
    ]
    found = errors(checked(with_lines("spoiled: 5 legs")))
    assert [finding.code for finding in found] == ["spoiled-more-than-there-are"]


@pytest.mark.parametrize(
    ("line", "code", "figures"),
    [
        ("at most 250 high, the shelf", "limit-kept", {"size": 240, "limit": 250}),
        ("at most 230 high, the shelf", "limit-broken", {"size": 240, "limit": 230}),
        ("seat top at most 240", "limit-kept", {"size": 240, "limit": 240}),
        ("long rail at least 360 long", "limit-broken", {"size": 350, "limit": 360}),
    ],
)
def test_a_limit_is_told_with_what_it_is_kept_or_broken_by(
    line: str, code: str, figures: dict[str, int]
) -> None:
    assert told(with_lines(line), code).figures == figures


def test_a_range_on_a_parts_line_is_such_a_limit() -> None:
    text = changed(STOOL, ("1 seat, flat, 22 thick", "1 seat, flat, 22 thick, 310 to 330 wide"))
    finding = told(text, "limit-broken")
    assert finding.figures == {"size": 300, "limit": 310}


def test_a_measurement_that_nothing_waits_for_is_refused() -> None:
    found = errors(checked(with_lines("measured overall width = 418")))
    assert [finding.code for finding in found] == ["measured-unknown"]
    bench = text_of("boot_bench")
    assert "measured-unknown" not in codes(
        checked(with_lines("measured base length = 938", text=bench))
    )


def test_a_measurement_that_leaves_the_plan_as_drawn_says_so() -> None:
    finding = told(
        with_lines("measured base length = 938", text=text_of("boot_bench")), "measured-not-taken"
    )
    assert finding.severity is Severity.WARNING
    assert finding.figures == {"measured": 938, "drawn": 940}
