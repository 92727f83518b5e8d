"""Names with blanks: the longest that the sentence can take, and what wins of two as long."""

import pytest

from dryfit.diagnostics import Source
from dryfit.notes.reading.lexer import Failure, Reading, read_line
from dryfit.notes.reading.lines import SenseLine, sense_lines
from dryfit.notes.reading.vocabulary import Declared, vocabulary


def read(text: str, parts: str = "", values: str = "") -> Reading | Failure:
    declared = [Declared("part", name, name) for name in parts.split(", ") if name]
    declared += [Declared("value", name, name) for name in values.split(", ") if name]
    (line,) = sense_lines(Source("a", text))
    assert isinstance(line, SenseLine)
    return read_line(line, vocabulary(declared, "mm", decimal_comma=False))


def kinds(text: str, parts: str = "", values: str = "") -> list[str]:
    reading = read(text, parts, values)
    assert isinstance(reading, Reading), (reading.start, sorted(reading.takes))
    return [f"{token.type}:{token.value}" for token in reading.tokens if token.type != "_COMMA"]


@pytest.mark.parametrize(
    ("text", "parts", "expected"),
    [
        ("rail into top rail", "rail, top rail", ["NAME:rail", "PREP:into", "NAME:top rail"]),
        ("rail into top leg", "rail, leg", ["NAME:rail", "PREP:into", "PLACE:top", "NAME:leg"]),
        ("rail into top", "rail, top", ["NAME:rail", "PREP:into", "NAME:top"]),
        (
            "top leg into seat",
            "top, leg, seat",
            ["PLACE:top", "NAME:leg", "PREP:into", "NAME:seat"],
        ),
        (
            "front left leg into top",
            "front, leg, top",
            ["PLACE:front", "PLACE:left", "NAME:leg", "PREP:into", "NAME:top"],
        ),
        ("rail ends into leg", "rail, leg", ["NAME:rail", "EDGE:ends", "PREP:into", "NAME:leg"]),
        ("rail ends into leg", "rail end, leg", ["NAME:rail end", "PREP:into", "NAME:leg"]),
        ("ends into leg", "end, leg", ["NAME:end", "PREP:into", "NAME:leg"]),
    ],
)
def test_names_and_places(text: str, parts: str, expected: list[str]) -> None:
    assert kinds(text, parts) == expected


def test_a_place_word_after_flush_and_at_is_a_place_whatever_is_called_so() -> None:
    assert kinds("1 lid, at top, flush top", "top, lid")[2:] == [
        "_AT:at",
        "PLACE:top",
        "_FLUSH:flush",
        "PLACE:top",
    ]


def test_a_value_may_hold_words_of_the_language() -> None:
    reading = kinds("deep gap = up + tenon length * 2", values="deep gap, up, tenon length")
    assert [kind for kind in reading if not kind.endswith("number")] == [
        "VALUE:deep gap",
        "_EQ:=",
        "VALUE:up",
        "_PLUS:+",
        "VALUE:tenon length",
        "_STAR:*",
    ]


def test_finish_and_glue_up_are_deeds_only_in_a_wish() -> None:
    assert kinds("finish back oil") == ["FINISH:finish", "PHRASE:back oil"]
    wish = kinds("finish back before glue up", "back")
    assert wish == ["ACTION:finish", "NAME:back", "ORDER:before", "ACTION:glue up"]


def test_in_behind_a_number_is_inches() -> None:
    reading = read("1 bar, set in 15 in")
    assert isinstance(reading, Reading)
    assert reading.tokens[-1].type == "MEASURE"


@pytest.mark.parametrize(
    ("text", "start", "end"),
    [("1 bar, flatt", 7, 12), ("1 bar, flat, 22mn", 13, 15), ("1 bar, @ top", 7, 8)],
)
def test_a_failure_points_at_what_did_not_fit(text: str, start: int, end: int) -> None:
    failure = read(text)
    assert isinstance(failure, Failure)
    assert (failure.start, failure.end) == (start, end)


def test_a_failure_at_the_end_is_empty() -> None:
    failure = read("1 bar, up")
    assert isinstance(failure, Failure)
    assert (failure.start, failure.end) == (9, 9)
    assert {"INT", "MEASURE", "NUMBER"} <= failure.takes
