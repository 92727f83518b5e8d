"""Systems of linear equations, solved exactly, with the equations behind every answer.

Rows come one at a time and are brought to reduced row echelon form as they come (Gauss-Jordan over
Fractions, sparse, in the order of coming).  What was done to the rows is kept, so that any answer
can be led back to the rows as they came: the factors by which they add up to it.
"""

from __future__ import annotations

from collections.abc import Hashable, Iterable, Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Generic, TypeVar

Unknown = TypeVar("Unknown", bound=Hashable)

ZERO = Fraction(0)


@dataclass(frozen=True, slots=True)
class Known(Generic[Unknown]):
    """An unknown as far as the system tells it: `constant` plus factors times free unknowns.

    `row` is the row that tells it, None for a free unknown.
    """

    constant: Fraction
    free: tuple[tuple[Unknown, Fraction], ...]
    row: int | None


@dataclass(frozen=True, slots=True)
class _Change:
    # `row` became itself times `own`, plus `factor` times `other`.
    row: int
    own: Fraction
    other: int
    factor: Fraction


@dataclass(slots=True)
class System(Generic[Unknown]):
    """Grows by `add`; answers `known`, and `made_of` for the rows behind an answer.

    `idle` rows follow from earlier ones, `false` rows contradict them; neither changes anything.
    """

    idle: list[int] = field(default_factory=list)
    false: list[int] = field(default_factory=list)
    _count: int = 0
    _rows: dict[int, dict[Unknown, Fraction]] = field(default_factory=dict)
    _constants: dict[int, Fraction] = field(default_factory=dict)
    _row_of: dict[Unknown, int] = field(default_factory=dict)
    _users: dict[Unknown, dict[int, None]] = field(default_factory=dict)
    _changes: list[_Change] = field(default_factory=list)

    def add(self, factors: Iterable[tuple[Unknown, Fraction]], constant: Fraction) -> int:
        """Take in the equation sum(factor * unknown) = constant; return the number of its row."""
        row, index = dict[Unknown, Fraction](), self._count
        self._count += 1
        for unknown, factor in factors:
            row[unknown] = row.get(unknown, ZERO) + factor
        row = {unknown: factor for unknown, factor in row.items() if factor}
        self._constants[index] = constant
        for unknown in [each for each in row if each in self._row_of]:
            self._take_off(index, row, self._row_of[unknown], row[unknown])
        if not row:
            (self.false if self._constants.pop(index) else self.idle).append(index)
            return index
        self._rows[index] = row
        self._settle(index, row)
        return index

    def known(self, unknown: Unknown) -> Known[Unknown]:
        """Return what the system tells of an unknown."""
        row = self._row_of.get(unknown)
        if row is None:
            return Known(ZERO, ((unknown, Fraction(1)),), None)
        free = [(each, -factor) for each, factor in self._rows[row].items() if each != unknown]
        return Known(self._constants[row], tuple(free), row)

    def made_of(self, rows: Mapping[int, Fraction]) -> dict[int, Fraction]:
        """Return the factors by which the rows as they came add up to the given mix of rows.

        For an idle or a false row, taken once, it is the least set of rows that say the same, or
        that cannot all hold: what came before is independent, so the mix is the only one.
        """
        mix = dict(rows)
        for change in reversed(self._changes):
            share = mix.get(change.row)
            if share:
                mix[change.row] = share * change.own
                if change.factor:
                    mix[change.other] = mix.get(change.other, ZERO) + share * change.factor
        return {index: mix[index] for index in sorted(mix) if mix[index]}

    def _settle(self, index: int, row: dict[Unknown, Fraction]) -> None:
        # Solve for the unknown that the fewest rows use: this keeps the rows short.
        pivot = min(row, key=lambda each: len(self._users.get(each, ())))
        own = 1 / row[pivot]
        if own != 1:
            for unknown in row:
                row[unknown] *= own
            self._constants[index] *= own
            self._changes.append(_Change(index, own, index, ZERO))
        self._row_of[pivot] = index
        for unknown in row:
            self._users.setdefault(unknown, {})[index] = None
        for user in [each for each in self._users[pivot] if each != index]:
            self._take_off(user, self._rows[user], index, self._rows[user][pivot])

    def _take_off(
        self, index: int, row: dict[Unknown, Fraction], other: int, factor: Fraction
    ) -> None:
        settled = index in self._rows
        for unknown, share in self._rows[other].items():
            left = row.get(unknown, ZERO) - factor * share
            if left:
                row[unknown] = left
            else:
                row.pop(unknown, None)
            if settled and left:
                self._users.setdefault(unknown, {})[index] = None
            elif settled:
                self._users.get(unknown, {}).pop(index, None)
        self._constants[index] -= factor * self._constants[other]
        self._changes.append(_Change(index, Fraction(1), other, -factor))
