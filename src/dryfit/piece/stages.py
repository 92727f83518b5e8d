"""Glue-up lines with their names resolved."""

from __future__ import annotations

from dryfit.notes.tree import GlueLine
from dryfit.piece.declared import Stage, StageItem
from dryfit.piece.names import Names, full_name
from dryfit.piece.sums import Sums


def stage_of(line: GlueLine, sums: Sums, names: Names) -> Stage:
    """Return a glue-up; items that name nothing are left out with a finding."""
    items = tuple(
        StageItem(item.count, full_name(item.reference), item.reference.places, item.span)
        for item in line.items
        if names.is_part_or_stage(item.reference)
    )
    cure = sums.minutes(line.cure) if line.cure is not None else None
    return Stage(
        line.name,
        line.count,
        items,
        cure,
        line.name_span,
        line.span,
        glue=line.glue,
        pressed=line.pressed,
        people=line.people,
    )
