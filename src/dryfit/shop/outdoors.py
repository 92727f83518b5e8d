"""What lasts in rain and sun: the table `outdoors.csv`, all of it common practice.

A shop file may say otherwise of a glue or a finish with ``outdoors = true``.
"""

from __future__ import annotations

import csv
from functools import cache

from dryfit.resources import PACKAGE


@cache
def lasting(kind: str) -> frozenset[str]:
    """Return the names of a kind that last outdoors.

    `kind` is glue or finish; of a sheet the names are the words that tell one made for the
    weather, and under ``stained by steel`` stand the woods that plain steel turns black.
    """
    with (PACKAGE / "shop" / "outdoors.csv").open(encoding="utf-8", newline="") as file:
        rows = tuple(csv.DictReader(file))
    return frozenset(row["name"] for row in rows if row["kind"] == kind and row["lasts"] == "yes")
