"""What check says of sound notes: sums as read, sizes with the grain, assumptions."""

from tests.pieces.reading import checked, model_of, model_of_piece, text_of

from dryfit.cli.understood import understood


def said(name: str) -> str:
    text = text_of(name)
    return understood(checked(text).declared, model_of(text))


def test_a_sum_is_told_with_what_it_leans_on_and_comes_to() -> None:
    assert '  - back board width = rim + board + 3 1/2 = 9 3/8" (line 24)' in said("potting_table")


def test_every_part_is_told_once_with_the_way_of_its_grain() -> None:
    lines = said("step_stool").split("\n")
    assert "  - 4 legs: 218 long (upright), 40 wide, 40 thick" in lines
    assert "  - 2 long rails: 350 long (from side to side), 55 wide, 20 thick" in lines
    assert sum("long (" in line for line in lines) == len(model_of_piece("step_stool").parts)


def test_a_part_inside_a_pattern_has_the_name_of_its_instance() -> None:
    assert "  - 2 frame > frame rail: 640 long (from side to side)" in said("plant_stand")


def test_a_piece_without_sums_has_no_heading_for_them() -> None:
    assert not said("boot_bench").startswith("Sums")
