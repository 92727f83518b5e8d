"""The piece taken apart: pegs are round, each copy with a place of its own is named, no leader
runs under a balloon.  The notes are ours.
"""

from math import hypot
from pathlib import Path

import pytest
from tests.unit.booklet.svg_reading import lettering

from dryfit.booklet.drawing import exploded, labelling
from dryfit.booklet.drawing.balloons import Wanted
from dryfit.booklet.drawing.cut_shapes import cut_shapes, placed_copies
from dryfit.booklet.drawing.rect import Segment
from dryfit.booklet.labels import label
from dryfit.diagnostics import Source
from dryfit.placing.model import Model
from dryfit.workshop import check

EXAMPLES = sorted((Path(__file__).parents[3] / "examples").glob("*.dryfit"))
STOOL = """piece Milking stool
units mm
overall 340 wide, 300 deep, 450 high
timber ash
1 seat, flat, 340 x 300 x 32, glued from 2, down 0
4 legs, upright, 34 x 34, at corners, set in 30, up 0, splayed 8 degrees both ways, \
through wedged round tenon 24 into seat
glue up stool: legs, seat
"""


def placed(text: str, name: str = "stool.dryfit") -> Model:
    model = check(Source(name, text), None, {}).model
    assert model is not None
    return model


def test_a_round_tenon_is_drawn_round() -> None:
    model = placed(STOOL)
    (part, leg), *_ = [row for row in placed_copies(model) if row[0].name == "leg"]
    (shape,) = cut_shapes([(part, leg)])
    top = max(line.start[2] for line in shape.lines)
    rim = [line for line in shape.lines if line.start[2] == line.end[2] == top]
    assert len(rim) == 16
    ends = [each for line in rim for each in (line.start, line.end)]
    middle = [sum(end[axis] for end in ends) / len(ends) for axis in (0, 1)]
    # A facet's middle lies on the circle of 24 mm across.
    for line in rim:
        x, y = ((line.start[axis] + line.end[axis]) / 2 - middle[axis] for axis in (0, 1))
        assert hypot(x, y) == pytest.approx(12)
    # What runs up the peg is a seam, drawn only where it is an outline.
    shoulder = leg.lean.level if leg.lean is not None else 0
    steep = [line for line in shape.lines if line.end[2] - line.start[2] > 1]
    assert all(line.beside for line in steep if line.start[2] >= shoulder)


def test_the_mouths_of_a_leaning_hole_are_where_the_peg_comes_out() -> None:
    model = placed(STOOL)
    copies = placed_copies(model)
    shapes = cut_shapes(copies)
    top = float(model.overall[2])

    def points(index: int) -> set[tuple[float, float]]:
        ends = (each for line in shapes[index].lines for each in (line.start, line.end))
        return {(round(x, 3), round(y, 3)) for x, y, z in ends if abs(z - top) < 1e-6}

    seat = next(at for at, (part, _) in enumerate(copies) if part.name == "seat")
    legs = [at for at, (part, _) in enumerate(copies) if part.name == "leg"]
    assert all(points(leg) <= points(seat) for leg in legs)


def test_legs_that_lean_each_its_own_way_are_each_named() -> None:
    model = placed(STOOL)
    labels = label(model)
    drawn = exploded.exploded_drawing(model, labels.copies, labels.parts)
    words = sorted(line.words for line in lettering(drawn))
    assert words == ["C1", "D1", "D2", "D3", "D4"]


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.stem)
def test_no_leader_runs_under_a_balloon(path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    found: list[labelling.Placed] = []
    place = labelling.place_labels

    def noted(wanted: list[Wanted], drawn: list[Segment]) -> tuple[labelling.Placed, ...]:
        rows = place(wanted, drawn)
        found.extend(rows)
        return rows

    monkeypatch.setattr(labelling, "place_labels", noted)
    model = placed(path.read_text(encoding="utf-8"), path.name)
    labels = label(model)
    exploded.exploded_drawing(model, labels.copies, labels.parts)
    under = [
        (one.label, other.label)
        for one in found
        for other in found
        if one is not other and labelling.distance_to(other.centre, one.leader) < other.radius
    ]
    assert under == []
