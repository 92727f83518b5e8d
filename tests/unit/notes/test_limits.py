"""Past each limit of what is read stands a finding, and up to it none."""

from collections.abc import Callable
from itertools import pairwise

import pytest

from dryfit.diagnostics import Source
from dryfit.notes import parse
from dryfit.notes.blocks import MOST_PATTERNS
from dryfit.notes.limits import (
    DEEPEST_BRACKET,
    DEEPEST_PATTERN,
    LONGEST_LINE,
    LONGEST_NAME,
    LONGEST_STATEMENT,
    MOST_SIGNS,
)
from dryfit.notes.line_reading import MOST_MISTAKES
from dryfit.notes.reading.numbers import MOST_DIGITS
from dryfit.notes.text import MOST_CHARACTERS, MOST_LINES

CRATE = "pattern crate {} with width, depth, height\n1 slab, flat, 60 x 200 x 20\nend"
LETTERS = "abcdefghijklmnopqrstuvwxyz"


def codes(text: str) -> set[str]:
    return {finding.code for finding in parse(Source("a.dryfit", text))[1]} - {"overall-missing"}


def patterns(count: int) -> str:
    return "\n".join(CRATE.format(LETTERS[i // 26] + LETTERS[i % 26]) for i in range(count))


def nested(count: int) -> str:
    """So many patterns inside one another, the outermost first."""
    inner = [
        f"pattern crate {outer} with width, depth, height\n"
        f"1 thing, as crate {within}, 60 wide, 200 deep, 20 high\nend"
        for outer, within in pairwise(LETTERS[:count])
    ]
    return "\n".join([*inner, CRATE.format(LETTERS[count - 1])])


AT_THE_LIMIT: dict[str, Callable[[int], str]] = {
    "line-too-long": lambda past: "note " + "x" * (LONGEST_LINE - 5 + past),
    "too-many-brackets": lambda past: (
        "q = " + "(" * (DEEPEST_BRACKET + past) + "1" + ")" * (DEEPEST_BRACKET + past)
    ),
    "sum-too-long": lambda past: "q = 1" + " + 1" * (MOST_SIGNS + past),
    "name-too-long": lambda past: "q" * (LONGEST_NAME + past) + " = 1",
    "number-too-long": lambda past: "q = " + "1" * (MOST_DIGITS + past),
    "too-many-patterns": lambda past: patterns(MOST_PATTERNS + past),
    "patterns-too-deep": lambda past: nested(DEEPEST_PATTERN + past),
    "notes-too-long": lambda past: "\n" * (MOST_LINES - 1 + past),
    "too-many-mistakes": lambda past: "\n".join(["?"] * (MOST_MISTAKES - 1 + past)),
}


@pytest.mark.parametrize("code", AT_THE_LIMIT)
def test_up_to_a_limit_nothing_is_told_of_it_and_past_it_a_finding(code: str) -> None:
    assert code not in codes(AT_THE_LIMIT[code](0))
    assert code in codes(AT_THE_LIMIT[code](1))


def test_continued_lines_have_a_limit_together() -> None:
    line = "2 legs, upright, 40 x 40,\n"
    assert "line-too-long" not in codes(line * (LONGEST_STATEMENT // len(line)))
    assert "line-too-long" in codes(line * (LONGEST_STATEMENT // len(line) + 1))


@pytest.mark.parametrize(
    "line",
    [
        "{} = 1",
        "2 {}, upright, 40 x 40",
        "bought 2 {}, 40 high",
        "glue up {}: legs",
        "{} = opening between legs",
        "pattern {} with width, depth, height",
    ],
)
def test_whatever_has_a_name_has_one_of_limited_length(line: str) -> None:
    legs = "4 legs, upright, 40 x 40\n"
    assert "name-too-long" not in codes(legs + line.format("q" * LONGEST_NAME))
    assert "name-too-long" in codes(legs + line.format("q" * (LONGEST_NAME + 1)))


def test_a_text_of_as_many_characters_as_can_be_is_read() -> None:
    line = "x" * (MOST_CHARACTERS // MOST_LINES - 1)
    longest = "\n".join([line] * MOST_LINES)
    assert len(longest) == MOST_CHARACTERS - 1
    assert "notes-too-long" not in codes(f"{longest}x")
    assert "notes-too-long" in codes(f"{longest}xx")


@pytest.mark.parametrize(
    "line", ["note " + "- " * 60, "piece A/B" + "/C" * 60, "done: " + "leg / rip, " * 60]
)
def test_strokes_in_free_text_are_no_sum(line: str) -> None:
    assert "sum-too-long" not in codes(f"4 legs, upright, 40 x 40\n{line}")


@pytest.mark.parametrize("order", [1, -1])
def test_the_depth_of_patterns_does_not_hang_on_their_order(order: int) -> None:
    for count, told in ((DEEPEST_PATTERN, set()), (DEEPEST_PATTERN + 1, {"patterns-too-deep"})):
        blocks = nested(count).replace("end\n", "end\n\n").split("\n\n")
        assert codes("\n".join(blocks[::order])) == told


def test_a_thousand_patterns_inside_one_another_are_read_to_an_end() -> None:
    blocks = [
        f"pattern {a}{b} with width\n1 q, as {a}{c}, 1 wide\nend"
        for a in LETTERS
        for b, c in pairwise(LETTERS)
    ]
    assert "too-many-patterns" in codes("\n".join(blocks))
