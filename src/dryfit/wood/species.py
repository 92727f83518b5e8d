"""How much each wood moves, weighs and bends, by the name that a maker calls it."""

from __future__ import annotations

import csv
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from types import MappingProxyType

from dryfit.resources import PACKAGE
from dryfit.wood.sawn import without_cut

_CONIFERS = frozenset(
    [
        "Abies",
        "Agathis",
        "Araucaria",
        "Callitropsis",
        "Calocedrus",
        "Cedrus",
        "Chamaecyparis",
        "Cryptomeria",
        "Cupressus",
        "Juniperus",
        "Larix",
        "Libocedrus",
        "Picea",
        "Pinus",
        "Podocarpus",
        "Pseudotsuga",
        "Sequoia",
        "Taxodium",
        "Taxus",
        "Thuja",
        "Tsuga",
    ]
)
"""Genera whose wood the trade calls softwood: from memory, common knowledge of botany."""


@dataclass(frozen=True, slots=True)
class Species:
    """A wood with its dimensional change coefficients.

    `radial` and `tangential` are the fraction of a size across the grain by which it changes per
    1 % of moisture content: tangential across the width of a flatsawn board, radial across that of
    a quartersawn one and across the thickness of a flatsawn one.  `mark` says how sure the source
    is: read, derived or memory.  `specific_gravity` is ovendry mass over volume at 12 %, and
    `stiffness` the modulus of elasticity along the grain at 12 % in GPa; None where no source tells
    it on that basis: tables of imported woods give their gravity on green volume.
    """

    name: str
    botanical_name: str
    radial: Fraction
    tangential: Fraction
    mark: str
    source: str
    specific_gravity: Fraction | None = None
    stiffness: Fraction | None = None
    gravity_mark: str = ""
    stiffness_mark: str = ""
    strength_source: str = ""

    @property
    def softwood(self) -> bool:
        """Return whether it is the wood of a conifer."""
        genus, last = self.botanical_name.partition(" ")[0], self.name.rpartition(" ")[2]
        return genus in _CONIFERS or (not genus and last in {"fir", "cedar", "Douglas-fir"})


def species(name: str) -> Species | None:
    """Return the wood of that name, or None when the tables hold none.

    A plain name stands for its usual kind (``ash`` for white ash), or for the kind that moves most
    where several are usual (``oak`` for red oak).  A name that the tables do not have stands for
    its last word (``brown ash``), but two woods for neither (``cherry and walnut``).  `assumption`
    says so.  How the board was sawn (``quartersawn oak``) is no part of the name.
    """
    by_name = _by_name()
    wanted = _plain(without_cut(name))
    before, _, last_word = wanted.rpartition(" ")
    if before.endswith((" and", " or")):
        return by_name.get(wanted)
    return by_name.get(wanted) or by_name.get(last_word)


def assumption(name: str, taken: Species) -> str | None:
    """Return a sentence when the wood was not called by its full name, else None."""
    if _plain(without_cut(name)) == _plain(taken.name):
        return None
    return f"{without_cut(name)} is taken to be {taken.name}"


@cache
def all_species() -> tuple[Species, ...]:
    """Return the woods of the tables, by name."""
    return tuple(found for found, _ in _rows())


@cache
def wood_names() -> tuple[str, ...]:
    """Return every name by which a wood of the tables is called."""
    return tuple(name for found, others in _rows() for name in (found.name, *others))


@cache
def _by_name() -> Mapping[str, Species]:
    names: dict[str, Species] = {}
    for found, others in _rows():
        for name in (found.name, *others):
            names[_plain(name)] = found
    return MappingProxyType(names)


@cache
def _rows() -> tuple[tuple[Species, tuple[str, ...]], ...]:
    with (PACKAGE / "wood" / "species.csv").open(encoding="utf-8", newline="") as file:
        return tuple(_row(row) for row in csv.DictReader(file))


def _row(row: Mapping[str, str]) -> tuple[Species, tuple[str, ...]]:
    found = Species(
        name=row["name"],
        botanical_name=row["botanical_name"],
        radial=Fraction(row["radial_per_percent"]),
        tangential=Fraction(row["tangential_per_percent"]),
        mark=row["mark"],
        source=row["source"],
        specific_gravity=_known(row["specific_gravity"]),
        stiffness=_known(row["stiffness_gpa"]),
        gravity_mark=row["gravity_mark"],
        stiffness_mark=row["stiffness_mark"],
        strength_source=row["strength_source"],
    )
    return found, tuple(other for other in row["also_called"].split(";") if other)


def _known(figure: str) -> Fraction | None:
    return Fraction(figure) if figure else None


def _plain(name: str) -> str:
    return " ".join(name.lower().replace("-", " ").split())
