"""What holds of every placed piece: nothing overlaps, joints are filled, order does not matter.

The solids are sampled on a grid of their own here, independent of `geometry.solid`.
"""

from __future__ import annotations

import random
from collections.abc import Iterable, Mapping
from dataclasses import replace
from fractions import Fraction
from itertools import pairwise, product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.pieces.reading import FILES, model_of, model_of_piece, text_of
from tests.property.meaning import statements

from dryfit.geometry.box import Box
from dryfit.placing.model import Copy, Model, Part

FILLED = ("half lap", "housing", "mortise and tenon")
FOR_SCREWS = {"screw hole", "pilot hole"}


def removed_boxes(part: Part, copy: Copy) -> list[Box]:
    """What is cut from a copy; screw holes are left out, since screws fill them."""
    return [box for role, box in cut_boxes(part, copy) if role not in FOR_SCREWS]


def removed_after(part: Part, copy: Copy, stage: str) -> list[Box]:
    """What is cut from a copy once the glue-up of a stage holds it."""
    late = replace(part, features=tuple(each for each in part.features if each.after == stage))
    return removed_boxes(late, copy)


def cut_boxes(part: Part, copy: Copy) -> list[tuple[str, Box]]:
    return [
        (feature.role, feature.box(copy.box, copy.frame))
        for feature in part.features
        if copy.hand in feature.hands
    ]


def cells(boxes: Iterable[Box]) -> list[tuple[Fraction, ...]]:
    """The middles of all cells of the grid that the faces of the boxes make."""
    boxes = list(boxes)
    middles = []
    for axis in range(3):
        cuts = sorted({edge for box in boxes for edge in (box.low[axis], box.high[axis])})
        middles.append([(low + high) / 2 for low, high in pairwise(cuts)])
    return list(product(*middles))


def inside(point: tuple[Fraction, ...], box: Box) -> bool:
    return all(box.low[axis] < point[axis] < box.high[axis] for axis in range(3))


class Solids:
    """Which copies are of wood at a point, by their boxes and features alone."""

    def __init__(self, model: Model) -> None:
        self.copies = {copy.name: copy for part in model.parts for copy in part.copies}
        self.removed = {
            copy.name: removed_boxes(part, copy) for part in model.parts for copy in part.copies
        }

        # Grooves and cuts with no mate run through joints as they come.
        self.passing = [
            box
            for part in model.parts
            for copy in part.copies
            for role, box in cut_boxes(part, copy)
            if role in {"groove", "rabbet", "notch"}
        ]

        self.late = cut_in_glued_joints(model)

    def has_wood(self, name: str, point: tuple[Fraction, ...]) -> bool:
        return inside(point, self.copies[name].box) and not self.cut_from(name, point)

    def had_wood(self, name: str, point: tuple[Fraction, ...], joint: str) -> bool:
        """Whether a copy is of wood at a point when the joint is closed."""
        cut = list(self.removed[name])
        for box in self.late.get((name, joint), ()):
            cut.remove(box)
        return inside(point, self.copies[name].box) and not any(inside(point, box) for box in cut)

    def cut_from(self, name: str, point: tuple[Fraction, ...]) -> bool:
        return any(inside(point, box) for box in self.removed[name])


def cut_in_glued_joints(model: Model) -> Mapping[tuple[str, str], list[Box]]:
    """What is cut from a copy after the glue-up that closes a joint, by copy and joint."""
    copies: dict[str, set[str]] = {}
    closed: dict[str, set[str]] = {}
    for glued in model.assemblies:
        parts = [name for name in glued.of if name in copies]
        copies[glued.name] = set(glued.of).union(*(copies[name] for name in parts))
        closed[glued.name] = set(glued.joints).union(*(closed[name] for name in parts))

    late: dict[tuple[str, str], list[Box]] = {}
    for glued, part in product(model.assemblies, model.parts):
        for copy in (each for each in part.copies if each.name in copies[glued.name]):
            boxes = removed_after(part, copy, glued.stage)
            for joint in closed[glued.name] if boxes else ():
                late.setdefault((copy.name, joint), []).extend(boxes)
    return late


@pytest.fixture(scope="module", params=FILES)
def model(request: pytest.FixtureRequest) -> Model:
    return model_of_piece(request.param)


def test_no_two_solids_share_space(model: Model) -> None:
    solids = Solids(model)
    names = sorted(solids.copies)
    for index, first in enumerate(names):
        for second in names[index + 1 :]:
            one, two = solids.copies[first].box, solids.copies[second].box
            common = one.overlap(two)
            if common is None:
                continue
            edges = [
                cut
                for name in (first, second)
                for box in solids.removed[name]
                if (cut := box.overlap(common))
            ]
            for point in cells([common, *edges]):
                both = solids.has_wood(first, point) and solids.has_wood(second, point)
                assert not both, f"{first} and {second} at {point}"


def test_every_joint_region_is_filled_by_one_of_its_two_parts(model: Model) -> None:
    solids = Solids(model)
    for joint in model.joints:
        if joint.kind not in FILLED:
            continue
        pair = (joint.guest, joint.host)
        edges = [
            cut
            for name in pair
            for box in solids.removed[name]
            if (cut := box.overlap(joint.region))
        ]
        for point in cells([joint.region, *edges]):
            if any(inside(point, cut) for cut in solids.passing):
                continue
            # What is cut in the glued whole may take wood of the joint, which was full before.
            filled = [name for name in pair if solids.had_wood(name, point, joint.id)]
            slides = joint.tenon is not None and bool(joint.tenon.tongue) and not filled
            if slides and solids.cut_from(joint.host, point):
                # Between tenons that slide there is room beside them and before the tongue.
                continue
            assert len(filled) == 1, f"{joint.id} at {point}: {filled}"


def test_a_mortise_is_deeper_than_its_tenon_by_the_clearance(model: Model) -> None:
    copies = {copy.name: (part, copy) for part in model.parts for copy in part.copies}
    for joint in model.joints:
        if joint.kind != "mortise and tenon":
            continue
        host, copy = copies[joint.host]
        holes = [
            (box, tenon)
            for role, box in cut_boxes(host, copy)
            if role == "mortise" and (tenon := box.overlap(joint.region)) is not None
        ]
        assert len(holes) == (joint.tenon.count if joint.tenon is not None else 1)
        for hole, tenon in holes:
            if joint.clearance:
                deeper = copies[joint.guest][1].frame.axes[0][0]
                assert hole.extent(deeper) - tenon.extent(deeper) == joint.clearance
            else:
                assert hole == tenon


def test_a_panel_stands_in_its_grooves_with_the_clearance_to_spare(model: Model) -> None:
    copies = {copy.name: (part, copy) for part in model.parts for copy in part.copies}
    for joint in model.joints:
        if joint.kind != "groove":
            continue
        host, copy = copies[joint.host]
        (groove,) = (
            box for box in removed_boxes(host, copy) if box.overlap(joint.region) == joint.region
        )
        (axis,) = (
            axis
            for axis in range(3)
            if groove.extent(axis) - joint.region.extent(axis) == joint.clearance
            and groove.extent(axis) <= copy.box.extent(axis) / 2
        )
        ends = (copy.box.low[axis], copy.box.high[axis])
        assert groove.low[axis] in ends or groove.high[axis] in ends


def boxes(model: Model) -> Mapping[str, Box]:
    return {copy.name: copy.box for part in model.parts for copy in part.copies if not part.made}


@pytest.mark.parametrize("name", FILES)
@settings(max_examples=3)
@given(seed=st.integers(0, 10_000))
def test_the_order_of_the_lines_does_not_matter(name: str, seed: int) -> None:
    text = text_of(name)
    shuffled = statements(text)
    random.Random(seed).shuffle(shuffled)  # noqa: S311
    assert boxes(model_of("\n".join(shuffled) + "\n")) == boxes(model_of_piece(name))
