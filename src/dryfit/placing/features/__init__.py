"""Cuts with no mate: what the lines' words put on every copy (TRADE B0)."""

from dryfit.placing.features.everywhere import declared_cuts
from dryfit.placing.features.glued import glued_cuts, names_glue_ups

__all__ = ["declared_cuts", "glued_cuts", "names_glue_ups"]
