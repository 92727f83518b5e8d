"""The remedy for colliding mortises is the tenon length to write, and it works."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from tests.pieces.reading import changed, checked

from dryfit import workshop
from dryfit.diagnostics import Diagnostic, Source
from dryfit.notes import source_of

TABLE = """piece Bedside table
units inches to 1/16
overall 16" wide, 14" deep, 22" high
timber cherry
4 legs, upright, 1 3/8 x 1 3/8, at corners
2 long aprons, across, 3 1/2 x 3/4, tenon 3/4 long 1/4 thick into legs, set back 1/8
2 short aprons, front to back, 3 1/2 x 3/4, tenon 3/4 long 1/4 thick into legs, set back 1/8
glue up base: legs, long aprons, short aprons
"""


@pytest.mark.parametrize("length", ["3/4", "13/16"])
def test_the_length_in_the_hint_is_one_that_fits(length: str) -> None:
    text = changed(TABLE, ("tenon 3/4", f"tenon {length}"))
    (told,) = [each for each in checked(text).findings if each.code == "mortises-collide"]
    offered = re.search(r"`tenon ([^`]+) long`", told.hints[0].message)
    assert offered
    mended = checked(changed(text, (f"tenon {length}", f"tenon {offered[1]}")))
    assert not {each.code for each in mended.findings} & {"mortises-collide", "mortises-close"}


STOOL = """piece Planing stool
units mm, to nearest 0.5
overall 620 wide, 340 deep, 520 high
timber beech
4 legs, upright, 50 x 50, at corners, set in 30 across, 20 front to back
2 long aprons, across, 80 x 24, tenon 28 long 8 thick into legs, set back 4
2 short aprons, front to back, 80 x 24, tenon 28 long 8 thick into legs, set back 4
glue up base: legs, long aprons, short aprons
"""
CASE = """piece Spice case
units mm, to nearest 0.5
overall 640 wide, 165 deep, 720 high
timber cherry
2 sides, upright, 165 x 20, at left and right
1 shelf, across, 140 x 18, housing 7 into sides, up 30
1 hanging rail, across, 70 x 18, tenon 12 long 6 thick into sides, at back, down 60
glue up case: sides, shelf, hanging rail
"""
LENGTHS = {"tenon-too-long", "tenon-short", "mortises-collide", "mortises-close"}


def about_lengths(text: str) -> list[Diagnostic]:
    return [each for each in checked(text).findings if each.code in LENGTHS]


@pytest.mark.parametrize("length", ["55", "46", "40", "30", "28", "10"])
def test_one_length_is_offered_and_no_check_objects_to_it(length: str) -> None:
    text = changed(STOOL, ("tenon 28", f"tenon {length}"))
    told = about_lengths(text)
    assert told
    hints = "\n".join(each.hints[0].message for each in told)
    offered = set(re.findall(r"`tenon ([^`]+) long`", hints))
    assert len(offered) == 1
    assert about_lengths(changed(text, (f"tenon {length}", f"tenon {offered.pop()}"))) == []


@pytest.mark.parametrize("length", ["12", "15", "19", "25"])
def test_where_no_length_suits_the_thickness_of_the_host_is_told_and_serves(length: str) -> None:
    text = changed(CASE, ("tenon 12", f"tenon {length}"))
    (told,) = about_lengths(text)
    # 15 of tenon, 1 for glue and 5 behind it.
    assert "make the side at least 21 deep" in told.hints[0].message
    assert "`tenon" not in told.hints[0].message
    assert about_lengths(changed(CASE, ("165 x 20", "165 x 21"), ("tenon 12", "tenon 15"))) == []


def test_no_length_of_nothing_or_less_is_offered() -> None:
    told = about_lengths(changed(STOOL, ("50 x 50", "5 x 5")))
    assert told
    for each in told:
        assert "-" not in each.message + each.hints[0].message


def test_mortises_that_collide_by_less_than_the_page_shows_do_not_collide_by_nothing() -> None:
    text = changed(STOOL, ("nearest 0.5", "nearest 1"), ("tenon 28", "tenon 29.3"))
    (told,) = [each for each in checked(text).findings if each.code == "mortises-collide"]
    # The other mortise begins 50 - 4 - 12 - 4 = 30 in; the mortise is 29.3 + 1 deep.
    assert told.message.endswith("collide by 0.3")


def test_chisels_are_named_so_that_the_width_can_be_written(tmp_path: Path) -> None:
    """With 1/4 in of the shipped chisels alone near 6 mm, 6.5 would be no width of the shop."""
    shop = tmp_path / "shop.toml"
    shop.write_text('format = "dryfit-shop/1"\nname = "Shop"\n[cutter]\n"chisel 6" = false\n')
    text = changed(STOOL, ("8 thick", "6 thick"))
    (told,) = [each for each in in_shop(text, shop) if each.code == "no-such-chisel"]
    listed = '1/4", 5/16", 8, 3/8", 10, 12, 12.7'
    mortises = "mortise for short apron and mortise for long apron"
    assert told.message == f"leg: {mortises} are 6 wide; the shop's chisels are {listed}"
    assert "(`station.mortiser = false`)" in told.hints[0].message
    assert told.hints[0].message.startswith('make the tenon 1/4" thick')
    mended = in_shop(changed(text, ("6 thick", '1/4" thick')), shop)
    assert not [each for each in mended if each.code == "no-such-chisel"]


def in_shop(text: str, shop: Path) -> tuple[Diagnostic, ...]:
    source = source_of("stool.dryfit", text.encode())
    assert isinstance(source, Source)
    return workshop.check(source, shop, {}).findings
