"""Spares on a line of their own."""

import pytest

from dryfit.diagnostics import Source
from dryfit.notes import parse
from dryfit.piece import declare

NOTES = """\
piece Stool
units mm
overall 300 wide, 300 deep, 420 high
timber ash
4 legs, upright, 40 x 40, at corners{on_the_line}
{line}
"""


def spares(line: str, on_the_line: str = "") -> dict[str, int]:
    text = NOTES.format(line=line, on_the_line=on_the_line)
    notes, findings = parse(Source("stool.dryfit", text))
    assert findings == ()
    declared, _ = declare(notes)
    return {part.name: part.spare for part in declared.parts}


@pytest.mark.parametrize(("line", "count"), [("1 spare leg", 1), ("2 spare legs", 2)])
def test_it_says_what_the_word_says_on_the_line_of_the_part(line: str, count: int) -> None:
    assert spares(line) == {"leg": count} == spares("", f", {count} spare")


def test_it_comes_on_top_of_those_on_the_line_of_the_part() -> None:
    assert spares("2 spare legs", ", 1 spare") == {"leg": 3}


def test_a_line_that_says_more_is_a_part_of_its_own() -> None:
    assert set(spares("1 spare leg, upright, 40 x 40 x 300")) == {"leg", "spare leg"}
