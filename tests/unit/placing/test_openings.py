"""Openings: where they begin and end, and what stands in them, against hand-worked places."""

from __future__ import annotations

from fractions import Fraction

import pytest
from tests.pieces.reading import changed, checked, errors, model_of

from dryfit.placing.model import Model

CASE = """piece Case
units mm
overall 800 wide, 400 deep, 900 high
timber oak
2 sides, upright, facing side, 400 x 18, at left and right
1 top, flat, across, 400 x 18, housing 6 into sides, down 0
1 bottom, flat, across, 400 x 18, housing 6 into sides, up 60
bay = opening between sides and top and bottom
glue up case: sides, top, bottom, cure 2 h
"""
"""The bay is 18 to 782 (764) wide, 0 to 400 deep and 78 to 882 (804) high."""


def box(model: Model, copy: str) -> tuple[tuple[Fraction, Fraction], ...]:
    """The low and high coordinate of a copy on each axis."""
    for part in model.parts:
        for each in part.copies:
            if each.name == copy:
                return tuple(zip(each.box.low, each.box.high, strict=True))
    raise AssertionError(copy)


def span(low: str, high: str) -> tuple[Fraction, Fraction]:
    return Fraction(low), Fraction(high)


def test_an_opening_runs_from_face_to_face_and_has_figures() -> None:
    figures = model_of(CASE).figures
    assert figures["bay.width"].value == 800 - 2 * 18
    assert figures["bay.height"].value == 900 - 60 - 2 * 18
    assert figures["bay.depth"].value == 400
    terms = {term.label: term.amount for term in figures["bay.height"].terms}
    assert terms["overall height"] == 900
    assert sum(terms.values()) == figures["bay.height"].value


@pytest.mark.parametrize(
    ("line", "expected"),
    [
        (
            "1 door, facing front, 20 thick, in bay, gap 2",
            {"door": (span("20", "780"), span("0", "20"), span("80", "880"))},
        ),
        (
            "2 doors, facing front, 20 thick, in bay, gap 2, 3 between",
            {
                "left door": (span("20", "398.5"), span("0", "20"), span("80", "880")),
                "right door": (span("401.5", "780"), span("0", "20"), span("80", "880")),
            },
        ),
        (
            # 804 less four gaps of 3.9, in three.
            "3 drawer fronts, 20 thick, in bay, spread up and down, gap 3.9",
            {
                "drawer front 1": (span("21.9", "778.1"), span("0", "20"), span("81.9", "344.7")),
                "drawer front 2": (span("21.9", "778.1"), span("0", "20"), span("348.6", "611.4")),
                "drawer front 3": (span("21.9", "778.1"), span("0", "20"), span("615.3", "878.1")),
            },
        ),
        (
            "1 panel, 10 thick, in bay, gap 2 up and down, 1 at ends",
            {"panel": (span("19", "781"), span("0", "10"), span("80", "880"))},
        ),
        (
            "1 shelf, flat, 18 thick, in bay, gap 1 across, up 400, 30 from front of bay",
            {"shelf": (span("19", "781"), span("30", "400"), span("400", "418"))},
        ),
        (
            "1 sign, across, on edge, 100 x 50 x 10, in bay",
            {"sign": (span("350", "450"), span("0", "10"), span("455", "505"))},
        ),
        (
            "1 sign, across, on edge, 100 x 50 x 10, in bay, set back 12, gap 3 at top",
            {"sign": (span("350", "450"), span("12", "22"), span("829", "879"))},
        ),
        (
            # 764 less 3 x 20 in four gaps of 176.
            "3 sticks, upright, 20 x 20, in bay, spread across",
            {
                "stick 1": (span("194", "214"), span("0", "20"), span("78", "882")),
                "stick 2": (span("390", "410"), span("0", "20"), span("78", "882")),
                "stick 3": (span("586", "606"), span("0", "20"), span("78", "882")),
            },
        ),
        (
            "3 sticks, upright, 20 x 20, in bay, spread across, no gap at ends",
            {
                "stick 1": (span("18", "38"), span("0", "20"), span("78", "882")),
                "stick 2": (span("390", "410"), span("0", "20"), span("78", "882")),
                "stick 3": (span("762", "782"), span("0", "20"), span("78", "882")),
            },
        ),
        (
            # Two whole gaps and two halves of 704 / 3.
            "3 sticks, upright, 20 x 20, in bay, spread across, half a gap at ends",
            {
                "stick 1": (span("406/3", "466/3"), span("0", "20"), span("78", "882")),
                "stick 2": (span("390", "410"), span("0", "20"), span("78", "882")),
                "stick 3": (span("1934/3", "1994/3"), span("0", "20"), span("78", "882")),
            },
        ),
        (
            "2 sticks, upright, 20 x 20, in bay, 100 between",
            {
                "left stick": (span("330", "350"), span("0", "20"), span("78", "882")),
                "right stick": (span("450", "470"), span("0", "20"), span("78", "882")),
            },
        ),
    ],
)
def test_what_stands_in_an_opening_lies_where_worked_by_hand(
    line: str, expected: dict[str, tuple[tuple[Fraction, Fraction], ...]]
) -> None:
    model = model_of(f"{CASE}{line}\n")
    assert {copy: box(model, copy) for copy in expected} == expected


def test_the_width_of_doors_is_a_sum_from_the_opening() -> None:
    model = model_of(f"{CASE}2 doors, facing front, 20 thick, in bay, gap 2, 3 between\n")
    figure = model.figures["door.width"]
    terms = {term.label: term.amount for term in figure.terms}
    assert terms == {
        "1/2 of width of bay": 382,
        "gap of door": -2,
        "1/2 of gap between doors": Fraction(-3, 2),
    }
    assert figure.inputs == ("bay.width",)


@pytest.mark.parametrize(
    ("line", "said", "instead"),
    [
        (
            "1 door, facing front, 20 thick, in bay, gap 2",
            "lies at the front",
            "0 from front of bay",
        ),
        ("1 board, facing front, 20 thick, in bay", "fills bay", "gap 0"),
        ("1 door, facing front, 20 thick, in bay", "usual gap of a door across", "gap 2 across"),
        ("2 doors, facing front, 20 thick, in bay, gap 2", "stand 2 apart", "2 between"),
        (
            "1 sign, across, on edge, 100 x 50 x 10, in bay",
            "midway in bay in height",
            "up and down",
        ),
    ],
)
def test_what_is_taken_for_granted_is_told_with_the_line_to_write(
    line: str, said: str, instead: str
) -> None:
    model = model_of(f"{CASE}{line}\n")
    found = [each for each in model.assumptions if said in each.text]
    assert len(found) == 1
    again = found[0].instead
    assert again is not None
    assert again.startswith(line)
    assert instead in again
    denied = model_of(f"{CASE}{again}\n")
    assert [each for each in denied.assumptions if said in each.text] == []
    assert [part.copies for part in denied.parts] == [part.copies for part in model.parts]


def test_a_back_closes_an_opening_on_one_side() -> None:
    text = changed(CASE, ("and bottom\n", "and bottom and back\n"), ("400 x 18", "394 x 18"))
    text = changed(text, ("at left and right", "at left and right, 0 from front"))
    text = changed(text, ("394 x 18, housing", "394 x 18, 0 from front, housing"))
    text += "1 back, upright, facing front, 6 thick, 900 long, 800 wide, on the back of sides\n"
    found = checked(text)
    assert found.model is not None, [finding.message for finding in found.findings]
    assert found.model.figures["bay.depth"].value == 394


def test_posts_bound_an_opening_to_the_sides_and_leave_it_free_in_depth() -> None:
    model = model_of("""piece Stand
units mm
overall 700 wide, 300 deep, 600 high
timber oak
4 posts, upright, 40 x 40, at corners
2 top long rails, across, 60 x 20, tenon 20 into posts, down 0
2 low long rails, across, 50 x 20, tenon 20 into posts, up 80
2 top end rails, front to back, 60 x 20, tenon 20 into posts, down 100
bay = opening between posts and top long rails and low long rails
1 panel, 10 thick, in bay, gap 2 up and down, 1 at ends
glue up stand: posts, top long rails, low long rails, top end rails
""")
    assert model.figures["bay.width"].value == 700 - 2 * 40
    assert model.figures["bay.height"].value == 600 - 60 - (80 + 50)
    assert model.figures["bay.depth"].value == 300
    assert box(model, "panel") == (span("41", "659"), span("0", "10"), span("132", "538"))


def test_openings_to_either_side_of_a_divider() -> None:
    text = changed(
        CASE, ("bay = opening between sides", "left bay = opening between left side and divider")
    )
    text = changed(text, ("top, bottom, cure", "top, bottom, divider, cure"))
    text += "right bay = opening between divider and right side\n"
    text += (
        "1 divider, upright, facing side, 400 x 18, housing 6 into top and bottom, 300 from left\n"
    )
    figures = model_of(text).figures
    assert figures["left bay.width"].value == 300 - 18
    assert figures["right bay.width"].value == 800 - 318 - 18


def test_the_place_of_a_divider_may_follow_from_its_openings() -> None:
    text = changed(
        CASE, ("bay = opening between sides", "bay = opening between left side and divider")
    )
    text = changed(text, ("top, bottom, cure", "top, bottom, divider, cure"))
    text += "small bay = opening between divider and right side\n"
    text += "1 divider, upright, facing side, 400 x 18, housing 6 into top and bottom\n"
    text += "1 door, facing front, 20 thick, 2 * small bay.width wide, in bay, gap 1 across\n"
    model = model_of(text)
    # 764 less 18 is shared: the large bay is twice the small one, and 2 more.
    assert model.figures["small bay.width"].value == Fraction(746 - 2, 3)
    assert model.figures["bay.width"].value == Fraction(2 * (746 - 2), 3) + 2
    assert model.figures["door.width"].value == Fraction(2 * (746 - 2), 3)


@pytest.mark.parametrize(
    ("change", "code"),
    [
        (("between sides and top and bottom", "between left side"), "opening-unbounded"),
        (("up 60", "up 880"), "opening-empty"),
        (
            ("between sides and top and bottom", "between sides and top and bottom and shelf"),
            "opening-unclear",
        ),
    ],
)
def test_what_is_wrong_with_an_opening_is_told(change: tuple[str, str], code: str) -> None:
    shelf = "1 shelf, flat, across, 400 x 18, housing 6 into sides, up 400\n"
    text = changed(CASE + shelf, change)
    found = [finding for finding in errors(checked(text)) if finding.code == code]
    assert len(found) == 1
    assert found[0].hints
    assert found[0].span is not None
    assert found[0].span.line == 8


def test_gaps_and_sizes_that_cannot_all_hold_name_every_line() -> None:
    line = (
        "2 doors, facing front, 20 thick, bay.width / 2 - 4 wide, in bay, gap 2 across, 3 between"
    )
    (found,) = errors(checked(f"{CASE}{line}\n"))
    assert found.code == "sizes-clash"
    assert found.figures["difference"] == 1
    told = " ".join([found.message, *(note.message for note in found.notes)])
    assert "1/2 of width of bay - 4 wide" in told
    assert "stands 3 from left door" in told


def test_a_gap_all_round_is_not_asked_where_a_size_is_written() -> None:
    model = model_of(f"{CASE}1 door, facing front, 700 wide, 20 thick, in bay, gap 2\n")
    assert box(model, "door") == (span("50", "750"), span("0", "20"), span("80", "880"))
    (told,) = (each for each in model.assumptions if "midway in bay" in each.text)
    assert told.instead is not None
    assert told.instead.endswith("gap 32 across")


def test_copies_that_openings_cannot_share_evenly_are_told() -> None:
    text = changed(
        CASE, ("bay = opening between sides", "bay = opening between left side and divider")
    )
    text += "nook = opening between divider and right side and top and bottom\n"
    text += (
        "1 divider, upright, facing side, 400 x 18, housing 6 into top and bottom, 300 from left\n"
    )
    (found,) = errors(checked(f"{text}3 shelves, flat, 18 thick, in bay and nook, up 300\n"))
    assert found.code == "copies-and-hosts"
    assert "2 shelves" in found.hints[0].message


def test_sizes_that_only_lean_on_each_other_are_a_circle() -> None:
    text = f"{CASE}1 shelf, flat, across, 400 x 18, housing 6 into sides, up plinth.height + 78\n"
    text += "plinth = opening between bottom and shelf\n"
    (found,) = errors(checked(text))
    assert found.code == "sizes-in-a-circle"
    assert "height of plinth" in found.message


@pytest.mark.parametrize(
    "line",
    ["1 door, 20 thick, onto bay", "bay into sides: housing", "nook = opening between bay and top"],
)
def test_an_opening_is_no_part(line: str) -> None:
    found = errors(checked(f"{CASE}{line}\n"))
    assert [each.code for each in found] == ["opening-is-no-part"]
    assert "in bay" in found[0].hints[0].message


def test_equal_shelves_between_unknown_places() -> None:
    # Neither the dividers' places nor the shelves' length is written: three equal bays follow.
    text = """piece Bays
units mm
overall 636 wide, 200 deep, 300 high
timber pine
2 sides, upright, facing side, 200 x 12, at left and right
1 first divider, upright, facing side, 200 x 12
1 second divider, upright, facing side, 200 x 12
bay a = opening between left side and first divider
bay b = opening between first divider and second divider
bay c = opening between second divider and right side
3 shelves, flat, across, 200 x 12, in bay a and bay b and bay c, gap 1 across, up 150
"""
    found = checked(text)
    assert found.model is not None, [finding.message for finding in found.findings]
    assert found.model.figures["shelf.length"].value == Fraction(636 - 4 * 12, 3) - 2
    assert box(found.model, "first divider")[0] == span("208", "220")
    assert box(found.model, "second divider")[0] == span("416", "428")
    told = [each.text for each in found.model.assumptions if "bay b lies" in each.text]
    assert told == ["bay b lies between first divider at its left and second divider at its right"]
