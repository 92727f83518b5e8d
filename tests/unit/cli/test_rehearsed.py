"""A plan is printed only when its rehearsal finds no fault, unless that is asked for."""

from __future__ import annotations

import json
import re
from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction
from pathlib import Path
from typing import Any

import jsonschema
import pytest
from tests.pdf_pages import pages_of
from tests.pieces.reading import FILES

import dryfit
from dryfit import planning
from dryfit.cli import main
from dryfit.diagnostics import Findings
from dryfit.placing.model import Model
from dryfit.plan.operation import Operation, WorkList
from dryfit.plan.plan import Plan
from dryfit.plan.setting import Setting
from dryfit.shop import Shop

STOOL = str(FILES["step_stool"])
MOVED = "long rail / length"
"""The operation whose stop the wrong planner sets 1 mm too far."""
SCHEMAS = Path(dryfit.__file__).parent / "schemas"
Json = dict[str, Any]
Told = pytest.CaptureFixture[str]


@pytest.fixture(autouse=True)
def shipped_shop(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path))


@pytest.fixture
def wrong_planner(monkeypatch: pytest.MonkeyPatch) -> None:
    right: Callable[..., tuple[Plan | None, Findings]] = planning.make_plan

    def wrong(
        model: Model, shop: Shop, work: WorkList, **options: object
    ) -> tuple[Plan | None, Findings]:
        operations = tuple(moved(each) if each.id == MOVED else each for each in work.operations)
        assert operations != work.operations
        return right(model, shop, replace(work, operations=operations), **options)

    monkeypatch.setattr(planning, "make_plan", wrong)


def moved(operation: Operation) -> Operation:
    return replace(operation, settings=tuple(map(a_millimetre_off, operation.settings)))


def a_millimetre_off(setting: Setting) -> Setting:
    if setting.axis != "stop" or not isinstance(setting.value, Fraction):
        return setting
    far = None if setting.far is None else setting.far + 1
    return replace(setting, value=setting.value + 1, far=far)


def printed(told: Told, name: str) -> Json:
    document: Json = json.loads(told.readouterr().out)
    schema = json.loads((SCHEMAS / f"{name}.json").read_text(encoding="utf-8"))
    jsonschema.validate(document, schema)
    return document


@pytest.mark.usefixtures("wrong_planner")
def test_a_booklet_that_does_not_work_is_not_written(tmp_path: Path, capsys: Told) -> None:
    assert main(["booklet", STOOL, "-o", str(tmp_path / "booklets")]) == 1
    out, err = capsys.readouterr()
    assert (out, list(tmp_path.iterdir())) == ("", [])
    assert re.search(r"error\[rehearsal-failed\]: step \d+, `base / dry fit`: ", err)
    assert "its length is 351 and should be 350" in err
    assert "needed, for the size: a length of 350" in err
    assert err.count("`--unrehearsed`") == 1


@pytest.mark.usefixtures("wrong_planner")
def test_steps_that_do_not_work_are_not_printed(capsys: Told) -> None:
    assert main(["steps", STOOL]) == 1
    assert capsys.readouterr().out == ""
    assert main(["steps", STOOL, "--json"]) == 1
    document = printed(capsys, "steps")
    assert (document["steps"], document["totals"], document["rehearsed"]) == ([], None, False)
    faults = [each for each in document["findings"] if each["code"] == "rehearsal-failed"]
    assert faults
    assert {(each["severity"], each["rule"]) for each in faults} == {("error", None)}
    assert all(each["line"] is not None for each in faults)


@pytest.mark.usefixtures("wrong_planner")
def test_unrehearsed_steps_say_so_at_their_head(capsys: Told) -> None:
    assert main(["steps", STOOL, "--unrehearsed"]) == 0
    out, err = capsys.readouterr()
    assert out.startswith("UNREHEARSED: ")
    assert f"  {MOVED}\n" in out
    assert err == ""
    assert main(["steps", STOOL, "--unrehearsed", "--json"]) == 0
    document = printed(capsys, "steps")
    assert (bool(document["steps"]), document["rehearsed"]) == (True, False)


@pytest.mark.usefixtures("wrong_planner")
def test_an_unrehearsed_booklet_says_so_on_every_page(tmp_path: Path, capsys: Told) -> None:
    assert main(["booklet", STOOL, "--unrehearsed", "-o", str(tmp_path)]) == 0
    html, pdf = (Path(line) for line in capsys.readouterr().out.split())
    pages = pages_of(pdf)
    assert len(pages) > 10
    assert [number for number, page in enumerate(pages, 1) if "UNREHEARSED" not in page] == []
    text = html.read_text(encoding="utf-8")
    cover, *visits = text.partition("<body")[2].split('<section class="visit"')
    assert "UNREHEARSED" in cover.partition("<h1>")[0]
    assert len(visits) > 10
    assert all(visit.count("UNREHEARSED") == 1 for visit in visits)
    assert "Rehearsed:" not in text


def test_sound_steps_are_printed_as_rehearsed(capsys: Told) -> None:
    assert main(["steps", STOOL, "--json"]) == 0
    document = printed(capsys, "steps")
    assert (bool(document["steps"]), document["rehearsed"]) == (True, True)
    assert main(["steps", STOOL]) == 0
    assert "UNREHEARSED" not in capsys.readouterr().out


def test_a_sound_booklet_says_once_that_it_was_rehearsed(tmp_path: Path, capsys: Told) -> None:
    assert main(["booklet", STOOL, "--no-pdf", "-o", str(tmp_path)]) == 0
    text = Path(capsys.readouterr().out.strip()).read_text(encoding="utf-8")
    assert text.count("Rehearsed: ") == 1
    assert "UNREHEARSED" not in text


def test_without_an_order_nothing_is_rehearsed(capsys: Told) -> None:
    assert main(["steps", str(FILES["boot_bench"]), "--json", "--strict"]) == 0
    assert printed(capsys, "steps")["rehearsed"] is True
    with_a_warning = str(FILES["screwed_frame"])
    assert main(["steps", with_a_warning, "--json", "--strict"]) == 1
    assert printed(capsys, "steps")["rehearsed"] is False


def test_check_of_the_whole_says_what_it_did(capsys: Told) -> None:
    assert main(["check", STOOL, "--whole"]) == 0
    out, err = capsys.readouterr()
    assert re.fullmatch(r"planned and rehearsed: \d+ steps, no fault", out.splitlines()[-1])
    assert err == "no problem found\n"
    assert main(["check", STOOL]) == 0
    assert "rehearsed" not in capsys.readouterr().out


def test_check_points_to_the_command_that_lays_out_the_boards(capsys: Told) -> None:
    bench = str(FILES["boot_bench"])
    assert main(["check", bench]) == 0
    last = capsys.readouterr().err.splitlines()[-1]
    assert last == (
        f"the boards are not laid out here: `dryfit stock {bench}` tells whether the wood is enough"
    )
    assert main(["check", str(FILES["screwed_frame"])]) == 0
    assert "dryfit stock" not in capsys.readouterr().err
    assert main(["check", bench, "--whole"]) == 0
    assert "dryfit stock" not in capsys.readouterr().err


@pytest.mark.usefixtures("wrong_planner")
def test_check_of_the_whole_finds_what_keeps_a_plan_from_print(capsys: Told) -> None:
    assert main(["check", STOOL, "--json"]) == 0
    assert printed(capsys, "check")["errors"] == 0
    assert main(["check", STOOL, "--whole", "--json"]) == 1
    document = printed(capsys, "check")
    assert document["errors"] == len(document["findings"]) > 0
    assert {each["code"] for each in document["findings"]} == {"rehearsal-failed"}
    assert main(["check", STOOL, "--whole"]) == 1
    out, err = capsys.readouterr()
    many = f"{document['errors']} fault{'s' if document['errors'] > 1 else ''}"
    assert out.splitlines()[-1] == f"planned and rehearsed: {many}"
    assert "error[rehearsal-failed]: step " in err


def test_check_of_the_whole_finds_what_keeps_an_order_from_being_made(
    tmp_path: Path, capsys: Told
) -> None:
    notes = tmp_path / "ladder.dryfit"
    notes.write_text(
        "piece Ladder\noverall 400 wide, 22 deep, 560 high\ntimber ash\n"
        "2 stiles, upright, 50 x 22, at left and right\n"
        "2 rails, across, 60 x 22, at top and bottom, tenon 30 long into stiles\n"
        "1 rung, across, 40 x 22, up 260, tenon 30 long into stiles\n"
        "glue up frame: stiles, rails\nglue up ladder: frame, rung\n"
    )
    assert main(["check", str(notes)]) == 0
    assert main(["check", str(notes), "--whole"]) == 1
    out, err = capsys.readouterr()
    assert out.splitlines()[-1] == "no plan while there are errors"
    assert "error[cannot-go-together]" in err


def test_the_times_of_the_stages_are_told_on_standard_error_only(capsys: Told) -> None:
    assert main(["steps", STOOL, "--json"]) == 0
    plain = capsys.readouterr()
    assert main(["steps", STOOL, "--json", "-v"]) == 0
    timed = capsys.readouterr()
    assert timed.out == plain.out
    assert plain.err == ""
    stages = [line.partition("%  ")[2] for line in timed.err.splitlines()]
    assert stages[:3] == [
        "reading the notes and placing the parts",
        "laying out the boards",
        "working out the operations",
    ]
    assert re.fullmatch(r"rehearsing \d+ steps", stages[4])
    assert stages[5:] == [""]
    assert timed.err.endswith(" in all\n")
