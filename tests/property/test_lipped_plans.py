"""The oracle on lipped sheets: sound as planned, and what is wrong with a lip is found."""

import copy
from functools import cache

import pytest
from tests.pieces.lipped import CASE, lipped_piece
from tests.property.plan_oracle import faults
from tests.property.plan_oracle.documents import printed_of, shop_tables
from tests.property.plan_oracle.reading import Json

LIPS = (
    ("side", (("E", 8, "birch"), ("E2", 8, "birch"), ("R", 8, "birch"))),
    ("shelf", (("E2", 3, "birch"),)),
    ("bottom", (("E", 1, None),)),
)


@cache
def _documents() -> tuple[Json, Json]:
    checked, plan, findings = lipped_piece(CASE, *LIPS)
    return printed_of(checked, plan, findings)


def _damaged() -> tuple[Json, Json]:
    steps, parts = _documents()
    return copy.deepcopy(steps), parts


def _step(steps: Json, operation: str) -> Json:
    found: Json = next(
        step
        for step in steps["steps"]
        if any(row["operation"] == operation for row in step["work"])
    )
    return found


def test_the_plan_is_sound() -> None:
    assert faults(*_documents(), shop_tables()) == []


@pytest.mark.parametrize(
    ("operation", "said"),
    [
        ("side / trim lip / ends", "2 times lipped, 1 times trimmed"),
        ("side / lip / edges", "it is glued on 0 times"),
        ("bottom / trim band", "1 times lipped, 0 times trimmed"),
    ],
)
def test_a_deed_that_is_left_out_is_missed(operation: str, said: str) -> None:
    steps, parts = _damaged()
    step = _step(steps, operation)
    step["work"] = [row for row in step["work"] if row["operation"] != operation]
    assert any(said in fault for fault in faults(steps, parts, shop_tables()))


def test_a_core_as_wide_as_the_part_is_refused() -> None:
    steps, parts = _damaged()
    _step(steps, "side / width")["settings"]["fence"]["exact"] = "300 mm"
    found = faults(steps, parts, shop_tables())
    assert any("ripped to 300 instead of 284" in fault for fault in found)


def test_a_strip_too_short_is_refused() -> None:
    steps, parts = _damaged()
    _step(steps, "side edge lip / length")["settings"]["stop"]["exact"] = "480 mm"
    found = faults(steps, parts, shop_tables())
    assert "left side lip at E: 480 long for 500" in found


def test_a_trim_before_the_glue_is_hard_is_refused() -> None:
    steps, parts = _damaged()
    lip, trim = (_step(steps, f"side / {each} / edges") for each in ("lip", "trim lip"))
    trim["starts"] = lip["ends"]
    found = faults(steps, parts, shop_tables())
    assert "side / trim lip / edges comes too soon after side / lip / edges" in found
