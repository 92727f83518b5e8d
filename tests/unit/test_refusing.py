"""Faults of a rehearsal as findings: where they stand, and what the first of them adds."""

from functools import cache

import pytest
from tests.pieces.reading import checked_piece

from dryfit import workshop
from dryfit.diagnostics import Diagnostic, Severity
from dryfit.placing.model import Model
from dryfit.plan.plan import Plan
from dryfit.refusing import refusals
from dryfit.rehearsal.fault import Fault, Reason

SIZE = Fault(Reason.SIZE, "rail: it is short", "a length of 350", 15, "long rail / length")


@cache
def made() -> tuple[Plan, Model]:
    found = checked_piece("step_stool")
    plan, _ = workshop.plan(found, lambda _: None)
    assert plan is not None
    assert found.model is not None
    return plan, found.model


def told(*faults: Fault) -> tuple[Diagnostic, ...]:
    return refusals(faults, *made())


def line_of(fault: Fault) -> str:
    (finding,) = told(fault)
    return "" if finding.span is None else finding.span.source.lines()[finding.span.line - 1]


def test_a_fault_is_an_error_with_step_operation_reason_and_need() -> None:
    (finding,) = told(SIZE)
    assert (finding.code, finding.severity, finding.rule) == (
        "rehearsal-failed",
        Severity.ERROR,
        None,
    )
    assert finding.message == "step 15, `long rail / length`: rail: it is short"
    assert finding.notes[0].message == "needed, for the size: a length of 350"
    assert "report it" in finding.hints[0].message


@pytest.mark.parametrize(
    ("operation", "line"),
    [
        ("long rail / length", "2 long rails, across"),
        ("side frame 1 / glue up", "glue up 2 side frames"),
        ("base / glue up", "glue up base"),
        ("an operation that no step has", "piece Step stool"),
        (None, "piece Step stool"),
    ],
)
def test_it_stands_at_the_line_that_it_is_about(operation: str | None, line: str) -> None:
    assert line_of(Fault(Reason.FIT, "it does not fit", "room", None, operation)).startswith(line)


def test_what_is_told_of_a_whole_step_stands_at_its_first_operation() -> None:
    plan, _ = made()
    step = plan.step_of("long rail / length")
    assert step.id == "long rail / length"
    fault = Fault(Reason.SETTING, "stop changes unannounced", "its change", step.number)
    assert line_of(fault).startswith("2 long rails")
    (finding,) = told(fault)
    assert finding.message == f"step {step.number}: stop changes unannounced"


def test_what_is_found_at_the_end_says_so() -> None:
    (finding,) = told(Fault(Reason.COUNT, "leg 5 is left over", "every blank used"))
    assert finding.message == "when all steps are done: leg 5 is left over"


def test_only_the_first_of_several_says_what_to_do() -> None:
    later = Fault(Reason.FIT, "it does not fit", "room", 22, "base / dry fit")
    first, second = told(SIZE, later, later)
    assert [note.message[:16] for note in first.notes] == ["needed, for the ", "this goes wrong "]
    assert (len(first.hints), second.hints, len(second.notes)) == (1, (), 1)


def test_without_a_fault_there_is_nothing_to_tell() -> None:
    assert told() == ()
