"""Which names are those of sheet goods, and which of these have a grain."""

from __future__ import annotations

_SHEETS = ("ply", "plywood", "mdf", "hardboard", "chipboard", "particleboard")
_WITH_GRAIN = ("ply", "plywood")
"""Their faces are veneers; boards of chips and fibres look alike both ways."""


def is_sheet(timber: str) -> bool:
    """Return whether sheet goods are called so."""
    words = timber.lower().split()
    return words[-2:] == ["particle", "board"] or any(word in words for word in _SHEETS)


def has_grain(timber: str | None) -> bool:
    """Return whether a wood or sheet of that name has a grain, which a part must follow."""
    if timber is None or not is_sheet(timber):
        return True
    return any(word in timber.lower().split() for word in _WITH_GRAIN)
