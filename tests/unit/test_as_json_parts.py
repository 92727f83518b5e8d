"""The documents of `check` and `parts` are as their schemas say, also of notes with mistakes."""

from __future__ import annotations

import csv
import io
import json
from pathlib import Path

import jsonschema
import pytest
from tests.pieces.reading import FILES, changed, checked, checked_piece, text_of
from tests.unit.placing.test_robust import damaged

import dryfit
from dryfit.cli import main
from dryfit.diagnostics.as_json import Json, findings_json
from dryfit.placing.as_json import parts_csv, parts_document

SCHEMAS = Path(dryfit.__file__).parent / "schemas"


def validator(name: str) -> jsonschema.Draft202012Validator:
    schema = json.loads((SCHEMAS / f"{name}.json").read_text(encoding="utf-8"))
    jsonschema.Draft202012Validator.check_schema(schema)
    return jsonschema.Draft202012Validator(schema)


def document(text: str) -> Json:
    found = checked(text)
    display = found.declared.display
    findings = findings_json(found.findings, display.shown)
    made = parts_document(found.declared.piece, "notes.dryfit", found.model, findings, display.unit)
    again: Json = json.loads(json.dumps(made, ensure_ascii=False))
    return again


@pytest.mark.parametrize("name", FILES)
def test_the_parts_of_every_piece_are_as_the_schema_says(name: str) -> None:
    validator("parts").validate(document(text_of(name)))


@pytest.mark.parametrize("seed", range(0, 300, 10))
def test_also_those_of_damaged_notes(seed: int) -> None:
    validator("parts").validate(document(damaged(seed)))


@pytest.mark.parametrize("command", ["check", "parts"])
@pytest.mark.parametrize("name", FILES)
def test_commands_write_one_document(
    name: str, command: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main([command, "--json", str(FILES[name])]) == 0
    written = json.loads(capsys.readouterr().out)
    validator(command).validate(written)
    assert list(written)[:3] == ["format", "piece", "notes"]
    assert list(written)[-1] == "findings"


def test_a_mistake_is_counted_and_placed(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    notes = tmp_path / "stool.dryfit"
    thin = changed(text_of("step_stool"), ("40 x 40", "35 x 35"))
    notes.write_text(thin, encoding="utf-8")
    assert main(["check", "--json", str(notes)]) == 1
    written = json.loads(capsys.readouterr().out)
    validator("check").validate(written)
    assert written["errors"] == 1
    (finding,) = (f for f in written["findings"] if f["severity"] == "error")
    assert (finding["code"], finding["rule"]) == ("mortises-collide", "H05")
    # A mortise 20 + 1 deep leaves 14 of 35; the other begins at 2 + 7 = 9 and ends at 15.
    assert finding["figures"]["overlap"] == {"exact": "1 mm", "mm": 1.0, "shown": "1"}
    assert finding["text"] in thin.split("\n")[finding["line"] - 1]


def test_without_a_model_all_that_is_worked_out_is_empty() -> None:
    made = document("piece X\noverall 1 wide, 2 deep\n")
    assert made["overall"] is None
    assert [made[key] for key in ("parts", "joints", "assemblies", "hardware")] == [[]] * 4
    assert made["findings"]


def test_an_end_names_the_joint_instance_that_lengthens_it() -> None:
    made = document(text_of("boot_bench"))
    joints = {joint["id"]: joint for joint in made["joints"]}  # type: ignore[attr-defined]
    for part in made["parts"]:  # type: ignore[attr-defined]
        copies = {copy["name"] for copy in part["copies"]}
        for add in part["adds"]:
            assert copies & set(joints[add["joint"]]["between"])


def test_a_length_that_waits_for_a_measurement_says_so() -> None:
    made = document(text_of("boot_bench"))
    (slat,) = (part for part in made["parts"] if part["name"] == "slat")  # type: ignore[attr-defined]
    assert slat["length"]["nominal"] is True
    assert slat["length"]["measure"] == "base length"


@pytest.mark.parametrize("name", FILES)
def test_the_csv_has_one_line_a_part(name: str) -> None:
    model = checked_piece(name).model
    assert model is not None
    rows = list(csv.DictReader(io.StringIO(parts_csv(model))))
    assert [row["name"] for row in rows] == [part.name for part in model.parts]
    assert list(rows[0]) == [
        "name",
        "count",
        "timber",
        "length",
        "width",
        "thickness",
        "shoulder_length",
        "unit",
        "remarks",
    ]
    assert {row["unit"] for row in rows} == {model.display.unit}
    assert [row["length"] for row in rows] == [
        model.display.shown(part.cut_length).rstrip('"') for part in model.parts
    ]
