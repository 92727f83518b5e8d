"""The copies of a piece as they come from the bench: boxes less their features."""

from __future__ import annotations

from dryfit.geometry.solid import Solid
from dryfit.placing.model import Copy, Model, Part

ROUND = "hole"
"""Kind of feature that is drilled: a box would show it square, so drawings leave it out, as they
do all forms that are no boxes."""


def cut_solid(part: Part, copy: Copy) -> Solid:
    """Return the copy with every square cut that its hand carries."""
    return Solid(
        copy.box,
        tuple(
            feature.box(copy.box, copy.frame)
            for feature in part.features
            if copy.hand in feature.hands
            and feature.kind != ROUND
            # A mitred corner is drawn as a block of its own, between its two members.
            and (feature.form is None or feature.role == "mitre")
        ),
    )


def placed_copies(model: Model) -> tuple[tuple[Part, Copy], ...]:
    """Return every copy with its part, in the order of the notes."""
    return tuple((part, copy) for part in model.parts for copy in part.copies)
