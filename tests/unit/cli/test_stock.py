"""`dryfit stock`: text, one JSON document as the schema says, and drawings written whole."""

from __future__ import annotations

import json
from pathlib import Path
from xml.etree import ElementTree as ET

import jsonschema
import pytest
from tests.pieces.reading import FILES

import dryfit
from dryfit.cli import main

SCHEMA = json.loads(
    (Path(dryfit.__file__).parent / "schemas" / "stock.json").read_text(encoding="utf-8")
)
BENCH = str(FILES["boot_bench"])


def test_the_stock_of_the_boot_bench_fits(capsys: pytest.CaptureFixture[str]) -> None:
    # TRADE I1: the stock fits.
    assert main(["stock", BENCH]) == 0
    out = capsys.readouterr().out
    assert out.startswith("Enough wood: 4 boards hold all ")
    assert "planed flat it gives 29 whole" in out


@pytest.mark.parametrize("name", ["boot_bench", "wall_cabinet", "tea_table", "writing_desk"])
def test_the_document_is_as_the_schema_says(name: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["stock", "--json", str(FILES[name])]) == 0
    document = json.loads(capsys.readouterr().out)
    jsonschema.Draft202012Validator(SCHEMA).validate(document)
    assert list(document) == SCHEMA["required"]
    assert (document["verdict"] is None) == (not document["boards"])


def test_drawings_are_files_of_their_own(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    folder = tmp_path / "new" / "folder"
    assert main(["stock", BENCH, "--svg", str(folder)]) == 0
    told = capsys.readouterr().out.splitlines()[-4:]
    assert told == [str(folder / f"board-{letter}.svg") for letter in "abcd"]
    assert sorted(each.name for each in folder.iterdir()) == [f"board-{x}.svg" for x in "abcd"]
    for path in folder.iterdir():
        root = ET.fromstring(path.read_bytes())  # noqa: S314 - our own markup
        assert root.tag == "{http://www.w3.org/2000/svg}svg"


def test_notes_without_boards_have_no_verdict(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["stock", str(FILES["writing_desk"])]) == 0
    assert capsys.readouterr().out.startswith("The notes name no board")


def test_notes_with_an_error_have_a_document_too(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    notes = tmp_path / "bad.dryfit"
    notes.write_text(Path(BENCH).read_text(encoding="utf-8").replace("into posts", "into psots"))
    assert main(["stock", "--json", str(notes)]) == 1
    document = json.loads(capsys.readouterr().out)
    jsonschema.Draft202012Validator(SCHEMA).validate(document)
    assert document["verdict"] is None
    assert document["findings"]


def test_lines_of_one_number_in_two_files_keep_their_own_prices(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    sold = "buy boards of ash, 1200 x {} x 34, rough, €{} each{}\n"
    notes = tmp_path / "panel.dryfit"
    notes.write_text(
        "piece Panel\nunits mm\noverall 900 wide, 300 deep, 20 high\ntimber ash\n"
        'stock from "yard.dryfit"\n'
        + sold.format(170, 20, ", at most 1")
        # Two boards of 158 are needed, and line 6 of the notes has one only.
        + "1 top, flat, 20 thick, glued from 2 boards\nfinish oil varnish, 1 coat\n",
        encoding="utf-8",
    )
    (tmp_path / "yard.dryfit").write_text("\n" * 5 + sold.format(180, 30, ""), encoding="utf-8")
    assert main(["stock", "--json", str(notes)]) == 0
    told = capsys.readouterr()
    document = json.loads(told.out)
    jsonschema.Draft202012Validator(SCHEMA).validate(document)
    assert [board["price"] for board in document["boards"]] == ["20.00", "30.00"]
    assert main(["stock", str(notes)]) == 0
    assert "x 34 for €20.00 and 1 board of ash" in capsys.readouterr().err


def test_why_tells_of_a_blank_and_of_a_board(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["why", BENCH, "post blank 1", "Board A"]) == 0
    out = capsys.readouterr().out
    assert out.startswith("post blank 1 (a): 985 x 50 x 34, for ")
    assert "\nboard A: board of ash, 2400 x 160 x 34, rough, cup 4 (line 6)\n" in out
    assert "planed flat it gives 29 whole" in out


def test_bark_that_the_saw_takes_whole_is_sawn_off_along_a_line(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    notes = tmp_path / "slab.dryfit"
    notes.write_text(
        "piece Panel\nunits mm\noverall 900 wide, 300 deep, 20 high\ntimber ash\n"
        "have 1 slab of ash, 1400 x 420 x 34, rough, waney both edges\n"
        "1 top, flat, 20 thick, glued from staves\nfinish oil varnish, 1 coat\n"
    )
    assert main(["steps", str(notes)]) == 0
    out = capsys.readouterr().out
    assert "top stave / raw edge" in out
    assert "fence 0 mm" not in out
