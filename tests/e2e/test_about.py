"""What the program tells about itself: help and explain."""

from __future__ import annotations

import json
import subprocess
import sys
from itertools import pairwise

import pytest

from dryfit.cli import main


def dryfit(*arguments: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-m", "dryfit", *arguments], capture_output=True, text=True, check=False
    )


def test_help_alone_lists_its_topics_and_each_can_be_had(
    capsys: pytest.CaptureFixture[str],
) -> None:
    run = dryfit("help")
    assert (run.returncode, run.stderr) == (0, "")
    topics = [line.split()[0] for line in run.stdout.splitlines() if line.startswith("  ")]
    assert "words" in topics
    for topic in topics:
        assert main(["help", topic]) == 0
        page, wrong = capsys.readouterr()
        assert wrong == ""
        assert page.endswith("\n")


def test_help_on_nothing_that_there_is_tells_the_topics() -> None:
    run = dryfit("help", "wrods")
    assert (run.returncode, run.stdout) == (2, "")
    assert run.stderr.startswith("dryfit: there is no help on `wrods`, but on ")
    assert "words" in run.stderr


def test_the_colours_are_one_json_document() -> None:
    document = json.loads(dryfit("help", "colours").stdout)
    assert document["scopeName"] == "source.dryfit"
    assert document["fileTypes"] == ["dryfit"]


def test_explain_prints_the_page_with_what_is_said_about_its_example() -> None:
    run = dryfit("explain", "joined-to-itself")
    assert (run.returncode, run.stderr) == (0, "")
    lines = run.stdout.splitlines()
    assert lines[0] == "joined-to-itself"
    assert {"What it means", "Example", "Write instead", "Source"} <= set(lines)
    assert "    error[joined-to-itself]: " in run.stdout


def test_a_page_on_the_shop_file_shows_what_is_said_of_a_shop_file() -> None:
    run = dryfit("explain", "shop-no-unit")
    assert (run.returncode, run.stderr) == (0, "")
    assert "    error[shop-no-unit]: " in run.stdout
    assert "--> shop.toml:" in run.stdout


@pytest.mark.parametrize(
    ("code", "said"),
    [
        ("joined-to-itslef", "did you mean joined-to-itself"),
        ("xyzzy", "`dryfit explain` lists all"),
    ],
)
def test_a_code_that_is_none_is_status_2(code: str, said: str) -> None:
    run = dryfit("explain", code)
    assert (run.returncode, run.stdout) == (2, "")
    assert len(run.stderr.splitlines()) == 1
    assert said in run.stderr


def test_explain_alone_lists_every_code_with_a_sentence() -> None:
    run = dryfit("explain")
    assert run.returncode == 0
    lines = run.stdout.splitlines()
    codes = [line for line in lines if not line.startswith(" ")]
    assert "joined-to-itself" in codes
    assert codes == sorted(codes)
    assert all(after.startswith("    ") for before, after in pairwise(lines) if before in codes)


def test_the_page_on_a_plan_that_is_refused_has_no_example_and_says_what_to_do() -> None:
    run = dryfit("explain", "rehearsal-failed")
    assert (run.returncode, run.stderr) == (0, "")
    headings = [line for line in run.stdout.splitlines() if line and not line.startswith(" ")]
    assert headings[1:4] == ["What it means", "Why it matters at the bench", "What to do"]
    assert "`--unrehearsed`" in run.stdout
