"""The jobs of cuts that other rooms know too: told here, so that none loads a family for its name.

What only one room speaks of stands there.
"""

from __future__ import annotations

FINGER, TAIL, PIN = "finger socket", "tail socket", "pin socket"
CORNER_ROLES = frozenset({FINGER, TAIL, PIN})
"""The jobs of what is cut out of an end between fingers; between the tails; between the pins."""

TONGUE = "tongue"
"""The rabbets that leave a tongue."""

ROUND, TENON_HOLE = "round tenon", "tenon hole"
"""What goes round a round tenon, and the hole that it goes into."""

POCKET = "pocket hole"
PIN_HOLE = "pin hole"
HINGE_RECESS = "hinge recess"
