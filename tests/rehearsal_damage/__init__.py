"""Kinds of damage to a finished plan, each wrong by construction: what a rehearsal is judged by.

Every function sees the plan and the goal, and makes sure from the boxes that what it makes is wrong
and not merely another way of doing it.  All else in the plan stays right.
"""

from tests.rehearsal_damage import (
    in_bark,
    in_boards,
    in_clamps,
    in_corners,
    in_counting,
    in_cutting,
    in_edges,
    in_fit,
    in_fittings,
    in_holding,
    in_leaning,
    in_lips,
    in_listing,
    in_lying,
    in_marks,
    in_order,
    in_reading,
    in_resting,
    in_rows,
    in_settings,
    in_shapes,
    in_shop,
    in_surfaces,
    in_time,
    in_vain,
)
from tests.rehearsal_damage.kind import Kind

KINDS: tuple[Kind, ...] = (
    *in_bark.KINDS,
    *in_boards.KINDS,
    *in_settings.KINDS,
    *in_cutting.KINDS,
    *in_fit.KINDS,
    *in_corners.KINDS,
    *in_edges.KINDS,
    *in_shapes.KINDS,
    *in_marks.KINDS,
    *in_fittings.KINDS,
    *in_holding.KINDS,
    *in_leaning.KINDS,
    *in_lying.KINDS,
    *in_reading.KINDS,
    *in_listing.KINDS,
    *in_vain.KINDS,
    *in_rows.KINDS,
    *in_resting.KINDS,
    *in_order.KINDS,
    *in_lips.KINDS,
    *in_surfaces.KINDS,
    *in_time.KINDS,
    *in_clamps.KINDS,
    *in_counting.KINDS,
    *in_shop.KINDS,
)

__all__ = ["KINDS", "Kind"]
