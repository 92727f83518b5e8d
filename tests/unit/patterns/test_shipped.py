"""The shipped patterns at their defaults, at both ends of each range, and just outside."""

import re
from collections.abc import Iterator
from fractions import Fraction
from pathlib import Path

import pytest
from tests.pieces.reading import checked, codes, errors

from dryfit import workshop
from dryfit.diagnostics import Source
from dryfit.guide.page import WIDTH
from dryfit.guide.patterns import patterns_text
from dryfit.notes import parse
from dryfit.notes.tree import Number, PatternBlock, Sum
from dryfit.patterns import settings_of, shipped, sketch_of, start_of
from dryfit.patterns.library import SHIPPED

BLOCKS = {block.name: block for block in shipped()}
# A board thicker than its post, or a tenon longer than the post is deep, is refused by checks of
# the trade and not by the range: the other parameter has to go with it.
GOES_WITH = {
    ("apron base", "board", "most"): "leg 70 mm",
}


def mm(amount: Sum | None) -> Fraction:
    assert isinstance(amount, Number)
    assert amount.quantity is not None
    return amount.quantity.value


def ends() -> Iterator[tuple[str, str, str]]:
    for block in BLOCKS.values():
        for parameter in block.parameters:
            if parameter.least is not None:
                yield block.name, parameter.name, "least"
                yield block.name, parameter.name, "most"


def above_nothing() -> Iterator[tuple[str, str, str]]:
    return (each for each in ends() if bound(BLOCKS[each[0]], *each[1:]) > 0)


SIZES = {"width": "wide", "depth": "deep", "height": "high"}


def used(name: str, setting: str) -> str:
    """The notes to begin with, and the setting in the line of the pattern.

    A size of the whole takes the place of the one that is there, on the overall line too.
    """
    text = start_of(BLOCKS[name])
    word, _, figure = setting.partition(" ")
    if word in SIZES:
        return re.sub(rf"[0-9]+ {SIZES[word]}", f"{figure} {SIZES[word]}", text)
    lines = text.split("\n")
    return "\n".join(
        f"{line}, {setting}" if ", as " in line and line[0] != "#" else line for line in lines
    )


def bound(block: PatternBlock, name: str, end: str) -> Fraction:
    parameter = next(each for each in block.parameters if each.name == name)
    return mm(parameter.least if end == "least" else parameter.most)


def test_they_are_there() -> None:
    assert set(BLOCKS) >= {
        "apron base",
        "case",
        "dovetailed drawer",
        "face frame",
        "framed door",
        "lapped frame",
        "moulding",
        "panelled frame",
        "plank top",
        "plinth",
        "plywood drawer",
        "slatted door",
    }


@pytest.mark.parametrize("path", sorted(SHIPPED.glob("*.dryfit")), ids=lambda path: path.stem)
def test_a_shipped_file_is_read_without_a_finding(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    notes, findings = parse(Source(path.name, text))
    assert [finding.message for finding in findings] == []
    assert [block.name.replace(" ", "_") for block in notes.patterns] == [path.stem]


@pytest.mark.parametrize("name", sorted(BLOCKS))
def test_before_it_is_used_a_pattern_shows_what_each_parameter_measures(name: str) -> None:
    block = BLOCKS[name]
    sketch = "\n".join(sketch_of(block))
    for parameter in block.parameters:
        assert parameter.name in sketch
        if parameter.name not in SIZES:
            assert None not in (parameter.default, parameter.least, parameter.most)
    assert sketch.count("+-") > 4
    assert "Proportions: " in sketch
    shown = start_of(block)
    told = patterns_text()
    for line in sketch_of(block):
        assert f"# {line}".rstrip() in shown.split("\n")
        assert line in told.split("\n")
    for line in settings_of(block):
        assert line in shown
        assert line in told
    assert all(len(line) <= WIDTH for line in (*shown.split("\n"), *told.split("\n")))


@pytest.mark.parametrize("name", sorted(BLOCKS))
def test_notes_to_begin_with_can_be_planned_and_rehearsed(name: str) -> None:
    shown = checked(start_of(BLOCKS[name]))
    plan, _ = workshop.plan(shown, lambda _: None)
    assert plan is not None
    plan, faults = workshop.rehearse(shown, plan, lambda _: None)
    assert [fault.message for fault in faults] == []
    assert plan is not None


@pytest.mark.parametrize("name", sorted(BLOCKS))
def test_notes_to_begin_with_have_no_finding(name: str) -> None:
    assert codes(checked(start_of(BLOCKS[name]))) == []


@pytest.mark.parametrize(("name", "parameter", "end"), list(ends()))
def test_both_ends_of_each_range_can_be_built(name: str, parameter: str, end: str) -> None:
    setting = f"{parameter} {bound(BLOCKS[name], parameter, end)} mm"
    extra = GOES_WITH.get((name, parameter, end))
    found = checked(used(name, f"{setting}, {extra}" if extra else setting))
    assert [finding.message for finding in errors(found)] == []


@pytest.mark.parametrize("leg", [30, 31, 34, 37, 38, 45, 52, 70, 100])
def test_an_apron_base_has_aprons_that_suit_its_legs_whatever_these_are(leg: int) -> None:
    """Tenons half a leg long leave 3 mm between them where aprons are 2/5 of it, set back 2."""
    assert codes(checked(used("apron base", f"leg {leg} mm"))) == []


@pytest.mark.parametrize(("name", "parameter", "end"), list(above_nothing()))
def test_just_outside_a_range_is_refused_on_the_line_that_uses_it(
    name: str, parameter: str, end: str
) -> None:
    beyond = bound(BLOCKS[name], parameter, end) + (1 if end == "most" else -1)
    found = errors(checked(used(name, f"{parameter} {beyond} mm")))
    assert [finding.code for finding in found] == ["parameter-out-of-range"]
    assert found[0].span is not None
    assert "as " in found[0].span.told().source.lines()[found[0].span.told().line - 1]


def test_without_a_pattern_the_notes_to_begin_with_say_what_is_missing() -> None:
    assert [finding.code for finding in errors(checked(start_of(None)))] == ["no-parts"]
