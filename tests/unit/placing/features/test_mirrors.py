"""What is told alike of a left and a right part is mirrored, however the part lies."""

from __future__ import annotations

import json
from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import jsonschema
import pytest
from tests.unit.placing.features.where import Bounds, cuts, placed

import dryfit
from dryfit.placing.as_json import parts_document

SCHEMA = Path(dryfit.__file__).parent / "schemas" / "parts.json"
WIDE = Fraction(600)
HEAD = "piece Pair\nunits mm\noverall 600 wide, 400 deep, 500 high\ntimber oak\n"
WAYS = {
    "upright": "2 sides, upright, facing side, 500 x 300 x 20, at left and right, 30 from front\n",
    "on edge": "2 sides, front to back, on edge, 400 x 200 x 20, at left and right, up 50\n",
    "flat": "2 sides, front to back, flat, 400 x 200 x 20, at left and right, up 50\n",
    "square": "2 sides, upright, 500 x 40 x 40, at left and right, 30 from front\n",
}
LINES = (
    "groove in sides: front, 4 wide, 4 deep, 12 from top, through",
    "rabbet in sides: top outer edge, 6 wide, 8 deep, through",
    "hole in sides: top, 5 dia, 10 deep, 12 from front",
    "taper in sides: {across} face, from 40 from {start} to the {end} end, {size} to 15",
    "chamfer on sides: all edges, 3",
    "chamfer on sides: outer edges, 3 wide, 2 deep",
    "round-over on sides: {end} end, 4",
    "profile on sides: all long edges, cove, 5 wide, 4 deep",
    "curve in sides: {across} edge, 6 deep, from 60 from {start} to 90 from {end}",
    "notch in sides: {across} edge, 40 wide, 10 deep, 30 from {start}",
    "slot in sides: {across}, 6 wide, 60 long, through, centred",
    "bevel in sides: {end} end, 10 degrees",
    "bevel in sides: outside {end} end, 5 degrees",
)


def line_of(line: str, way: str) -> str:
    upright = way in {"upright", "square"}
    start, end = ("top", "bottom") if upright else ("front", "back")
    across = {"upright": "front", "on edge": "top", "flat": "right", "square": "front"}[way]
    size = {"upright": 300, "on edge": 200, "flat": 200, "square": 40}[way]
    return line.format(start=start, end=end, across=across, size=size) + "\n"


def mirrored(bounds: Bounds) -> Bounds:
    (low, high), *others = bounds
    return (WIDE - high, WIDE - low), *others


@pytest.mark.parametrize("way", WAYS)
@pytest.mark.parametrize("line", LINES, ids=lambda line: line.partition(":")[0])
def test_left_and_right_are_mirror_images(line: str, way: str) -> None:
    text = line_of(line, way)
    model = placed(HEAD + WAYS[way] + text)
    (part,) = model.parts
    roles = {feature.role for feature in part.features}
    assert roles == {text.partition(" ")[0]}
    left, right = (cuts(model, f"{side} side", *roles) for side in ("left", "right"))
    assert left
    if "right" not in text:
        assert {mirrored(each) for each in left} == right
    for copy in part.copies:
        for feature in part.features:
            assert copy.box.contains(feature.box(copy.box, copy.frame))


@pytest.mark.parametrize("way", WAYS)
def test_the_document_holds_every_kind_in_the_words_of_the_contract(way: str) -> None:
    lines = "".join(line_of(line, way) for line in LINES)
    model = placed(HEAD + WAYS[way] + lines)
    document = parts_document("Pair", "notes.dryfit", model, [], "mm")
    jsonschema.validate(document, json.loads(SCHEMA.read_text(encoding="utf-8")))
    (part,) = model.parts
    kinds = {feature.kind for feature in part.features}
    assert kinds >= {"rabbet", "hole", "taper", "profile", "curve", "notch", "mortise", "mitre"}
    text = json.dumps(document)
    assert '"angle": {"exact": "10 deg", "deg": 10.0, "shown": "10"}' in text


@pytest.mark.parametrize("way", WAYS)
def test_the_order_of_the_lines_changes_nothing(way: str) -> None:
    lines = [line_of(line, way) for line in LINES]
    one, other = (placed(HEAD + WAYS[way] + "".join(each)) for each in (lines, lines[::-1]))
    first, second = one.parts[0], other.parts[0]
    assert [copy.hand for copy in first.copies] == [copy.hand for copy in second.copies]
    assert [replace(each, span=None) for each in first.features] == [
        replace(each, span=None) for each in second.features
    ]
