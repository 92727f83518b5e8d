from dataclasses import replace

import pytest

from dryfit.diagnostics.explain import (
    REPEATED,
    WIDTH,
    Page,
    StandsFor,
    known_codes,
    near_codes,
    page,
    page_text,
)

PLAIN = Page(
    code="plank-asleep",
    means="The plank is asleep.",
    matters="It wakes in the saw.",
    source="invented",
    example="\npiece Plank\n2 planks, asleep\n",
    instead="\npiece Plank\n2 planks, awake\n",
)


def test_the_codes_are_in_order_and_each_has_its_page() -> None:
    codes = known_codes()
    assert list(codes) == sorted(codes)
    for code in codes:
        shown = page(code)
        assert shown is not None
        assert shown.code == code


@pytest.mark.parametrize("code", ["plank-asleep", "", "../pages/circle", "circle.toml", "Circle"])
def test_what_is_no_code_has_no_page(code: str) -> None:
    assert page(code) is None


@pytest.mark.parametrize(
    "written", ["joined-to-itslef", "joined to itself", "Joined_To_Itself", "joined-itself"]
)
def test_a_mistyped_code_is_near(written: str) -> None:
    assert near_codes(written)[0] == "joined-to-itself"


def test_nothing_is_near_to_a_word_of_another_kind() -> None:
    assert near_codes("qqqqqqqq") == ()


def test_the_sections_stand_in_order() -> None:
    assert page_text(PLAIN, "error[plank-asleep]: asleep\n") == (
        "plank-asleep\n\n"
        "What it means\n\n    The plank is asleep.\n\n"
        "Why it matters at the bench\n\n    It wakes in the saw.\n\n"
        "Example\n\n    piece Plank\n    2 planks, asleep\n\n"
        "What `dryfit check` says\n\n    error[plank-asleep]: asleep\n\n"
        "Write instead\n\n    piece Plank\n    2 planks, awake\n\n"
        "Source\n\n    Invented.\n"
    )


def test_without_findings_nothing_is_said_of_them() -> None:
    assert "says" not in page_text(PLAIN)


def test_a_page_on_the_shop_file_shows_the_shop_file_only() -> None:
    shown = Page("c", "m", "w", "s", shop='\nformat = "x"\n', instead_shop='format = "y"\n')
    text = page_text(shown)
    assert 'Example\n\n    # shop file\n    format = "x"\n\nWrite instead' in text
    assert "piece" not in text


def test_a_long_row_is_named_and_written_out() -> None:
    many = replace(PLAIN, example=f"a = 1{REPEATED}\n", stands_for=StandsFor("+1", 3))
    assert many.written_out(many.example) == "a = 1+1+1+1\n"
    text = page_text(many)
    assert f"    a = 1{REPEATED}\n\n    Here {REPEATED} stands for 3 times `+1`.\n" in text
    assert text.count("stands for") == 1


def test_a_long_row_of_lines_is_named_so() -> None:
    many = replace(PLAIN, example=f"{REPEATED}\n", stands_for=StandsFor("2 planks\n", 9))
    assert f"Here {REPEATED} stands for 9 lines `2 planks`.\n" in page_text(many)


def test_long_texts_are_filled_and_marks_keep_their_columns() -> None:
    excerpt = " --> x.dryfit:2:3\n  |\n2 | 2 planks, asleep\n  |           ^^^^^^"
    found = f"error[plank-asleep]: {'long ' * 40}\n{excerpt}\nhint: {'z' * 200}"
    text = page_text(replace(PLAIN, means="word " * 60, note="A.\n\nB."), found)
    assert max(len(line) for line in text.splitlines()) <= WIDTH
    assert all(f"    {line}\n" in text for line in excerpt.split("\n"))
    assert "Note\n\n    A.\n\n    B.\n" in text


def test_what_a_terminal_would_act_on_is_marked() -> None:
    assert "    piece \ufffdPlank\n" in page_text(replace(PLAIN, example="piece \x1bPlank\n"))
