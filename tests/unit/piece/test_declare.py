"""From words to exact sizes: kinds, units, values, directions and names."""

from __future__ import annotations

from fractions import Fraction

import pytest
from tests.pieces.reading import mm

from dryfit.diagnostics import Source
from dryfit.notes import parse
from dryfit.piece import Declared, declare
from dryfit.piece.declared import DeclaredPart
from dryfit.piece.orientation import orientation
from dryfit.quantities.units import INCH

HEAD = "piece X\noverall 420 wide, 300 deep, 240 high\n"


def declared(lines: str, head: str = HEAD) -> Declared:
    notes, in_notes = parse(Source("notes.dryfit", head + lines))
    found, in_piece = declare(notes)
    assert [finding.message for finding in (*in_notes, *in_piece)] == []
    return found


def part(lines: str, name: str = "leg", head: str = HEAD) -> DeclaredPart:
    found = declared(lines, head).part(name)
    assert found is not None
    return found


def sizes(found: DeclaredPart) -> tuple[Fraction | None, ...]:
    return tuple(amount.value if amount else None for amount in found.sizes)


@pytest.mark.parametrize(
    ("words", "expected"),
    [
        ("225 x 40 x 30", mm(225, 40, 30)),
        ("40 x 30", (None, *mm(40, 30))),
        ("40 wide, 30 thick", (None, *mm(40, 30))),
        ("30 thick, 40 wide, 225 long", mm(225, 40, 30)),
        ("2 * 20 x 60 / 2", (None, *mm(40, 30))),
        ("height - 22 x 40 x 30", mm(218, 40, 30)),
        ("half of overall width x 40 x 30", mm(210, 40, 30)),
        ('1 1/2" x 1 in', (None, INCH * 3 / 2, INCH)),
        ("4 cm x 0.03 m", (None, *mm(40, 30))),
    ],
)
def test_sizes_are_exact(words: str, expected: tuple[Fraction | None, ...]) -> None:
    assert sizes(part(f"4 legs, upright, {words}, at corners\n")) == expected


def test_bare_numbers_are_in_the_files_unit() -> None:
    head = "piece X\nunits inches\noverall 17 x 12 x 9 1/2\n"
    assert sizes(part("4 legs, upright, 1 5/8 x 1, at corners\n", head=head)) == (
        None,
        INCH * 13 / 8,
        INCH,
    )


def test_thickness_may_come_first() -> None:
    head = "piece X\nunits mm, thickness first\noverall 420 x 300 x 240\n"
    found = part("4 legs, upright, 30 x 40 x 225, at corners\n", head=head)
    assert sizes(found) == mm(225, 40, 30)


def test_a_value_may_lean_on_another_and_on_a_part() -> None:
    lines = "reveal = leg.width / 4\nback = reveal - 6\n4 legs, upright, 40 x 30, set in back\n"
    ((axis, amount),) = part(lines).set_in
    assert (axis, amount.value) == (None, Fraction(4))
    assert amount.behind.figures == ("leg.width",)
    assert [span.line for span in amount.behind.spans] == [4, 3]


def test_set_in_has_one_amount_a_direction_when_it_says_so() -> None:
    found = part("4 legs, upright, 40 x 30, at corners, set in 30 across, 10 front to back\n")
    assert [(axis, amount.value) for axis, amount in found.set_in] == [
        (0, Fraction(30)),
        (1, Fraction(10)),
    ]


@pytest.mark.parametrize(
    ("words", "axis", "side"),
    [("up 80", 2, -1), ("down 20", 2, 1), ("120 from left", 0, -1), ("8 from back", 1, 1)],
)
def test_distances_are_kept_by_axis_and_side(words: str, axis: int, side: int) -> None:
    ((own_axis, own_side, _),) = part(f"4 legs, upright, 40 x 30, {words}\n").froms
    assert (own_axis, own_side) == (axis, side)


@pytest.mark.parametrize(
    ("name", "run", "lie", "axes"),
    [
        ("leg", None, None, (2, 0, 1)),
        ("post", "upright", "facing side", (2, 1, 0)),
        ("side", None, None, (2, 1, 0)),
        ("long rail", "across", None, (0, 2, 1)),
        ("short rail", "front to back", None, (1, 2, 0)),
        ("seat", None, "flat", (0, 1, 2)),
        ("stretcher", "front to back", "flat", (1, 0, 2)),
        ("back", None, "facing front", (2, 0, 1)),
    ],
)
def test_the_way_a_part_lies(
    name: str, run: str | None, lie: str | None, axes: tuple[int, int, int]
) -> None:
    assert orientation(name, run, lie, square=False, wider_than_deep=True).axes == axes


def test_only_what_no_word_says_is_assumed() -> None:
    said = orientation("rail", "across", "flat", square=False, wider_than_deep=True)
    assert said.assumed == ()
    square = orientation("leg", "upright", None, square=True, wider_than_deep=True)
    assert square.assumed == ()
    deep = orientation("top", None, "flat", square=False, wider_than_deep=False)
    assert deep.assumed == (("top: its length runs front to back", "front to back"),)


@pytest.mark.parametrize(("timber", "stock"), [("birch ply", "sheet"), ("oak", "solid")])
def test_sheet_goods_are_told_by_their_name(timber: str, stock: str) -> None:
    assert part(f"4 legs, upright, 40 x 30, of {timber}\n").stock == stock


def test_a_joint_line_takes_the_joint_of_the_part_that_names_no_host() -> None:
    lines = (
        "4 legs, upright, 40 x 40, at corners\n2 rails, across, 50 x 20, tenon 20 long\n"
        "rails into legs\n"
    )
    (contact,) = declared(lines).contacts
    assert contact.joint is not None
    assert (contact.joint.kind, contact.joint.length) == ("tenon", Fraction(20))


def test_bare_numbers_of_a_joint_have_the_order_of_the_trade() -> None:
    lines = "4 legs, upright, 40 x 40, at corners\n2 rails, across, 50 x 20, tenon 20 into legs\n"
    (contact,) = declared(lines).contacts
    assert contact.joint is not None
    assert contact.joint.length == 20


def test_a_piece_without_a_name_takes_that_of_its_file() -> None:
    notes, _ = parse(Source("drawer/stool.dryfit", "overall 1 x 2 x 3\n1 top, flat, 3 thick\n"))
    found, findings = declare(notes)
    assert found.piece == "stool.dryfit"
    assert [finding.code for finding in findings] == ["no-piece"]


def test_a_mistake_in_a_value_is_told_once_however_often_it_is_used() -> None:
    text = HEAD + "a = 2 h\n4 legs, upright, a x a, set in a\n1 top, flat, a thick\n"
    _, findings = declare(parse(Source("n", text))[0])
    assert {finding.code for finding in findings} == {"wrong-kind"}
    assert all(finding.span and finding.span.line in {4, 5} for finding in findings)


def test_a_sum_of_another_line_sees_a_size_as_measured() -> None:
    lines = "4 legs, upright, 40 x 30, at corners\n2 rails, across, leg.width x 20, into legs\n"
    assert sizes(part(lines, "rail")) == (None, *mm(40, 20))
    assert sizes(part(f"{lines}measured leg.width = 39\n", "rail")) == (None, *mm(39, 20))


def test_a_piece_stands_outdoors_only_where_the_notes_say_so() -> None:
    legs = "4 legs, upright, 40 x 40, at corners\n"
    assert declared(f"{legs}place indoors\n").outdoors is None
    assert declared(f"{legs}place outdoors\n").outdoors is not None


@pytest.mark.parametrize(
    ("words", "codes"),
    [
        ("up 100, gap 2", ["gap-of-nothing"]),
        ("up 100, 3 between", ["gap-of-nothing"]),
        ("spread up and down, gap 20", []),
        ("spread up and down, gap 20, 2 at ends", ["gap-of-nothing"]),
        ("in bay, gap 2, 3 between", []),
    ],
)
def test_a_gap_is_that_of_a_row_or_of_an_opening(words: str, codes: list[str]) -> None:
    lines = f"2 sides, upright, 300 x 18, at left and right\n2 shelves, flat, 18 thick, {words}\n"
    bay = "bay = opening between sides\n"
    _, findings = declare(parse(Source("notes.dryfit", HEAD + lines + bay))[0])
    assert [finding.code for finding in findings] == codes


def test_values_that_nothing_refers_to_are_worked_out_too() -> None:
    notes, _ = parse(Source("a", f"{HEAD}4 legs, 40 x 40\nplay = rim + 1\nrim = play - 1\n"))
    assert [(each.code, each.span.line) for each in declare(notes)[1] if each.span] == [
        ("circle", HEAD.count("\n") + 3)
    ]
