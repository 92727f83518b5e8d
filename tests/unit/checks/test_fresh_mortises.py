"""The remedy for colliding mortises is the tenon length to write, and it works."""

from __future__ import annotations

import re

import pytest
from tests.pieces.reading import changed, checked

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
