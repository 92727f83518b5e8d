"""``steps --move``: both plans side by side, the line that keeps the wish, or what forbids it."""

from __future__ import annotations

import sys
from itertools import pairwise
from pathlib import Path

import pytest
from tests.pieces.reading import FILES, without_boards

from dryfit import workshop
from dryfit.cli import main
from dryfit.diagnostics import Diagnostic, Findings, Severity, Source
from dryfit.plan.as_text import UNREHEARSED
from dryfit.plan.plan import Plan

STOOL = FILES["step_stool"]


@pytest.fixture(autouse=True)
def _without_its_boards(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A stool whose order does not hang on how its boards are cut."""
    path = tmp_path / "step_stool.dryfit"
    path.write_text(without_boards(STOOL.read_text(encoding="utf-8")), encoding="utf-8")
    monkeypatch.setattr(sys.modules[__name__], "STOOL", path)


def move(first: str, side: str, then: str) -> int:
    return main(["steps", str(STOOL), "--move", first, side, then])


def test_what_the_rules_forbid_is_told_with_the_chain(capsys: pytest.CaptureFixture[str]) -> None:
    assert move("base / glue up", "before", "base / dry fit") == 0
    first, *chain = capsys.readouterr().out.splitlines()
    assert first.startswith("step ")
    assert "(base / glue up) cannot be done before step " in first
    # A circle: each one's later operation is the next one's earlier one.
    pairs = [line.strip().partition(": ")[0].split(" before ") for line in chain]
    assert all(pair[1] == following[0] for pair, following in pairwise(pairs))
    assert pairs[-1][1] == pairs[0][0]
    assert chain[-1].endswith(": you ask for it")


def test_the_line_that_is_offered_keeps_the_wish(
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert move("seat / coat 1", "before", "long rail / tenon cheeks") == 0
    told = capsys.readouterr().out
    assert "setting up " in told
    line = told.partition("write in the notes: ")[2].splitlines()[0]
    assert line.startswith("finish seat before cut long rail")
    assert "With that line, which orders all that it names: changes of a setting " in told
    text = f"{STOOL.read_text(encoding='utf-8')}\n{line}\n"
    checked = workshop.check(Source("stool.dryfit", text), None, {})
    plan, findings = workshop.plan(checked, lambda _: None)
    assert plan is not None, findings
    coat, cheeks = map(plan.step_of, ("seat / coat 1", "long rail / tenon cheeks"))
    assert coat.number < cheeks.number


WISH = ("seat / coat 1", "before", "long rail / tenon cheeks")


def test_the_plan_that_keeps_the_wish_is_rehearsed_too(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    fault = Diagnostic("rehearsal-failed", Severity.ERROR, "the coat is still wet", None)
    verdicts = [True, False]

    def rehearse(_: object, plan: Plan, __: object) -> tuple[Plan | None, Findings]:
        return (plan, ()) if verdicts.pop(0) else (None, (fault,))

    monkeypatch.setattr(workshop, "rehearse", rehearse)
    assert move(*WISH) == 1
    told = capsys.readouterr()
    assert told.out == ""
    assert "the coat is still wet" in told.err
    assert verdicts == []
    assert main(["steps", str(STOOL), "--unrehearsed", "--move", *WISH]) == 0
    assert capsys.readouterr().out.startswith(f"{UNREHEARSED}\n")


def test_after_is_before_the_other_way_round(capsys: pytest.CaptureFixture[str]) -> None:
    assert move("long rail / tenon cheeks", "after", "seat / coat 1") == 0
    assert "(seat / coat 1) before step " in capsys.readouterr().out


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("1", "before", "2"), "is done before step 2 "),
        (("1", "before", "1"), "that is one step"),
        (("1", "beside", "2"), "`beside` is neither"),
        (("base", "before", "2"), "`base` is done in steps "),
        (("bas", "before", "2"), "no step is called `bas`"),
    ],
)
def test_what_is_no_move_is_status_2(
    words: tuple[str, str, str], said: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert move(*words) == 2
    told = capsys.readouterr()
    assert told.out == ""
    assert said in told.err
