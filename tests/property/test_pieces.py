"""Change one size in the notes: what depends on it changes with it, and nothing else does.

What a figure depends on is read from the places in the notes that it and its inputs rest on.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from functools import cache

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from tests.pieces.reading import FILES, checked, errors, model_of, model_of_piece, text_of

from dryfit.diagnostics import Figure
from dryfit.placing.model import Model
from dryfit.quantities.units import INCH

# Lines with sizes of the piece; stock, place, times and coats decide no figure of the placed piece.
NO_SIZES = re.compile(
    r"(?:piece|note|units|timber|have|glue up|finish|place|scribe|way in|wood at|stands|#)\b|$"
)
COUNTED = re.compile(
    r" (?:staves|buttons|hinges|tenons|dowels|biscuits?|loose tenons?|splines?|wedges"
    r"|(?:half-blind )?dovetails|at|days|degrees|kg|g|in \d+)\b"
)
SLOPE = re.compile(r"\d in$")
"""What stands before the second number of `splayed 1 in 7`."""
NUMBER = re.compile(r"(?<![\d/.])\d+(?:\.\d+)?(?! *[/\d])")


@dataclass(frozen=True)
class Place:
    """A number in the notes: line and columns from 1, end exclusive, and its value."""

    line: int
    start: int
    end: int
    value: Fraction


def is_count(words: str, number: re.Match[str]) -> bool:
    """Whether a number counts parts, staves, holes or tenons, how often, or says a slope."""
    before, after = words[: number.start()].rstrip(), words[number.end() :]
    if after.startswith(" * ") or SLOPE.search(before):
        return True
    if before.endswith(" gap"):
        return False
    return before.endswith(("glued from", "bought")) or not before or bool(COUNTED.match(after))


@cache
def numbers(name: str) -> tuple[Place, ...]:
    """The sizes that the notes write, without counts of parts."""
    found = []
    for line, text in enumerate(text_of(name).split("\n"), start=1):
        words = text.split("#")[0]
        if NO_SIZES.match(words):
            continue
        for number in NUMBER.finditer(words):
            if not is_count(words, number):
                value = Fraction(number.group())
                found.append(Place(line, number.start() + 1, number.end() + 1, value))
    return tuple(found)


def with_number(name: str, place: Place, value: Fraction) -> str:
    lines = text_of(name).split("\n")
    line = lines[place.line - 1]
    number = str(float(value)) if value.denominator > 1 else str(value)
    lines[place.line - 1] = line[: place.start - 1] + number + line[place.end - 1 :]
    return "\n".join(lines)


@cache
def model(name: str) -> Model:
    return model_of_piece(name)


def rests_on(figures: dict[str, Figure], name: str, seen: set[str]) -> set[tuple[int, int, int]]:
    """The places (line, start, end) that a figure and all its inputs rest on."""
    if name in seen or name not in figures:
        return set()
    seen.add(name)
    figure = figures[name]
    places = {
        (each.line, each.column, each.end_column)
        for span in figure.spans
        for each in (span, span.told())
    }
    for each in figure.inputs:
        places |= rests_on(figures, each, seen)
    return places


def dependants(name: str, place: Place) -> set[str]:
    figures = dict(model(name).figures)
    return {
        figure
        for figure in figures
        for line, start, end in rests_on(figures, figure, set())
        if line == place.line and start <= place.start and place.end <= end
    }


METRIC = [name for name in FILES if "units mm" in text_of(name)]
# Play that nobody wrote is 1 or 1.5 mm, and 1/32 or 1/16 in on inch pieces: that of a drawer's
# bottom in its grooves, or between boards.  An end that floats stands 3 mm off, or 1/8 in, and a
# runner is 40 mm wide, or 1 1/2 in.  What a sheet measures sets its parts, in the unit of its line.
BY_THE_RULER = {
    "bedside_drawer",
    "fronted_drawer",
    "hinged_case",
    "lapped_back",
    "letter_case",
    "linen_chest",
    "nail_drawer",
    "pencil_drawer",
    "pin_case",
    "plated_top",
    "pocket_frame",
    "sliding_lid_box",
    "solid_drawer",
    "spice_case",
    "tool_cupboard",
    "wall_cabinet",
    "window_bookcase",
}
CHANGES = st.sampled_from([Fraction(1), Fraction(-1), Fraction(2), Fraction(-3), Fraction(5)])


@pytest.mark.parametrize("name", METRIC)
@settings(max_examples=4)
@given(data=st.data())
def test_only_what_depends_on_a_size_changes_with_it(name: str, data: st.DataObject) -> None:
    place = data.draw(st.sampled_from(numbers(name)))
    value = place.value + data.draw(CHANGES)
    assume(value > 0)
    again = checked(with_number(name, place, value))
    assume(again.model is not None and not errors(again))
    assert again.model is not None
    before, after = model(name).figures, again.model.figures
    same_names = before.keys() & after.keys()
    changed = {figure for figure in same_names if before[figure].value != after[figure].value}
    assert changed <= dependants(name, place), text_of(name).split("\n")[place.line - 1]


@pytest.mark.parametrize("name", METRIC)
@settings(max_examples=4)
@given(data=st.data())
def test_a_size_that_is_summed_up_moves_the_sum(name: str, data: st.DataObject) -> None:
    place = data.draw(st.sampled_from(numbers(name)))
    value = place.value + data.draw(CHANGES)
    assume(value > 0)
    again = checked(with_number(name, place, value))
    assume(again.model is not None and not errors(again))
    assert again.model is not None
    before, after = model(name).figures, again.model.figures
    for figure in before.values():
        written = {(span.line, span.column) for span in figure.spans}
        if figure.rule == "written" and written == {(place.line, place.start)}:
            assert after[figure.name].value != figure.value
        if figure.name in after and figure.terms:
            moved = sum(t.amount for t in after[figure.name].terms)
            assert moved == after[figure.name].value


def in_inches(text: str) -> str:
    """Notes in whole millimetres written again in inches: every measure becomes a fraction."""
    lines = []
    for line in text.split("\n"):
        words = line.split("#")[0].rstrip()
        if words.startswith("units"):
            words = "units inches to 1/64"
        elif not NO_SIZES.match(words):
            words = NUMBER.sub(_as_inches, words.replace(" mm", ""))
        lines.append(words)
    return "\n".join(lines)


def _as_inches(number: re.Match[str]) -> str:
    if is_count(number.string, number):
        return number.group()
    inches = Fraction(number.group()) / INCH
    return f"{inches.numerator}/{inches.denominator} in" if inches else "0"


@pytest.mark.parametrize("name", [name for name in METRIC if name not in BY_THE_RULER])
def test_inches_and_millimetres_of_one_piece_give_the_same_exact_values(name: str) -> None:
    metric, inches = model(name), model_of(in_inches(text_of(name)))
    assert inches.display.unit == "in"
    for part in metric.parts:
        if part.made:
            continue
        other = inches.part(part.name)
        assert (other.length, other.width, other.thickness) == (
            part.length,
            part.width,
            part.thickness,
        )
        assert [copy.box for copy in other.copies] == [copy.box for copy in part.copies]
