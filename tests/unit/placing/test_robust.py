"""Whatever is written, a check ends with findings and never with an exception of ours."""

from __future__ import annotations

import random
import re
from collections.abc import Callable

import pytest
from tests.pieces.reading import FILES, checked, codes, errors, text_of

NUMBERS = ("0", "1", "2.5", "999", "100000", "1/3", '3 1/2"', "(2 - 5)", "width", "leg.width", "")
Mutation = Callable[[random.Random, list[str]], None]


def other_number(chance: random.Random, lines: list[str]) -> None:
    at = chance.randrange(len(lines))
    found = list(re.finditer(r"\d+(?:\.\d+)?", lines[at]))
    if found:
        number = chance.choice(found)
        new = chance.choice(NUMBERS)
        lines[at] = lines[at][: number.start()] + new + lines[at][number.end() :]


def word_gone(chance: random.Random, lines: list[str]) -> None:
    at = chance.randrange(len(lines))
    words = lines[at].split(" ")
    del words[chance.randrange(len(words))]
    lines[at] = " ".join(words)


def words_swapped(chance: random.Random, lines: list[str]) -> None:
    first, second = chance.randrange(len(lines)), chance.randrange(len(lines))
    one, two = lines[first].split(" "), lines[second].split(" ")
    i, j = chance.randrange(len(one)), chance.randrange(len(two))
    one[i], two[j] = two[j], one[i]
    lines[first], lines[second] = " ".join(one), " ".join(two)


def phrase_moved(chance: random.Random, lines: list[str]) -> None:
    first, second = chance.randrange(len(lines)), chance.randrange(len(lines))
    phrases = lines[first].split(",")
    if len(phrases) > 1:
        phrase = phrases.pop(chance.randrange(1, len(phrases)))
        lines[first] = ",".join(phrases)
        lines[second] = f"{lines[second]},{phrase}"


def line_gone(chance: random.Random, lines: list[str]) -> None:
    del lines[chance.randrange(len(lines))]


def line_twice(chance: random.Random, lines: list[str]) -> None:
    lines.insert(chance.randrange(len(lines)), chance.choice(lines))


def letter_changed(chance: random.Random, lines: list[str]) -> None:
    at = chance.randrange(len(lines))
    if lines[at]:
        i = chance.randrange(len(lines[at]))
        lines[at] = lines[at][:i] + chance.choice("ax,:0-½ \"'(×") + lines[at][i + 1 :]


MUTATIONS: tuple[Mutation, ...] = (
    other_number,
    other_number,
    word_gone,
    words_swapped,
    phrase_moved,
    phrase_moved,
    line_gone,
    line_twice,
    letter_changed,
)


def damaged(seed: int) -> str:
    chance = random.Random(seed)  # noqa: S311
    lines = text_of(chance.choice(sorted(FILES))).split("\n")
    for _ in range(chance.randint(1, 3)):
        chance.choice(MUTATIONS)(chance, lines)
    return "\n".join(lines)


@pytest.mark.parametrize("start", range(0, 300, 50))
def test_damaged_notes_end_in_a_model_or_an_error(start: int) -> None:
    for seed in range(start, start + 50):
        found = checked(damaged(seed))
        assert (found.model is not None) or errors(found), f"silent at seed {seed}"


HEAD = "piece X\noverall 3000 wide, 600 deep, 800 high\ntimber oak\n"
RAILS = "2 rails, across, on edge, 3000 x 50 x 30, at front and back, up 0\n"
TIES = "2 ties, across, 50 x 20, tenon v0 into legs\n"
LETTERS = "abcdefghijklmnopqrst"
MANY = "too-many-parts"
LEGS = "4 legs, upright, 40 x 40, at corners\n"


def chain(links: int, step: str) -> str:
    return "".join(f"v{i} = v{i + 1} {step}\n" for i in range(links)) + f"v{links} = 3\n"


@pytest.mark.parametrize(
    ("notes", "code"),
    [
        ("", "no-parts"),
        (HEAD, "no-parts"),
        (LEGS, "overall-missing"),
        (HEAD + "".join(f"999 {name}, upright, 9 x 9, spread\n" for name in "abcd"), MANY),
        (HEAD + "".join(f"1 bar{a}{b}z, upright, 9 x 9\n" for a in LETTERS for b in LETTERS), MANY),
        (HEAD + chain(500, "+ 1") + "1 a, upright, v0 x 10\n", "sum-too-long"),
        (HEAD + chain(1500, "+ 1") + LEGS + TIES, "sum-too-long"),
        (HEAD + chain(70, "* 9.99") + "1 a, upright, v0 x 10\n", "number-too-long"),
        (HEAD + "a = b * b\nb = a * a\n1 part, upright, a x a\n", "circle"),
        (HEAD + LEGS + "legs into legs: tenon\n", "joined-to-itself"),
        (HEAD + "1 a, upright, into b: tenon\n1 b, upright, into a: tenon\n", "ends-unclear"),
        (HEAD + "glue up c: d\nglue up d: c\n" + LEGS, "stages-in-a-circle"),
        (HEAD + RAILS + "999 slats, front to back, flat, 600 x 5 x 3, spread across, onto rails\n",
         "spread-too-full"),
    ],
)  # fmt: skip
def test_notes_out_of_all_measure_end_in_a_finding(notes: str, code: str) -> None:
    assert code in codes(checked(notes))


def test_hundreds_of_joints_in_one_part_are_placed() -> None:
    bars = (
        "300 bars, front to back, on edge, 20 x 5, spread across, between rails: housing 5, up 10\n"
    )
    found = checked(f"{HEAD}{RAILS}{bars}glue up rack: rails, bars\n")
    assert found.model is not None
    assert len(found.model.joints) == 600
