"""`why`: what can be asked for, and what is said of a name that nothing bears."""

from __future__ import annotations

from pathlib import Path

import pytest
from tests.pieces.reading import FILES

from dryfit.cli import main

STOOL = str(FILES["step_stool"])


def asked(*things: str) -> int:
    return main(["why", STOOL, *things])


@pytest.mark.parametrize("name", ["length of seat", "seat.length", "Seats length"])
def test_a_figure_has_several_names(name: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert asked(name) == 0
    # The seat fills the piece, which is 420 wide.
    assert capsys.readouterr().out.startswith("  length of seat 420 = overall width 420\n")


def test_an_operation_is_told_with_its_step(capsys: pytest.CaptureFixture[str]) -> None:
    assert asked("Base / glue up") == 0
    told = capsys.readouterr().out
    assert told.startswith("step ")
    assert told.splitlines()[0].endswith(": base / glue up")


def test_days_have_the_names_that_the_start_gives_them(capsys: pytest.CaptureFixture[str]) -> None:
    # 7 December 2026 is a Monday (ISO 8601); the base waits for the seat, which dries overnight.
    assert asked("base / glue up", "1", "--start", "2026-12-05") == 0
    told = capsys.readouterr().out.splitlines()
    assert "  mitre saw, day 1 (Mon 7 Dec) at 08:00" in told
    begins = next(line for line in told if "cannot begin before day " in line)
    assert begins.count("Dec) at ") == 1


def test_a_step_is_told_once(capsys: pytest.CaptureFixture[str]) -> None:
    assert asked("2", "2") == 0
    assert capsys.readouterr().out.count("step 2: ") == 1


@pytest.mark.parametrize(
    ("thing", "said"),
    [
        ("sead", "nothing here is called `sead`: did you mean `seat`"),
        ("999", "there is no step 999: the last one is step "),
        ("step 999", "there is no step 999: the last one is step "),
        (5000 * "9", "the last one is step "),
        ("²", "nothing here is called `²`"),
        ("xyzzy", "`dryfit steps` and `dryfit parts` list what there is"),
    ],
)
def test_what_is_not_there_is_status_2(
    thing: str, said: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert asked(thing) == 2
    told = capsys.readouterr()
    assert told.out == ""
    assert said in told.err


def test_a_value_of_the_notes_is_told(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    notes = tmp_path / "stool.dryfit"
    text = FILES["step_stool"].read_text(encoding="utf-8")
    notes.write_text(f"{text}\nshadow = 3\nwide shadow = 2 * shadow + 1\n", encoding="utf-8")
    last = len(text.splitlines()) + 3
    assert main(["why", str(notes), "Shadow", "wide shadow"]) == 0
    assert capsys.readouterr().out.splitlines() == [
        f"  shadow 3 mm, as written in line {last - 1}",
        f"      used in line {last}",
        "",
        f"  wide shadow 7 mm = 2 * shadow + 1, as written in line {last}",
    ]


@pytest.mark.parametrize(
    ("thing", "first"),
    [
        ("step 3", "step 3: "),
        ("Step 3", "step 3: "),
        ("glue up base", "base / glue up"),
        ("finish seat", "seat / coat 1"),
        ("cut legs", "leg / rough length"),
    ],
)
def test_a_step_is_asked_for_as_the_notes_speak_of_it(
    thing: str, first: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert asked(thing) == 0
    assert first in capsys.readouterr().out.splitlines()[0]
