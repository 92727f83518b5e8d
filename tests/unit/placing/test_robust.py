"""Whatever is written, a check ends with findings and never with an exception of ours."""

from __future__ import annotations

import random
import re
from collections.abc import Callable

import pytest
from tests.pieces.reading import FILES, checked, errors, text_of

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
