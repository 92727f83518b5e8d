"""Cuts with no mate: what the lines' words put on every copy (TRADE B0)."""

from dryfit.placing.features.everywhere import declared_cuts

__all__ = ["declared_cuts"]
