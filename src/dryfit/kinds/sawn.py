"""The ways in which boards are sawn out of the log, and what makers call them (TRADE G2)."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

FLATSAWN, QUARTERSAWN, RIFT = "flatsawn", "quartersawn", "rift"

SPELLINGS: Mapping[str, str] = MappingProxyType(
    {
        "flatsawn": FLATSAWN,
        "flat sawn": FLATSAWN,
        "plainsawn": FLATSAWN,
        "plain sawn": FLATSAWN,
        "slab sawn": FLATSAWN,
        "quartersawn": QUARTERSAWN,
        "quarter sawn": QUARTERSAWN,
        "riftsawn": RIFT,
        "rift sawn": RIFT,
        "rift": RIFT,
    }
)
"""What makers call each cut, hyphens as blanks; the longer of two that begin alike first."""
