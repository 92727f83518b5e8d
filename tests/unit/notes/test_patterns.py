"""Patterns: blocks with names of their own, and the lines that use them."""

import pytest
from tests.unit.notes.nowhere import NOWHERE, number, without_places

from dryfit.diagnostics import Source
from dryfit.notes import Notes, names_by_line, parse
from dryfit.notes.reading.lines import sense_lines
from dryfit.notes.tree import (
    AsPattern,
    FeatureLine,
    Parameter,
    PartSize,
    PartsLine,
    PatternBlock,
    Reference,
    Sizes,
    UnitsLine,
    ValueLine,
    ValueName,
)

BASE = """\
pattern leg base with width, depth, height, leg = 45, 30 to 90, rail
4 legs, upright, leg x leg, at corners
2 rails, across, rail x 22, tenon 20 into legs
overhang = leg.width - leg
end
"""
IN_A_CIRCLE = """\
pattern box with width
1 tray, as tray
end
pattern tray with width
1 box, as box
end
"""
PIECE = "piece P\noverall 900 wide, 400 deep, 700 high\n"


def read(text: str, patterns: tuple[PatternBlock, ...] = ()) -> Notes:
    notes, findings = parse(Source("a.dryfit", PIECE + text), patterns)
    assert findings == ()
    return without_places(notes)


def codes(text: str) -> list[tuple[str, int]]:
    """The codes of the findings with their lines, the two lines of the piece not counted."""
    found = parse(Source("a.dryfit", PIECE + text))[1]
    return [(each.code, each.span.line - 2) for each in found if each.span]


def test_a_pattern_has_parameters_and_lines_of_its_own() -> None:
    notes = read(BASE)
    assert len(notes.statements) == 2
    (block,) = notes.patterns
    assert (block.name, block.written) == ("leg base", "leg base")
    assert block.parameters == (
        Parameter("width", None, None, None, NOWHERE),
        Parameter("depth", None, None, None, NOWHERE),
        Parameter("height", None, None, None, NOWHERE),
        Parameter("leg", number(45), number(30), number(90), NOWHERE),
        Parameter("rail", None, None, None, NOWHERE),
    )
    assert [type(line) for line in block.notes.statements] == [PartsLine, PartsLine, ValueLine]


def test_a_parameter_may_be_called_as_a_part_of_the_pattern() -> None:
    (block,) = read(BASE).patterns
    legs, _, overhang = block.notes.statements
    assert isinstance(legs, PartsLine)
    assert isinstance(overhang, ValueLine)
    assert [clause.sizes[0].amount for clause in legs.clauses if isinstance(clause, Sizes)] == [
        ValueName("leg", NOWHERE)
    ]
    assert getattr(overhang.amount, "left", None) == PartSize("leg", "width", NOWHERE)
    assert getattr(overhang.amount, "right", None) == ValueName("leg", NOWHERE)


@pytest.mark.parametrize(
    "text",
    [
        "1 base, as leg base, leg 50, rail = 80",
        "1 base as leg base: leg = 50, rail 80",
        "1 base as a leg base with leg 50 and rail 80",
        "1 base, made as leg base, leg is 50, rail: 80",
    ],
)
def test_an_instance_sets_parameters(text: str) -> None:
    line = read(f"{BASE}{text}").statements[-1]
    assert isinstance(line, PartsLine)
    settings = (("leg", number(50)), ("rail", number(80)))
    assert line.clauses == (AsPattern("leg base", settings, NOWHERE),)


def test_an_instance_has_sizes_of_a_whole() -> None:
    line = read(f"{BASE}1 base, as leg base, 900 wide, rail 80\nplay = base.depth / 2").statements
    assert isinstance(line[-1], ValueLine)
    assert getattr(line[-1].amount, "left", None) == PartSize("base", "depth", NOWHERE)


def test_parts_inside_of_an_instance_are_reached_by_its_name() -> None:
    for text in ("groove in bases' legs: inside, 6 wide", "groove in base's legs: inside, 6 wide"):
        line = read(f"{BASE}2 bases, as leg base, rail 80\n{text}").statements[-1]
        assert isinstance(line, FeatureLine)
        assert line.parts == (Reference("leg", (), NOWHERE, of="base"),)


def test_patterns_from_elsewhere_are_known() -> None:
    (block,) = parse(Source("b.dryfit", BASE))[0].patterns
    text = "1 base, as leg base, leg 50, rail 80\ngroove in base's rails: inside, 6 wide"
    notes = read(text, (block,))
    assert [each.name for each in notes.patterns] == ["leg base"]
    assert codes(text)[0] == ("unknown-pattern", 1)


def test_a_pattern_knows_the_units_of_its_text_and_the_patterns_it_uses() -> None:
    text = "pattern tower with width\n1 foot, as leg base, rail 80\nend\n"
    notes = read(f"units inches\n{text}{BASE}")
    tower = next(block for block in notes.patterns if block.name == "tower")
    assert isinstance(tower.notes.statements[0], UnitsLine)
    assert [block.name for block in tower.notes.patterns] == ["leg base"]


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("pattern box with width\n1 lid, 12 thick\n", [("pattern-open", 1)]),
        ("1 lid, 12 thick\nend\n", [("end-without-pattern", 2)]),
        (
            "pattern box with width\npattern tray with width\n1 lid, 12 thick\nend\nend\n",
            [("pattern-nested", 2)],
        ),
        (
            "pattern box with width\nend\npattern box with width\nend\n",
            [("pattern-twice", 3)],
        ),
        (
            IN_A_CIRCLE,
            [("pattern-in-itself", 5)],
        ),
        ("pattern box with width\nhave 1 board of ash\nend\n", [("not-in-pattern", 2)]),
        ("pattern box with width\nplace outdoors\nend\n", [("not-in-pattern", 2)]),
        (f"{BASE}1 base, as leg bsae", [("unknown-pattern", 6)]),
        (f"{BASE}1 base, as leg base, reil 80", [("parameter-unknown", 6)]),
        ("pattern box with width, board = 12, board = 13\nend\n", [("name-twice", 1)]),
    ],
)
def test_mistakes_of_patterns(text: str, found: list[tuple[str, int]]) -> None:
    assert codes(text) == found


def test_the_first_and_the_last_line_of_a_pattern_are_no_continuation() -> None:
    notes = read("1 lid, 12 thick,\npattern box with width\n1 tray, 12 thick,\nend\n")
    assert [line.name for line in notes.statements if isinstance(line, PartsLine)] == ["lid"]
    assert len(notes.patterns[0].notes.statements) == 1


def test_each_line_is_read_with_the_names_of_its_block() -> None:
    lines = tuple(sense_lines(Source("a.dryfit", f"1 lid, flat\n{BASE}1 base, as leg base")))
    names = names_by_line(lines)
    assert [("leg" in each.parts, "lid" in each.parts) for each in names] == [
        (False, True),
        *[(True, False)] * 4,
        (False, True),
        (False, True),
    ]
