"""What a single line becomes; each is read in notes that declare the names it uses."""

import pytest

from dryfit.diagnostics import Source
from dryfit.notes import tidied
from dryfit.notes.limits import LONGEST_LINE

NAMES = """4 legs, upright, 40 x 40
2 long rails, across
1 seat, flat
reveal = 2
inner width = 3
"""


def tidy(text: str) -> str:
    return tidied(Source("a.dryfit", text))


def tidy_line(line: str) -> str:
    after = tidy(f"{NAMES}{line}")
    assert after.startswith(NAMES)
    return after.removeprefix(NAMES)


@pytest.mark.parametrize(
    ("typed", "expected"),
    [
        ("  units :mm,to nearest 1", "units: mm, to nearest 1"),
        ("UNITS  mm ;  decimal-comma", "UNITS mm; decimal-comma"),
        ("overall  1000 wide ,360 deep x450 high", "overall 1000 wide, 360 deep x 450 high"),
        ("2 Top-end  Rails,on  its edge", "2 Top-end Rails, on its edge"),
        ("2xseats,flat", "2 x seats, flat"),
        ("2 seats,flat ,resawn,3  days on stickers", "2 seats, flat, resawn, 3 days on stickers"),
        ("2 seats,flat,planed in  one go", "2 seats, flat, planed in one go"),
        ("2 ×seats , flat", "2 x seats, flat"),
        ("2 X seats, flat,40X30", "2 x seats, flat, 40 x 30"),
        ("two  seats,40 by 30", "two seats, 40 by 30"),
        ("have (in)2 boards,9x6x1", "have (in) 2 boards, 9 x 6 x 1"),
        ("buy boards, 9x6x1,£ 48  each", "buy boards, 9 x 6 x 1, £48 each"),
        ("buy boards, 9x6x1, 14 /m2", "buy boards, 9 x 6 x 1, 14/m2"),
        ("2 off seats,at  the  corners", "2 off seats, at the corners"),
        ("seat onto legs&long   rails :6  buttons", "seat onto legs & long rails: 6 buttons"),
        ("glue up  2 x frames :2 legs ;  cure 1h", "glue up 2 x frames: 2 legs; cure 1 h"),
        (
            "bought 1 pane,order  after  the  frame ,4 thick",
            "bought 1 pane, order after the frame, 4 thick",
        ),
        ("finish legs  before  glue up", "finish legs before glue up"),
        ("1 seat, flat, 20  thick ,", "1 seat, flat, 20 thick,"),
        ("1 seat, flat, 20  thick , ,", "1 seat, flat, 20 thick,,"),
        ("\u00a01 seat\t\u2009,\u200bflat", "1 seat, flat"),
    ],
)
def test_words_stand_apart_by_one_blank_and_signs_where_they_belong(
    typed: str, expected: str
) -> None:
    assert tidy_line(typed) == expected


@pytest.mark.parametrize(
    ("typed", "expected"),
    [
        ("gap width=reveal+3", "gap width = reveal + 3"),
        ("gap width = depth-2*( reveal-20 )", "gap width = depth - 2 * (reveal - 20)"),
        ("gap width = inner  width*2/3*reveal", "gap width = inner width * 2/3 * reveal"),
        ("gap width = width/2", "gap width = width / 2"),
        ("gap width = 1 /2", "gap width = 1 / 2"),
        ("gap width = reveal -( - 3)", "gap width = reveal - (-3)"),
        ("gap width = (reveal)*( 3 )", "gap width = (reveal) * (3)"),
        ("gap width = leg . width - 5", "gap width = leg.width - 5"),
        ("gap width = leg's  width", "gap width = leg's width"),
        ("gap width = legs\u2019  width", "gap width = legs' width"),
        ("gap width = reveal \u2212 1", "gap width = reveal - 1"),
        ("let gap width be  half  of reveal", "let gap width be  half  of reveal"),
    ],
)
def test_sums_have_blanks_round_their_signs(typed: str, expected: str) -> None:
    assert tidy_line(typed) == expected


@pytest.mark.parametrize(
    ("typed", "expected"),
    [
        ("22mm", "22 mm"),
        ("22   mm", "22 mm"),
        ("1.22m", "1.22 m"),
        (".75 in", ".75 in"),
        ('17  3/4 "', '17 3/4"'),
        ("17-3/4''", '17-3/4"'),
        ("17 3/4\u2033", '17 3/4"'),
        ("7\u20448 inches", "7/8 inches"),
        ("2 \u00bd", "2\u00bd"),
        ('2-\u00bd "', '2-\u00bd"'),
        ("5'6\"", "5' 6\""),
        ("5 ' - 6 1/2 ''", "5'-6 1/2\""),
        ("5ft 6in", "5 ft 6 in"),
        ("5\u2019\u00bd\u201d", "5' \u00bd\""),
    ],
)
def test_numbers_keep_their_spelling(typed: str, expected: str) -> None:
    assert tidy_line(f"1 seat, flat, {typed} thick") == f"1 seat, flat, {expected} thick"


def test_times_and_decimal_commas_are_numbers_too() -> None:
    text = "units mm, decimal comma\n1 seat, 12,5mm thick\nglue up base: seat, cure 1h 30min\n"
    assert tidy(text) == (
        "units mm, decimal comma\n1 seat, 12,5 mm thick\nglue up base: seat, cure 1 h 30 min\n"
    )


@pytest.mark.parametrize(
    ("typed", "expected"),
    [
        ("  piece   My  \u201cbig\u201d  table  ", "piece My  \u201cbig\u201d  table"),
        ("NOTE\tSand \u2013  by hand ,  twice ,", "NOTE Sand \u2013  by hand ,  twice ,"),
        ("note: 4legs,upright  # later ", "note: 4legs,upright  # later"),
    ],
)
def test_free_text_stays_as_it_is(typed: str, expected: str) -> None:
    assert tidy(typed) == expected


@pytest.mark.parametrize(
    "line",
    [
        "  2 rials , across ,into lges   # a name that nothing bears",
        "2 bars,across,  340 60 22",
        "2 bars,across,  gap 3 , gap 4",
        "4 x",
        "bar : upright",
        "@  4 bars,upright",
        f"gap = {'1+' * 51}1",
    ],
)
def test_a_line_that_cannot_be_read_stays_to_the_last_blank(line: str) -> None:
    assert tidy_line(f"{line}  ") == f"{line}  "


def test_a_line_that_would_become_too_long_to_be_read_stays() -> None:
    amounts = ["111111111millimetres"] * 45
    line = f"{'a' * 55}={'+'.join(amounts)}"
    assert len(line) == LONGEST_LINE
    assert tidy_line(line) == line
    spaced = " + ".join(["111111111 millimetres"] * 30)
    assert tidy_line(f"{'a' * 55}={'+'.join(amounts[:30])}") == f"{'a' * 55} = {spaced}"
