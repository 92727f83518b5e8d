"""Every figure on a joint's line is read, or said to be one that the joint does not take."""

import pytest

from dryfit.diagnostics import Source
from dryfit.notes import parse
from dryfit.piece import declare

HEAD = """\
piece X
overall 420 wide, 300 deep, 240 high
timber ash
4 legs, upright, 40 x 40, at corners
2 rails, across, 60 x 20, at front and back
2 ends, front to back, 60 x 20, at left and right
"""


def codes(joint: str, on_the_line: str = "") -> list[str]:
    head = HEAD.replace("at front and back", f"at front and back{on_the_line}")
    notes, in_notes = parse(Source("notes.dryfit", f"{head}rails and ends {joint}\n"))
    _, in_piece = declare(notes)
    return [finding.code for finding in (*in_notes, *in_piece)]


@pytest.mark.parametrize(
    "joint",
    [
        "into legs: tenon 20, 8, 40",
        "into legs: 2 tenons, 20 long, 5 from bottom",
        "into legs: tenon 20 long, 4 pegs, 6 dia",
        "into legs: tenon 20, drawbored, 2 pegs 6 thick",
        "into legs: tenon 20, haunch 10 long, 6 deep",
        "into legs: tenon 20, shoulder 5 below, shoulder 3 above",
        "into legs: housing 9 deep",
        "crossing legs: half lap 9 deep",
    ],
)
def test_the_sizes_of_a_joint_are_taken(joint: str) -> None:
    assert codes(joint) == []


@pytest.mark.parametrize(
    "joint",
    [
        "into legs: tenon 20, 8, 40, 5",
        "into legs: tenon 20 long, 30 long",
        "into legs: tenon 20, 9 deep",
        "into legs: tenon 20, 2 wedges, 3 thick",
        "into legs: tenon 20, pegs 6 long",
        "into legs: housing 9 deep, 5 from bottom",
        "into legs: 2 housings 9 deep",
        "into legs: screws 40 long",
        "into legs: 3 screws",
        "crossing legs: half lap 9 deep, 4 wide",
    ],
)
def test_what_a_joint_does_not_take_is_told_once(joint: str) -> None:
    assert codes(joint) == ["joint-size-unused"]


@pytest.mark.parametrize("said", ["4 pegs, 6 pegs", "shoulder 5 below, shoulder 3 below"])
def test_two_figures_for_one_thing_are_said_twice(said: str) -> None:
    assert codes(f"into legs: tenon 20, {said}") == ["said-twice"]


@pytest.mark.parametrize(
    ("on_the_line", "joint", "expected"),
    [
        (", tenon 20", "into legs", []),
        (", tenon 20", "into legs: tenon 15", ["said-twice"]),
        (", tenon 20, tenon 15", "into legs", ["said-twice"]),
    ],
)
def test_a_joint_is_named_once(on_the_line: str, joint: str, expected: list[str]) -> None:
    assert codes(joint, on_the_line) == expected
