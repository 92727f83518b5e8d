"""What a maker says in other words than the language had at first, and what it reads to."""

from __future__ import annotations

import pytest
from tests.unit.notes.nowhere import part, said

from dryfit.diagnostics import Diagnostic, Source
from dryfit.notes import parse
from dryfit.notes.tree import FinishLine, Join, JointSpec, PartsLine

PARTS = "leg, rail, seat"


def joins(text: str) -> list[tuple[str, str | None]]:
    """Preposition and joint of each host on a part's line."""
    line = said(f"1 block, 20 thick, {text}", PARTS)
    assert isinstance(line, PartsLine)
    assert not any(isinstance(clause, JointSpec) for clause in line.clauses)
    found = [clause for clause in line.clauses if isinstance(clause, Join)]
    return [(join.preposition, join.spec.kind if join.spec else None) for join in found]


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("under seat, glued", [("under", "glue")]),
        ("under seat: glued", [("under", "glue")]),
        ("glued under seat", [("under", "glue")]),
        ("screwed onto rails", [("onto", "screws")]),
        ("onto rails, screwed", [("onto", "screws")]),
        ("tenoned 20 into legs", [("into", "tenon")]),
        ("into legs: tenoned, 20 long", [("into", "tenon")]),
        ("tenon 20 into legs, glued", [("into", "tenon")]),
        ("into legs, tenon 20, glued", [("into", "tenon")]),
        ("tenon 20 into legs, glued, onto rails", [("into", "tenon"), ("onto", None)]),
        ("between legs: housing 6, glued under seat", [("between", "housing"), ("under", "glue")]),
    ],
)
def test_glued_screwed_and_tenoned_are_joints_of_a_part_s_line(
    text: str, expected: list[tuple[str, str | None]]
) -> None:
    assert joins(text) == expected


def finish(text: str) -> FinishLine:
    line = said(text, PARTS)
    assert isinstance(line, FinishLine)
    return line


@pytest.mark.parametrize("product", ["shellac", "oil varnish"])
def test_with_is_no_part_of_the_name_of_a_finish(product: str) -> None:
    assert finish(f"finish with {product}, 3 coats") == finish(f"finish {product}, 3 coats")


@pytest.mark.parametrize("everything", ["all", "all parts", "every part", "everything"])
def test_all_is_everything(everything: str) -> None:
    line = finish(f"finish {everything} with shellac")
    assert line == finish("finish everything with shellac")
    assert [coat.product for coat in line.products] == ["shellac"]


def test_all_edges_of_a_part_are_not_everything() -> None:
    line = finish("finish all edges of seat with shellac")
    assert line.subjects == (part("seat"),)


def mistake(line: str) -> Diagnostic:
    declared = "".join(f"1 {name}, flat\n" for name in PARTS.split(", "))
    (found,) = parse(Source("a", f"overall 1 x 1 x 1\n{declared}{line}"))[1]
    return found


@pytest.mark.parametrize(
    ("line", "advice"),
    [
        ("tool rail, across, 40 x 20, under seat", "`1 tool rail`"),
        ("tool rails, across, 40 x 20, under seat", "`2 tool rails`"),
        ("post, upright, 40 x 40", "`1 post`"),
        ("posts, upright, 40 x 40", "`4 posts`"),
    ],
)
def test_one_copy_is_offered_for_a_singular(line: str, advice: str) -> None:
    found = mistake(line)
    assert found.code == "count-missing"
    assert advice in found.hints[0].message


@pytest.mark.parametrize("word", ["overhanging", "projecting", "overhangs"])
def test_an_overhang_is_never_taken_for_a_lap(word: str) -> None:
    found = mistake(f'1 top, flat, 3/4" thick, {word} 1" all round, on legs')
    assert found.code == "overhang"
    assert '`set in 1"` on the line of the legs' in found.hints[0].message
    assert all(hint.corrected_line is None for hint in found.hints)


HEAD = """overall 640 x 380 x 720
2 drawer sides, upright, 165 x 20
1 drawer front, upright, 165 x 20
1 drawer back, upright, 165 x 20
1 top, flat, 20 thick
2 legs, upright, 40 x 40
2 rails, across, 55 x 20
drawer bay = opening between drawer sides
glue up board: legs, rails
"""


@pytest.mark.parametrize(
    ("line", "code", "tries"),
    [
        (
            "1 shelf, flat, 30 above the bottom edge of drawer sides",
            "unknown-word",
            ("1 shelf, flat, 30 above the bottom of drawer sides",),
        ),
        (
            "1 shelf, flat, flush with back end of drawer sides",
            "unknown-word",
            ("1 shelf, flat, flush with back of drawer sides",),
        ),
        (
            "1 shelf, flat, set back 30 from front of drawer sides",
            "unknown-word",
            ("1 shelf, flat, 30 from front of drawer sides",),
        ),
        ("1 shelf, flat, from the front", "measure-missing", ()),
        (
            "1 shelf, flat, between front and back",
            "unknown-name",
            ("1 shelf, flat, between drawer front and drawer back",),
        ),
        (
            "2 end panels: legs and rails",
            "preposition-missing",
            ("glue up 2 end panels: legs and rails",),
        ),
        ("1 shelf, flat, at left and right of drawer front", "place-of-part", ()),
        (
            "1 shelf, flat, at left and right of drawer bay",
            "place-of-part",
            ("1 shelf, flat, in drawer bay, at left and right",),
        ),
        (
            "2.5 slats, across, 40 x 10",
            "count-not-whole",
            ("2 slats, across, 40 x 10", "3 slats, across, 40 x 10"),
        ),
        (
            "1 shelf, upright, 18 thick, across",
            "said-twice",
            ("1 shelf, upright, 18 thick", "1 shelf, 18 thick, across"),
        ),
        ("seat top between 230 and 250", "unknown-name", ()),
        (
            "taper in legs: front face, from 90 below top to bottom end, to 25",
            "measure-missing",
            (),
        ),
        (
            "taper in legs: front face, from 90 below top to bottom end, from the full width to 25",
            "measure-missing",
            (),
        ),
    ],
)
def test_what_was_meant_is_asked_for(line: str, code: str, tries: tuple[str, ...]) -> None:
    (found,) = parse(Source("a", HEAD + line))[1]
    assert found.code == code
    assert tuple(hint.corrected_line for hint in found.hints if hint.corrected_line) == tries


@pytest.mark.parametrize(
    "line",
    [
        "1 lid, flat, 18 thick, glued from 2 boards",  # a glue-up is called board
        "taper in legs: front face, from top to bottom, 180 to 40",  # a part is called top
        "taper in legs: front face, from top.thickness below top to bottom, 180 to 40",
    ],
)
def test_names_do_not_hide_words_of_the_language(line: str) -> None:
    assert parse(Source("a", HEAD + line))[1] == ()


def test_the_parts_of_a_broken_count_are_known_elsewhere() -> None:
    findings = parse(Source("a", HEAD + "2.5 slats, across, 40 x 10\nslats onto rails: screws"))[1]
    assert [each.code for each in findings] == ["count-not-whole"]


@pytest.mark.parametrize(
    ("parameter", "codes"),
    [
        ("wall = 20 mm, 8 mm to 14 mm", ["default-out-of-range"]),
        ("wall = 2 cm, 8 mm to 14 mm", ["default-out-of-range"]),
        ("wall = 20, 8 to 14", ["default-out-of-range"]),
        ("wall = 10, 14 to 8", ["default-out-of-range"]),
        ("wall = 8 mm, 8 mm to 14 mm", []),
        ("wall = 1.4 cm, 8 mm to 14 mm", []),
        ("wall = 10, 8 mm to 14 mm", []),  # the unit of the file is known later only
    ],
)
def test_a_default_lies_in_its_own_range(parameter: str, codes: list[str]) -> None:
    block = f"pattern tray with width, depth, height, {parameter}\n1 floor, flat, wall thick\nend\n"
    assert [each.code for each in parse(Source("a", block + HEAD))[1]] == codes
