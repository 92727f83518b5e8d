"""Deeds by what they are of: milling, the cuts of a box's corners, all that takes wood off."""

from __future__ import annotations

MILLING = frozenset(
    {
        "bark",
        "straight edge",
        "rip",
        "strip face",
        "strip edge",
        "strip thickness",
        "resaw",
        "face",
        "edge",
        "flatten",
        "rough thickness",
        "thickness",
        "width",
        "second edge",
        "length",
    }
)
"""What brings a blank to its size, once it is cut to rough length."""

CORNER_CUTS = frozenset({"fingers", "tails", "pins"})

CUTS = (
    MILLING
    | CORNER_CUTS
    | frozenset(
        {
            "rough length",
            "lap",
            "housing",
            "tenon cheek",
            "tenon shoulder",
            "mortise",
            "groove",
            "hole",
            "notch",
            "profile",
            "plane to fit",
            "mitre",
            "taper",
            "curve",
            "bevel",
            "fair",
            "key slot",
            "trim lip",
            "make",
        }
    )
)
"""What takes wood off; what a wish calls a cut."""
