"""`booklet --drawings DIR`: all drawings as files, written whole or not at all, and named."""

from pathlib import Path
from xml.etree import ElementTree as ET

import pytest
from tests.pieces.reading import FILES

from dryfit.cli import main

STOOL = str(FILES["step_stool"])


def test_drawings_are_written_beside_the_booklet(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    folder = tmp_path / "made" / "drawings"
    run = ["booklet", STOOL, "--no-pdf", "-o", str(tmp_path), "--drawings", str(folder)]
    assert main(run) == 0
    paths = [Path(line) for line in capsys.readouterr().out.splitlines()]
    assert paths[0] == tmp_path / "step_stool.html"
    assert {path.parent for path in paths[1:]} == {folder}
    assert sorted(paths[1:]) == sorted(folder.iterdir())
    names = {path.name for path in paths[1:]}
    assert {"piece.svg", "taken-apart.svg", "time-line.svg"} <= names
    assert {"part-leg-hand-a-and-b-face-and-edge.svg", "part-seat-face-and-edge.svg"} <= names
    assert "part-marked-out-together-legs.svg" in names
    for path in paths[1:]:
        assert ET.parse(path).getroot().get("viewBox")  # noqa: S314 - our own markup


def test_where_no_folder_can_be_made_nothing_is_written(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    blocked = tmp_path / "file"
    blocked.write_text("kept")
    run = ["booklet", STOOL, "--no-pdf", "-o", str(tmp_path / "b"), "--drawings", str(blocked)]
    assert main(run) == 2
    told = capsys.readouterr()
    assert told.out == ""
    assert told.err.startswith("dryfit: ")
    assert blocked.read_text() == "kept"
    assert not list((tmp_path / "b").glob("*"))
