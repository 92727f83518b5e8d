"""What the maker favours: the one knob of the order."""

from __future__ import annotations

USUAL = "balanced"
WORTH = {"setups": 100, USUAL: 4, "soonest": 1}
"""Minutes of waiting that one minute of set-up is worth, by what the maker favours.

Even `setups` is never the bare fewest: that leaves the maker waiting for nothing gained.
"""
