"""Parts with their horns: as long as they stay until their frame is glued (TRADE B3.3)."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction

from dryfit.geometry.box import Box, spanning
from dryfit.geometry.frame import LENGTH, SURFACES
from dryfit.joinery.feature import Feature
from dryfit.placing.model import Assembly, Copy, Model, Part

RUNS_OUT = frozenset({"long slot", "rabbet"})
"""Kinds of cuts along a part that run on through a horn where they reach the finished end."""


def with_horns(model: Model) -> Model:
    """Return the model with the parts as they are cut: longer, all places from the horn's end.

    What is cut after the glue-up finds the horns gone, and is measured from the finished ends.
    """
    if not any(part.horns for part in model.parts):
        return model
    parts = tuple(with_its_horns(part) for part in model.parts)
    copies = {copy.name: copy for part in parts for copy in part.copies if part.horns}
    return replace(
        model,
        parts=parts,
        assemblies=tuple(_with_its_horns(each, copies) for each in model.assemblies),
    )


def _with_its_horns(assembly: Assembly, horned: Mapping[str, Copy]) -> Assembly:
    """Return a glue-up as it lies on the bench: its diagonals run from horn to horn."""
    boxes = [horned[name].box for name in assembly.of if name in horned]
    if not boxes:
        return assembly
    box, axes = spanning((assembly.box, *boxes)), assembly.square_axes
    square = None if axes is None else (box.extent(axes[0]), box.extent(axes[1]))
    return replace(assembly, box=box, square=square)


def with_its_horns(part: Part) -> Part:
    """Return a part as long as it is until its frame is glued, the part itself without horns."""
    if not part.horns:
        return part
    return replace(
        part,
        length=part.length + 2 * part.horns,
        copies=tuple(_longer(copy, part.horns) for copy in part.copies),
        features=tuple(_moved(feature, part) for feature in part.features),
        with_horns=True,
    )


def sawn_to_length(part: Part) -> Part:
    """Return a part with its horns as it is without them, for what is cut then; else the part."""
    if not part.with_horns:
        return part
    return replace(
        part,
        length=part.length - 2 * part.horns,
        copies=tuple(_longer(copy, -part.horns) for copy in part.copies),
        with_horns=False,
    )


def _longer(copy: Copy, horn: Fraction) -> Copy:
    axis = copy.frame.axes[LENGTH][0]
    low, high = list(copy.box.low), list(copy.box.high)
    low[axis], high[axis] = low[axis] - horn, high[axis] + horn
    return replace(copy, box=Box((low[0], low[1], low[2]), (high[0], high[1], high[2])))


def _moved(feature: Feature, part: Part) -> Feature:
    if feature.after is not None or SURFACES[feature.surface][0] == LENGTH:
        return feature
    low, high = feature.along
    runs_out = feature.kind in RUNS_OUT
    start = Fraction(0) if runs_out and low <= 0 else low + part.horns
    end = part.length + 2 * part.horns if runs_out and high >= part.length else high + part.horns
    return replace(feature, along=(start, end))
