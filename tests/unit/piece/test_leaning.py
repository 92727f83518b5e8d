"""Sums that lean on sizes which only the placed piece knows, and how they are read back."""

from __future__ import annotations

from fractions import Fraction

import pytest
from tests.pieces.reading import changed, checked, codes, errors, model_of

from dryfit.piece.leaning import LinearForm, NotLinearError, of_figure
from dryfit.piece.readings import readings
from dryfit.quantities import LENGTH, NUMBER, TIME, KindError, Quantity

CASE = """piece Case
units mm
overall 800 wide, 400 deep, 900 high
timber oak
play = 2
door width = bay.width - 2 * play
2 sides, upright, facing side, 400 x 18, at left and right
1 top, flat, across, 400 x 18, housing 6 into sides, down 0
1 bottom, flat, across, 400 x 18, housing 6 into sides, up 60
bay = opening between sides and top and bottom
glue up case: sides, top, bottom, cure 2 h
1 door, facing front, door width wide, 20 thick, in bay, gap play up and down
"""


def length(value: int) -> LinearForm:
    return LinearForm(Quantity(Fraction(value), LENGTH))


def number(value: int) -> LinearForm:
    return LinearForm(Quantity(Fraction(value), NUMBER))


def factors(form: LinearForm) -> dict[str, Fraction]:
    return {f"{lean.subject}.{lean.dimension}": lean.factor for lean in form.leans}


def test_a_sum_keeps_each_figure_once_and_drops_what_cancels() -> None:
    bay, rail = of_figure("bay", "width"), of_figure("rail", "length")
    form = bay.times(number(3)).minus(rail).plus(bay).minus(length(4))
    assert factors(form) == {"bay.width": 4, "rail.length": -1}
    assert form.constant == Quantity(Fraction(-4), LENGTH)
    assert factors(form.minus(bay.times(number(4)))) == {"rail.length": -1}
    assert factors(form.over(number(8))) == {
        "bay.width": Fraction(1, 2),
        "rail.length": Fraction(-1, 8),
    }


def test_a_sum_knows_its_kind() -> None:
    bay = of_figure("bay", "width")
    with pytest.raises(KindError):
        bay.plus(LinearForm(Quantity(Fraction(1), TIME)))
    assert bay.over(length(20)).constant.kind == NUMBER
    assert bay.times(length(2)).constant.kind != LENGTH


def test_sizes_that_are_not_known_are_not_multiplied() -> None:
    bay, rail = of_figure("bay", "width"), of_figure("rail", "length")
    for combine in (bay.times, bay.over, length(20).over):
        with pytest.raises(NotLinearError):
            combine(rail)


def test_a_value_may_lean_on_an_opening() -> None:
    figure = model_of(CASE).figures["door.width"]
    assert figure.value == 800 - 2 * 18 - 4
    assert {term.label: term.amount for term in figure.terms} == {
        "width of bay": 764,
        "as written": -4,
    }
    assert "bay.width" in figure.inputs
    # The line of the door, and those of the values behind it.
    assert {each.line for each in figure.spans} == {12, 6, 5}


@pytest.mark.parametrize(
    ("phrase", "axis", "low"),
    [
        ("up bay.height / 4, 30 from front of bay", 2, 78 - 78 + 201),
        ("up 100, bay.height / 12 from front of bay", 1, 67),
        ("up 100, set back bay.height / 12", 1, 67),
        ("up 100, gap bay.depth / 40 across, 30 from front of bay", 0, 18 + 10),
    ],
)
def test_places_and_gaps_may_lean(phrase: str, axis: int, low: int) -> None:
    model = model_of(f"{CASE}1 shelf, flat, 18 thick, 300 wide, in bay, {phrase}\n")
    assert model.part("shelf").copies[0].box.low[axis] == low


@pytest.mark.parametrize(
    ("line", "code"),
    [
        ("1 shelf, flat, 18 thick, bay.width * door.length long, in bay, up 100", "not-linear"),
        ("1 shelf, flat, 18 thick, 900 / bay.width long, in bay, up 100", "not-linear"),
        ("1 shelf, flat, 18 thick, housing bay.width / 100 into sides, up 100", "size-not-written"),
        ("1 shelf, flat, bay.width * bay.width wide, in bay", "not-linear"),
        ("1 shelf, flat, bay.width * 20 mm wide, in bay", "wrong-kind"),
        ("1 shelf, flat, bay.width + 2 h wide, in bay", "mixed-kinds"),
    ],
)
def test_what_a_sum_cannot_say_is_refused_with_what_to_write(line: str, code: str) -> None:
    found = [each for each in errors(checked(f"{CASE}{line}\n")) if each.code == code]
    assert len(found) == 1
    assert found[0].hints
    assert found[0].span is not None
    assert found[0].span.line == 13


def test_sums_that_lean_on_each_other_as_written_are_a_circle() -> None:
    text = changed(CASE, ("play = 2", "play = door width / 4"))
    assert "circle" in codes(checked(text))


def test_the_reading_of_every_sum_with_names_is_echoed() -> None:
    text = f"{CASE}reach = (width - 2 * play) / (2 - 1)\n"
    text += (
        "1 shelf, flat, 18 thick, reach - door.width long, in bay, up 100, 30 from front of bay\n"
    )
    found = checked(text)
    assert found.model is not None
    figures = found.model.figures
    told = readings(found.declared, lambda name: figures[name].value if name in figures else None)
    assert [(words, span.line) for words, span in told] == [
        ("door width = bay width - 2 * play = 760", 6),
        ("reach = (piece width - 2 * play) / (2 - 1) = 796", 13),
        ("shelf length = reach - door width = 36", 14),
    ]


def test_a_reading_without_a_placed_piece_is_told_without_its_result() -> None:
    told = readings(checked(CASE).declared, lambda _: None)
    assert [words for words, _ in told] == ["door width = bay width - 2 * play"]


@pytest.mark.parametrize(
    ("written", "read"),
    [
        ("width - (depth - 4)", "piece width - (piece depth - 4)"),
        ("(width - depth) - 4", "piece width - piece depth - 4"),
        ("2 * (width + 4)", "2 * (piece width + 4)"),
        ("width / (2 * 3)", "piece width / (2 * 3)"),
        ("width / 2 * 3", "piece width / 2 * 3"),
        ("top's thickness + 3 mm", "top thickness + 3 mm"),
    ],
)
def test_a_reading_keeps_the_brackets_that_count(written: str, read: str) -> None:
    told = readings(checked(f"{CASE}reach = {written}\n").declared, lambda _: None)
    assert [words for words, _ in told if words.startswith(f"reach = {read} = ")]
