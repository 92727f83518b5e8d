"""How heavy and how stiff sheet goods are, by the name that a maker calls them."""

from __future__ import annotations

import csv
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import cache

from dryfit.resources import PACKAGE


@dataclass(frozen=True, slots=True)
class Sheet:
    """A kind of sheet goods: its density in kg/m3 as it is sold, and its stiffness in GPa.

    The stiffness, the modulus of elasticity along the sheet's face, is None where no source tells
    it.  `mark` says how sure the source is: read or memory.
    """

    name: str
    density: Fraction
    stiffness: Fraction | None
    mark: str
    source: str


def sheet_goods(name: str) -> Sheet | None:
    """Return the sheet goods of that name, or None when the table holds none.

    Words that the table does not have before a name that it has say what the face is of (``oak
    plywood``) or what it is for (``moisture resistant MDF``): the sheet is taken by its last words.
    """
    words = name.lower().replace("-", " ").split()
    by_name = _by_name()
    for start in range(len(words)):
        found = by_name.get(" ".join(words[start:]))
        if found is not None:
            return found
    return None


@cache
def _by_name() -> Mapping[str, Sheet]:
    names: dict[str, Sheet] = {}
    with (PACKAGE / "wood" / "sheets.csv").open(encoding="utf-8", newline="") as file:
        for row in csv.DictReader(file):
            sheet = Sheet(
                name=row["name"],
                density=Fraction(row["density_kg_m3"]),
                stiffness=Fraction(row["stiffness_gpa"]) if row["stiffness_gpa"] else None,
                mark=row["mark"],
                source=row["source"],
            )
            for each in (row["name"], *row["also_called"].split(";")):
                if each:
                    names[each.lower()] = sheet
    return names
