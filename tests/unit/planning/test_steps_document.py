"""The steps document against its schema and the contract's words."""

import json
from pathlib import Path

import jsonschema
import pytest
from tests.unit.operations.worked import piece
from tests.unit.planning.planned import plan_of

import dryfit
from dryfit.plan.as_json import steps_document
from dryfit.quantities import Display

SCHEMA = json.loads(
    (Path(dryfit.__file__).parent / "schemas" / "steps.json").read_text(encoding="utf-8")
)
Json = dict[str, object]


def document(name: str = "boot_bench") -> Json:
    model = piece(name)
    made = steps_document(
        plan_of(name),
        piece=model.piece,
        notes=f"{name}.dryfit",
        display=model.display,
        findings=[],
    )
    read: Json = json.loads(json.dumps(made))
    return read


def rows(value: object) -> list[Json]:
    assert isinstance(value, list)
    return value


def row(value: object) -> Json:
    assert isinstance(value, dict)
    return value


def step(name: str) -> Json:
    steps = rows(document()["steps"])
    return next(
        each for each in steps if any(work["operation"] == name for work in rows(each["work"]))
    )


@pytest.mark.parametrize("name", ["boot_bench", "step_stool"])
def test_the_document_keeps_its_schema(name: str) -> None:
    jsonschema.Draft202012Validator.check_schema(SCHEMA)
    jsonschema.validate(document(name), SCHEMA)


def test_a_wrong_document_does_not_pass() -> None:
    wrong = document()
    rows(wrong["steps"])[0]["extra"] = 1
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate(wrong, SCHEMA)


def test_without_a_plan_everything_is_null_or_empty() -> None:
    empty = steps_document(
        None, piece=None, notes="x.dryfit", display=Display(), findings=[{"code": "x"}]
    )
    jsonschema.validate(empty, SCHEMA)
    assert (empty["steps"], empty["totals"], empty["shop"]) == ([], None, None)
    assert empty["findings"] == [{"code": "x"}]


def test_keys_stand_in_the_order_of_the_contract() -> None:
    assert list(document()) == [
        "format", "piece", "notes", "shop", "edition", "favour", "cutters", "accessories",
        "measures", "steps", "totals", "rehearsed", "findings",
    ]  # fmt: skip
    assert list(step("post / length"))[:8] == [
        "number", "visit", "id", "station", "settings", "changed", "work", "minutes",
    ]  # fmt: skip


def test_the_housing_step_of_the_contract() -> None:
    housing = step("post / housing for bottom end rail")
    settings = row(housing["settings"])
    assert settings["cutter"] == "dado 20"
    assert settings["accessory"] == "sled"
    assert settings["tilt"] == {"exact": "0 deg", "deg": 0.0, "shown": "0"}
    assert settings["height"] == {"exact": "27 mm", "mm": 27.0, "shown": "27", "above": "table"}
    assert settings["stop"] == {
        "exact": "105 mm",
        "mm": 105.0,
        "shown": "105",
        "to": "near",
        "far": {"exact": "125 mm", "mm": 125.0, "shown": "125"},
        "from": "R",
    }
    work = rows(housing["work"])[0]
    assert work["features"] == ["cross slot for bottom end rail"]
    assert [list(each) for each in rows(work["passes"])] == [["spacer"], ["spacer"], ["between"]]
    assert rows(work["passes"])[0]["spacer"] is None
    assert sum(float(str(each["minutes"])) for each in rows(housing["work"])) == 3.0


def test_a_measured_length_says_so() -> None:
    (measure,) = rows(document()["measures"])
    assert measure["name"] == "base length"
    assert measure["sets"] == ["slat / length"]
    slat = step("slat / length")
    stop = row(row(slat["settings"])["stop"])
    assert stop["nominal"] is True
    assert stop["measure"] == "base length"
    assert measure["step"] < slat["number"]  # type: ignore[operator]


def test_a_glue_step_has_its_clamps_and_five_lags() -> None:
    glue = step("base / glue up")
    assert glue["station"] == "glue bench"
    assert rows(glue["work"])[0]["stage"] == "base"
    assert len(rows(glue["lags"])) == 5
    assert [each["count"] for each in rows(glue["clamps"])] == [2]
    assert row(glue["holds"]) == {"clamps": [{"clamp": "bar 1200", "count": 2}]}
    assert "open_minutes" not in step("post / length")
