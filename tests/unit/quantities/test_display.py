"""How figures are said: rounded for show, and as examples in the unit of the notes."""

import ast
import re
from fractions import Fraction
from itertools import chain

import pytest

from dryfit.quantities import Display
from dryfit.resources import PACKAGE

ROOMS = ("notes", "piece", "placing", "checks", "operations")
FIGURE = re.compile(
    r"(?<!\bin )(?<!\bat )(?<![\w{.])[1-9]\d*(\.\d+)?"
    r"(?= (from|to|below|above|wide|deep|long|thick)\b)"
)
"""A measure in an example; `1 in 8` is a slope, `at 40 to 65 %` is air."""


@pytest.mark.parametrize(
    ("mm", "inches"),
    # Round figures near by (1 in = 25.4 mm): 2 mm is 0.08 in, 12 mm 0.47, 30 mm 1.18, 120 mm 4.72.
    [(2, '1/16"'), (6, '1/4"'), (12, '1/2"'), (30, '1 1/8"'), (120, '4 1/2"'), (200, '8"')],
)
def test_an_example_is_a_round_figure_of_the_unit(mm: int, inches: str) -> None:
    assert Display().example(Fraction(mm)) == str(mm)
    assert Display.inches(Fraction(1, 4)).example(Fraction(mm)) == inches
    assert Display.of_unit("cm").example(Fraction(mm)) == f"{mm} mm"


def test_figures_in_braces_are_said_in_the_unit() -> None:
    words = "such as `{12} from top` or `keys {3.2} thick`"
    assert Display().examples(words) == "such as `12 from top` or `keys 3.2 thick`"
    assert Display.inches().examples(words) == 'such as `1/2" from top` or `keys 1/8" thick`'


def test_no_advice_on_a_piece_has_a_bare_figure_in_it() -> None:
    """A bare 12 would be twelve inches in notes in inches."""
    bare = [
        (path.name, node.value)
        for path in chain.from_iterable(sorted((PACKAGE / room).rglob("*.py")) for room in ROOMS)
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
        if isinstance(node, ast.Constant) and isinstance(node.value, str)
        if "\n" not in node.value and "``" not in node.value and not node.value.endswith(".")
        for quoted in re.findall(r"`[^`]*`?", node.value)
        if FIGURE.search(quoted)
    ]
    assert bare == []


def test_where_bare_figures_are_centimetres_what_is_said_has_its_unit() -> None:
    centimetres = Display.of_unit("cm")
    assert centimetres.shown(Fraction(40)) == "40 mm"
    assert centimetres.with_unit(Fraction(40)) == "40 mm"
    assert centimetres.plain.shown(Fraction(40)) == "40"
    assert Display.of_unit("mm").shown(Fraction(40)) == "40"
