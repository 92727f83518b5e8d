"""The command line as its user meets it: exit status, one clear line, nothing half written."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

EXAMPLES = Path(__file__).parents[2] / "examples"
STOOL = EXAMPLES / "step_stool.dryfit"
WITH_A_WARNING = Path(__file__).parents[1] / "pieces" / "screwed_frame.dryfit"


def dryfit(
    *arguments: str | Path, cwd: Path, stdin: bytes = b"", **environment: str
) -> subprocess.CompletedProcess[bytes]:
    return subprocess.run(
        [sys.executable, "-m", "dryfit", *map(str, arguments)],
        cwd=cwd,
        input=stdin,
        capture_output=True,
        check=False,
        env={**os.environ, "XDG_CONFIG_HOME": str(cwd), **environment},
    )


def only_line(run: subprocess.CompletedProcess[bytes]) -> str:
    lines = run.stderr.decode().splitlines()
    assert len(lines) == 1, lines
    assert "Traceback" not in lines[0]
    return lines[0]


@pytest.mark.parametrize("example", sorted(EXAMPLES.glob("*.dryfit")), ids=lambda path: path.stem)
def test_examples_have_nothing_above_a_notice(example: Path, tmp_path: Path) -> None:
    run = dryfit("check", example, "--json", cwd=tmp_path)
    document = json.loads(run.stdout)
    assert run.returncode == 0
    assert document["errors"] == 0
    assert {finding["severity"] for finding in document["findings"]} <= {"notice"}


def test_errors_in_the_notes_are_status_1_and_all_are_told(tmp_path: Path) -> None:
    broken = STOOL.read_text().replace("into legs", "into lges").replace("22 thick", "22 thikc")
    run = dryfit("check", "-", "--json", cwd=tmp_path, stdin=broken.encode())
    findings = json.loads(run.stdout)["findings"]
    assert run.returncode == 1
    assert {finding["line"] for finding in findings} >= {14, 16}


def test_notes_that_are_no_text_are_status_2(tmp_path: Path) -> None:
    (tmp_path / "bad.dryfit").write_bytes(b"piece \xff\xfe\n")
    run = dryfit("check", "bad.dryfit", cwd=tmp_path)
    assert run.returncode == 2
    assert "not a UTF-8 text" in only_line(run)


def test_missing_notes_are_status_2(tmp_path: Path) -> None:
    run = dryfit("check", "none.dryfit", cwd=tmp_path)
    assert run.returncode == 2
    assert "none.dryfit: No such file" in only_line(run)


def test_missing_shop_file_is_status_2(tmp_path: Path) -> None:
    run = dryfit("check", STOOL, "--shop", "none.toml", cwd=tmp_path)
    assert run.returncode == 2
    assert "none.toml" in only_line(run)


def test_the_output_folder_is_made(tmp_path: Path) -> None:
    run = dryfit("booklet", STOOL, "-o", "booklets/stool", "--no-pdf", cwd=tmp_path)
    assert run.returncode == 0
    assert (tmp_path / "booklets" / "stool" / "step_stool.html").is_file()


def test_an_output_folder_that_is_a_file_is_status_2(tmp_path: Path) -> None:
    (tmp_path / "taken").write_text("a file")
    run = dryfit("booklet", STOOL, "-o", "taken", "--no-pdf", cwd=tmp_path)
    assert run.returncode == 2
    assert "taken" in only_line(run)
    assert (tmp_path / "taken").read_text() == "a file"


def test_a_line_that_cannot_be_read_brings_no_false_errors(tmp_path: Path) -> None:
    broken = STOOL.read_text().replace("4 legs, upright", "4 legs, uprigth")
    run = dryfit("check", "-", "--json", cwd=tmp_path, stdin=broken.encode())
    findings = json.loads(run.stdout)["findings"]
    assert [(finding["line"], finding["text"]) for finding in findings] == [(13, "uprigth")]


def test_output_folder_that_cannot_be_written_is_status_2(tmp_path: Path) -> None:
    # The kernel's own folder refuses files even to the superuser, as whom CI runs.
    run = dryfit("booklet", STOOL, "-o", "/proc", "--no-pdf", cwd=tmp_path)
    assert run.returncode == 2
    assert "/proc" in only_line(run)


def test_a_piece_that_cannot_be_planned_writes_nothing(tmp_path: Path) -> None:
    broken = STOOL.read_text().replace("into legs", "into lges")
    run = dryfit("booklet", "-", cwd=tmp_path, stdin=broken.encode())
    assert run.returncode == 1
    assert list(tmp_path.iterdir()) == []
    assert run.stdout == b""


def test_parts_as_comma_separated_values(tmp_path: Path) -> None:
    run = dryfit("parts", STOOL, "--csv", cwd=tmp_path)
    lines = run.stdout.decode().splitlines()
    assert lines[0] == "name,count,timber,length,width,thickness,shoulder_length,unit,remarks"
    assert lines[2] == "long rail,2,ash,350,55,20,310,mm,"


def test_json_is_the_only_thing_on_standard_output(tmp_path: Path) -> None:
    for command in ("check", "parts", "steps"):
        run = dryfit(command, STOOL, "--json", cwd=tmp_path)
        assert run.returncode == 0
        assert run.stderr == b""
        assert json.loads(run.stdout)["format"] == f"dryfit-{command}/1"


def test_booklet_names_its_files_and_makes_the_same_bytes_each_time(tmp_path: Path) -> None:
    stdout, files = made_whatever_the_hash_seed(("booklet", "-o", "."), tmp_path)
    assert stdout.decode().split() == ["step_stool.html", "step_stool.pdf"] == list(files)
    assert files["step_stool.pdf"].startswith(b"%PDF")


@pytest.mark.parametrize("command", [("parts", "--json"), ("steps", "--json")])
def test_same_bytes_whatever_the_hash_seed(command: tuple[str, ...], tmp_path: Path) -> None:
    stdout, files = made_whatever_the_hash_seed(command, tmp_path)
    assert stdout
    assert files == {}


def made_whatever_the_hash_seed(
    command: tuple[str, ...], tmp_path: Path
) -> tuple[bytes, dict[str, bytes]]:
    """What a command prints and the files it writes, the same of two processes."""
    made = []
    for seed in ("1", "2"):
        folder = tmp_path / seed
        folder.mkdir()
        run = dryfit(command[0], STOOL, *command[1:], cwd=folder, PYTHONHASHSEED=seed)
        assert run.returncode == 0
        made.append((run.stdout, {p.name: p.read_bytes() for p in sorted(folder.iterdir())}))
    assert made[0] == made[1]
    return made[0]


def test_strict_makes_a_warning_an_error(tmp_path: Path) -> None:
    lenient = dryfit("check", WITH_A_WARNING, "--json", cwd=tmp_path)
    strict = dryfit("check", WITH_A_WARNING, "--json", "--strict", cwd=tmp_path)
    before, after = json.loads(lenient.stdout), json.loads(strict.stdout)
    assert (lenient.returncode, before["errors"], before["warnings"]) == (0, 0, 1)
    assert (strict.returncode, after["errors"], after["warnings"]) == (1, 1, 0)
    assert [finding["severity"] for finding in after["findings"]] == ["error"]
    shown = dryfit("check", WITH_A_WARNING, "--strict", cwd=tmp_path)
    assert shown.stderr.startswith(b"error[screw-in-end-grain]")


def test_strict_plans_nothing_with_a_warning(tmp_path: Path) -> None:
    steps = dryfit("steps", WITH_A_WARNING, "--json", "--strict", cwd=tmp_path)
    assert steps.returncode == 1
    assert json.loads(steps.stdout)["steps"] == []
    booklet = dryfit("booklet", WITH_A_WARNING, "--strict", cwd=tmp_path)
    assert (booklet.returncode, booklet.stdout, list(tmp_path.iterdir())) == (1, b"", [])


def test_strict_minds_no_piece_without_a_warning(tmp_path: Path) -> None:
    for command in ("check", "parts", "steps"):
        assert dryfit(command, STOOL, "--strict", cwd=tmp_path).returncode == 0


def test_why_tells_of_figures_and_of_steps(tmp_path: Path) -> None:
    run = dryfit("why", STOOL, "legs", "base / glue up", cwd=tmp_path)
    assert (run.returncode, run.stderr) == (0, b"")
    told = run.stdout.decode()
    # 4 legs under a seat of 22: 240 high in all.
    assert told.startswith(
        "leg: 4 copies\n  length 218 = overall height 240 - thickness of seat 22\n"
    )
    assert "base / glue up\n" in told
    assert "  - has to come before step " in told
