"""Blanks, and what else may stand between two words of a phrase, decide nothing."""

import pytest

from dryfit.diagnostics import Source
from dryfit.notes import parse
from dryfit.notes.parse import names_of
from dryfit.notes.reading.lines import sense_lines
from dryfit.notes.reading.vocabulary import Vocabulary
from dryfit.notes.tree import GlueLine, PartsLine, UnitsLine

REST = (
    "\noverall 900 wide, 400 deep, 800 high\n4 legs, upright, 50 x 50\n2 aprons, across, 100 x 20"
)


def vocabulary(text: str) -> Vocabulary:
    return names_of(sense_lines(Source("a.dryfit", text)))


@pytest.mark.parametrize(
    "line",
    [
        "units mm, decimal comma",
        "units mm decimal   comma",
        "units mm, decimal-comma",
        "units mm, decimal_comma",
        "  Units: mm, decimal\tcomma",
        "unit mm, decimal commas",
    ],
)
def test_the_decimal_comma_is_found(line: str) -> None:
    assert vocabulary(line).decimal_comma
    notes, findings = parse(Source("a.dryfit", f"{line}{REST}\n1 top, 12,5 thick"))
    assert findings == ()
    assert isinstance(notes.statements[0], UnitsLine)


@pytest.mark.parametrize(
    "line", ["units mm", "note units, decimal comma", "4 units, decimal comma"]
)
def test_other_lines_ask_for_no_decimal_comma(line: str) -> None:
    assert not vocabulary(line).decimal_comma


@pytest.mark.parametrize("line", ["units inches", "unit: in", "units,  inch", "units the inches"])
def test_the_unit_is_found(line: str) -> None:
    assert vocabulary(line).unit == "in"
    notes, _ = parse(Source("a.dryfit", line))
    assert [each.unit for each in notes.statements if isinstance(each, UnitsLine)] == ["in"]


@pytest.mark.parametrize("opener", ["glue up", "glue   up", "glue-up", "glue_up", "Glue\tup"])
def test_a_glue_up_is_found(opener: str) -> None:
    text = f"{REST}\n{opener} base: legs, aprons\nfinish base with oil"
    assert "base" in vocabulary(text).stages
    notes, findings = parse(Source("a.dryfit", text))
    assert findings == ()
    assert [each.name for each in notes.statements if isinstance(each, GlueLine)] == ["base"]


@pytest.mark.parametrize("opener", ["bought in", "bought   in", "bought-in", "buy", "bought"])
def test_what_is_bought_is_found(opener: str) -> None:
    text = f"{REST}\n{opener} 4 casters, 50 high, 50 dia, under legs"
    assert "caster" in vocabulary(text).parts
    notes, findings = parse(Source("a.dryfit", text))
    assert findings == ()
    bought = [each.name for each in notes.statements if isinstance(each, PartsLine) and each.bought]
    assert bought == ["caster"]


@pytest.mark.parametrize("blanks", [" ", "    ", "\t"])
def test_a_mistyped_name_is_told_on_the_same_line_however_it_is_spaced(blanks: str) -> None:
    text = (
        f"{REST}\n2 uper{blanks}ral, across, 100 x 20\n"
        "upper rails into legs: tenon 20\naprons into upper rails: tenon 20"
    )
    told = [each for each in parse(Source("a.dryfit", text))[1] if each.code == "unknown-name"]
    assert [each.span.line for each in told if each.span] == [5]


@pytest.mark.parametrize("blanks", [" ", "    ", "\t"])
def test_a_missing_comma_is_told_on_the_same_line_however_it_is_spaced(blanks: str) -> None:
    text = f"{REST}\n2 rails{blanks}acros, 100 x 20\nrails into legs: tenon 20"
    told = [each for each in parse(Source("a.dryfit", text))[1] if each.code == "unknown-name"]
    assert [each.span.line for each in told if each.span] == [5]
