"""What is told about a word: the sizes of a part, what a value comes to."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.unit.editor.notes import STOOL, asked

from dryfit.editor.findings import examined
from dryfit.editor.hover import hover
from dryfit.editor.places import Place
from dryfit.placing.model import Model

CASE = """\
piece Case
overall 900 wide, 400 deep, 800 high
4 posts, upright, 50 x 50, at corners
2 top rails, across, 50 x 20, tenon 20 into posts, flush with top of posts
2 low rails, across, 50 x 20, tenon 20 into posts, up 60
bay = opening between posts and top rails and low rails
gauge = bay.width - 10
"""


TABLE = """\
piece Table
overall 1200 wide, 600 deep, 740 high
timber oak
1 base, as apron base, 1140 wide, 540 deep, 715 high, leg 60
1 top, flat, 25 thick, glued from 5
top onto base's long aprons: buttons
"""


def model_of(text: str) -> Model:
    checked = examined("stool.dryfit", text, None, {}, "utf-16").checked
    assert checked is not None
    assert checked.model is not None
    return checked.model


def told(marked: str, model: Model | None = None) -> str | None:
    text, line, character = asked(marked)
    piece = model or model_of(text)
    found = hover("stool.dryfit", text, line, character, "utf-16", {}, model=piece)
    return found.text if found else None


def test_a_part_is_told_with_its_sizes_and_the_sums_behind_them() -> None:
    # Worked by hand: the legs stand 15 in from 420 and are 40 wide, so 310 lie between them; a
    # tenon of 20 goes into each.
    said = told(STOOL.replace("2 long rails", "2 long| rails"))
    assert said is not None
    part, length, shoulders = said.split("\n")
    assert part == "2 long rails: 350 x 55 x 20, ash, mm"
    assert length == "length 350 = between shoulders 310 + tenon at R 20 + tenon at R2 20"
    set_in = "- set in of leg 15 - set in of leg 15"
    across = f"overall width 420 - width of leg 40 {set_in} - width of leg 40"
    assert shoulders == f"shoulder length 310 = {across}"


def test_a_part_is_told_wherever_it_is_named() -> None:
    on_its_line = told(STOOL.replace("1 seat,", "1 s|eat,"))
    assert on_its_line is not None
    assert on_its_line.startswith("1 seat: 420 x 300 x 22")
    assert told(STOOL.replace("seat onto", "seat| onto")) == on_its_line


def test_hands_are_told() -> None:
    said = told(STOOL.replace("4 legs", "4 |legs"))
    assert said is not None
    assert said.split("\n")[0] == "4 legs: 218 x 40 x 40, ash, mm"
    assert said.endswith("in two hands, A and B")


def test_a_glue_up_is_told_by_what_is_glued() -> None:
    said = told(STOOL.replace("glue up base: side", "glue up base: |side"))
    assert said is not None
    assert said.startswith("2 glue-ups: front left leg, back left leg, left short rail\n40 x 270")


def test_an_opening_is_told_with_its_sizes() -> None:
    # Worked by hand: 900 less two posts of 50 is 800; between the lower rails, whose tops are at
    # 60 + 50, and the upper ones, whose undersides are at 750, are 640.
    said = told(CASE.replace("bay = opening", "b|ay = opening"))
    assert said is not None
    sizes = [line.split(" = ")[0] for line in said.split("\n")]
    assert (sizes[0], sizes[-1], len(sizes)) == ("width 800", "height 640", 3)
    assert told(CASE.replace("bay.width - 10", "ba|y.width - 10")) == (
        "bay.width = 800 mm\nbay.width - 10 = 790 mm"
    )


@pytest.mark.parametrize(
    ("line", "said"),
    [
        (
            "rise = overall height - 2*over|hang",
            "overhang = 15 mm\noverall height - 2*overhang = 210 mm",
        ),
        ("rise = over|all height - 20", "overall height = 240 mm\noverall height - 20 = 220 mm"),
        ("ri|se = 3 cm", "rise = 30 mm"),
        ('rise = 1 1|/2"', '1 1/2" = about 38 mm'),
        ("rest = 1 h + 3|0 min", "30 min = 30 min\n1 h + 30 min = 90 min"),
        (
            "rise = long rail|s.length / 2",
            "long rails.length = 350 mm\nlong rails.length / 2 = 175 mm",
        ),
    ],
)
def test_a_value_is_told_by_what_it_comes_to(line: str, said: str) -> None:
    found = told(f"{STOOL}{line}\n", model_of(STOOL))
    assert found is not None
    assert found.removesuffix("\n(by the last notes without an error)") == said


def test_an_instance_is_told_by_its_parts_and_a_part_inside_of_it_by_its_sums() -> None:
    # Worked by hand: between posts of 60 at the ends of 1140 are 1020.
    said = told(TABLE.replace("1 base", "1 b|ase"))
    assert said is not None
    assert said.split("\n")[0] == "4 posts: 715 x 60 x 60, oak, mm"
    inside = told(TABLE.replace("long aprons: buttons", "long a|prons: buttons"))
    assert inside is not None
    assert inside.startswith("2 long aprons: ")
    assert "shoulder length 1020 = " in inside


RACK = """\
pattern rack with width, depth, height, board = 12 mm, 8 mm to 20 mm
2 sides, upright, facing side, depth x board, at left and right
end
1 tray, as rack, 300 wide, 200 deep, 60 high, board 15
"""


@pytest.mark.parametrize(
    ("where", "said"),
    [
        (
            "as ra|ck",
            (
                "pattern rack\nwidth: to be said\ndepth: to be said\nheight: to be said\n"
                "board = 12 mm, 8 mm to 20 mm"
            ),
        ),
        ("bo|ard 15", "board = 12 mm, 8 mm to 20 mm"),
    ],
)
def test_a_pattern_is_told_by_what_can_be_set_of_it(where: str, said: str) -> None:
    text, line, character = asked(RACK.replace(where.replace("|", ""), where))
    found = hover("n", text, line, character, "utf-16", {}, model=None)
    assert found is not None
    assert found.text == said


def test_what_says_itself_is_not_told() -> None:
    for marked in (
        STOOL.replace("40 x 40", "4|0 x 40"),
        STOOL.replace("upright", "up|right"),
        STOOL.replace("timber ash", "timber ash # th|e good boards"),
        STOOL.replace("timber ash\n", "timber ash\n|\n"),
    ):
        assert told(marked) is None


def test_names_inside_a_pattern_are_not_taken_for_those_outside() -> None:
    block = "pattern trestle with width, depth, height\n2 l|egs, upright, 40 x 40\nend\n"
    assert told(f"{STOOL}{block}", model_of(STOOL)) is None


def test_figures_of_an_earlier_text_are_told_as_such() -> None:
    broken = STOOL.replace("1 seat, flat", "1 seat, flta").replace("4 legs", "4 l|egs")
    said = told(broken, model_of(STOOL))
    assert said is not None
    assert "218 x 40 x 40" in said
    assert said.endswith("(by the last notes without an error)")
    text, line, character = asked(broken)
    assert hover("n", text, line, character, "utf-16", {}, model=None) is None


def test_the_place_is_that_of_the_word() -> None:
    text, line, character = asked(STOOL.replace("into legs, set", "into l|egs, set", 1))
    found = hover("n", text, line, character, "utf-16", {}, model=model_of(STOOL))
    assert found is not None
    assert found.place == Place(7, 58, 62)


@given(
    text=st.text(st.sampled_from("4 legs,\n x:#=()½😀+*\ud800"), max_size=40),
    line=st.integers(0, 5),
    character=st.integers(0, 50),
)
def test_any_place_of_any_text_can_be_asked(text: str, line: int, character: int) -> None:
    found = hover("n", text, line, character, "utf-16", {}, model=None)
    assert found is None or found.text
