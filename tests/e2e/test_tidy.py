"""`dryfit tidy`: nothing said, nothing lost, and no file touched that is tidy."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

TIDY = b"piece Board\noverall 400 wide, 300 deep, 20 high\n4 legs, upright, 40 x 40  # oak\n"
UNTIDY = TIDY.replace(b"4 legs, upright, 40 x 40  #", b"4 legs ,upright,  40x40 #")


def dryfit(*arguments: str | Path, stdin: bytes = b"") -> subprocess.CompletedProcess[bytes]:
    return subprocess.run(
        [sys.executable, "-m", "dryfit", "tidy", *map(str, arguments)],
        input=stdin,
        capture_output=True,
        check=False,
    )


def test_the_file_is_rewritten_and_nothing_is_said(tmp_path: Path) -> None:
    notes = tmp_path / "board.dryfit"
    notes.write_bytes(UNTIDY)
    run = dryfit(notes)
    assert (run.returncode, run.stdout, run.stderr) == (0, b"", b"")
    assert notes.read_bytes() == TIDY
    assert [path.name for path in tmp_path.iterdir()] == ["board.dryfit"]


def test_a_tidy_file_is_not_touched(tmp_path: Path) -> None:
    notes = tmp_path / "board.dryfit"
    notes.write_bytes(TIDY)
    stood = notes.stat()
    assert dryfit(notes).returncode == 0
    assert notes.stat().st_ino == stood.st_ino
    assert notes.stat().st_mtime_ns == stood.st_mtime_ns


def test_a_link_stays_a_link_and_line_ends_stay(tmp_path: Path) -> None:
    notes, link = tmp_path / "board.dryfit", tmp_path / "link.dryfit"
    notes.write_bytes(UNTIDY.replace(b"\n", b"\r\n"))
    link.symlink_to(notes)
    assert dryfit(link).returncode == 0
    assert link.is_symlink()
    assert notes.read_bytes() == TIDY.replace(b"\n", b"\r\n")


def test_standard_input_goes_to_standard_output() -> None:
    run = dryfit("-", stdin=UNTIDY)
    assert (run.returncode, run.stdout, run.stderr) == (0, TIDY, b"")


def test_check_writes_nothing_and_tells_by_its_status(tmp_path: Path) -> None:
    notes = tmp_path / "board.dryfit"
    notes.write_bytes(UNTIDY)
    run = dryfit(notes, "--check")
    assert (run.returncode, run.stdout, run.stderr) == (1, b"", b"")
    assert notes.read_bytes() == UNTIDY
    assert dryfit("-", "--check", stdin=TIDY).returncode == 0


def test_what_is_no_text_is_left_alone(tmp_path: Path) -> None:
    notes = tmp_path / "board.dryfit"
    notes.write_bytes(b"piece \xff\n")
    run = dryfit(notes)
    assert run.returncode == 2
    assert len(run.stderr.splitlines()) == 1
    assert notes.read_bytes() == b"piece \xff\n"
