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
