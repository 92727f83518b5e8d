"""What becomes of a whole text: continued lines, remarks, what is no line of sense, the file."""

import pytest

from dryfit.diagnostics import Source
from dryfit.notes import encoded_like, source_of, tidied
from dryfit.notes.text import MOST_CHARACTERS
from dryfit.patterns import shipped

BLANKS = "  "


def tidy(text: str) -> str:
    return tidied(Source("a.dryfit", text))


def test_a_continued_line_stays_continued_with_a_hanging_indent() -> None:
    text = f"""\
4 legs,upright
2 rails , across,
on edge ,   # a remark
# a remark of its own{BLANKS}
      40  x
30, set back (1+
 2)
"""
    assert (
        tidy(text)
        == f"""\
4 legs, upright
2 rails, across,
    on edge,  # a remark
# a remark of its own{BLANKS}
    40 x
    30, set back (1 +
    2)
"""
    )


def test_a_comma_at_the_end_of_all_that_is_said_stays() -> None:
    text = "1 lid,flat ,\n\n1 tray,flat,\n  , # nothing more\n"
    assert tidy(text) == "1 lid, flat,\n\n1 tray, flat,\n    ,  # nothing more\n"


def test_a_name_across_the_end_of_a_line_keeps_its_lines() -> None:
    text = "1 part x\n  wide bar,flat\n"
    assert tidy(text) == text


def test_what_a_comma_swallowed_stays() -> None:
    text = "1 seat,flat,\n2 legs,upright\n"
    assert tidy(text) == text


def test_remarks_of_lines_that_follow_each_other_stand_in_one_column() -> None:
    text = f"""\
slack = 3 # of the slats
reveal  =  20      #of the rails{BLANKS}
lid = 4
rise = 50                    # alone
"""
    assert (
        tidy(text)
        == """\
slack = 3    # of the slats
reveal = 20  #of the rails
lid = 4
rise = 50  # alone
"""
    )


def test_a_long_line_does_not_push_the_remarks_of_short_ones_away() -> None:
    long = "2 rails, across, on edge, 100 x 22, up 20, set back 6"
    text = f"slack = 3      # of the slats\n{long} # here\nrise = 4 # there\n"
    assert tidy(text) == f"slack = 3  # of the slats\n{long}  # here\nrise = 4  # there\n"


def test_a_line_that_cannot_be_read_parts_the_columns_of_remarks() -> None:
    text = "slack = 3 # one\nlong slack = @ 7 # two\nlonger slack = 4 # three\n"
    assert tidy(text) == "slack = 3  # one\nlong slack = @ 7 # two\nlonger slack = 4  # three\n"


@pytest.mark.parametrize("text", ["", "\n", " \n\n\t\n", "  # a\n\n\n#b  ", "1 seat, flat"])
def test_lines_that_say_nothing_stay(text: str) -> None:
    assert tidy(text) == text


def test_the_order_of_lines_stays_and_so_does_a_missing_last_line_end() -> None:
    assert tidy("2 rails,across\n4 legs,upright\n\n\nslack=3") == (
        "2 rails, across\n4 legs, upright\n\n\nslack = 3"
    )


def test_a_text_that_would_become_too_long_to_be_read_stays() -> None:
    remark = "#" * (MOST_CHARACTERS - 9)
    assert tidy(f"slack=33\n{remark}") == f"slack=33\n{remark}"
    assert tidy(f"slack=3\n{remark[4:]}") == f"slack = 3\n{remark[4:]}"
    assert tidy(f"slack=33\n{remark}#") == f"slack=33\n{remark}#"


@pytest.mark.parametrize(
    ("data", "expected"),
    [
        (b"slack=3\r\nlid=4\r\n", b"slack = 3\r\nlid = 4\r\n"),
        (
            b"\xef\xbb\xbfslack=3\rlid=4\n\r\n# 22\xc2\xbd",
            b"\xef\xbb\xbfslack = 3\rlid = 4\n\r\n# 22\xc2\xbd",
        ),
        (b"", b""),
    ],
)
def test_a_file_keeps_its_line_ends_and_its_byte_order_mark(data: bytes, expected: bytes) -> None:
    source = source_of("a.dryfit", data)
    assert isinstance(source, Source)
    assert encoded_like(tidied(source), data) == expected


def test_lines_in_patterns_and_lines_that_use_them_are_tidied() -> None:
    untidy = (
        "pattern   crate with width,depth, height, wall=12\n"
        "2 sides,upright,   depth x wall, at left and right\n"
        "end\n"
        "1 box,as  crate, 600 wide, 300 deep, 160 high,wall   15\n"
        "1 base,  as apron base, 600 wide, 300 deep, 160 high"
    )
    tidy = (
        "pattern crate with width, depth, height, wall = 12\n"
        "2 sides, upright, depth x wall, at left and right\n"
        "end\n"
        "1 box, as crate, 600 wide, 300 deep, 160 high, wall 15\n"
    )
    assert tidied(Source("a.dryfit", untidy)).startswith(tidy)
    with_base = f"{tidy}1 base, as apron base, 600 wide, 300 deep, 160 high"
    assert tidied(Source("a.dryfit", untidy), shipped()) == with_base
