"""What every page is made from, carried as one."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from dryfit.booklet.labels import Labels
from dryfit.booklet.text import Say, Text
from dryfit.placing.model import Copy, Model, Part
from dryfit.plan.plan import Plan
from dryfit.plan.reasons import StepReasons
from dryfit.shop.shop import Shop


@dataclass(frozen=True, slots=True)
class Bench:
    """Piece, plan and shop, the letters of the parts, and how lengths are said.

    `reasons` say by number why a step stands where it stands, where that has been worked out.
    """

    model: Model
    plan: Plan
    shop: Shop
    labels: Labels
    say: Say
    reasons: Mapping[int, StepReasons] = field(default_factory=dict)

    def rough(self, sizes: Iterable[Fraction]) -> Text:
        """Return the size of a blank; as its cuts have it where the boards are laid out."""
        return self.say.at_the_saw(sizes) if self.plan.boards else self.say.sizes(sizes)

    def part(self, name: str) -> Part | None:
        """Return the part of that name, or None for a blank, a panel or a glue-up."""
        return next((part for part in self.model.parts if part.name == name), None)

    def without_article(self, words: str) -> str:
        """Return a sentence in which a numbered glue-up is a name: ``end 1``, not ``the end 1``."""
        for assembly in self.model.assemblies:
            if assembly.name[-1:].isdigit():
                words = re.sub(rf"\bthe (?={re.escape(assembly.name)}\b)", "", words)
        return words

    def rows(self, names: tuple[str, ...]) -> tuple[CopyRow, ...]:
        """Return copies and glue-ups by number and name, the hand where the part has two."""
        found = {copy.name: (part, copy) for part in self.model.parts for copy in part.copies}
        return tuple(
            copy_row(*found[name], self.labels)
            if name in found
            else CopyRow(self.labels.copy(name), name, name, None)
            for name in names
        )

    def by_part(self, names: tuple[str, ...], *, named: bool) -> tuple[CopyRow, ...]:
        """Return copies in short, one row a part: ``C1–C4``, and ``posts`` where `named`."""
        rows = []
        for part in self.model.parts:
            labels = [self.labels.copy(copy.name) for copy in part.copies if copy.name in names]
            if labels:
                whole = len(labels) == len(part.copies) > 2
                shown = f"{labels[0]}–{labels[-1]}" if whole else ", ".join(labels)
                name = part.name if len(labels) == 1 else part.written
                rows.append(CopyRow(shown, part.written, name if named else "", None))
        return tuple(rows)


@dataclass(frozen=True, slots=True)
class CopyRow:
    """One piece of wood: its number, its name, and its hand where the part has two.

    `place` is the name without the part's, for a list that has named the part already; the
    number of a copy is in its label.
    """

    label: str
    name: str
    place: str
    hand: str | None


def copy_row(part: Part, copy: Copy, labels: Labels) -> CopyRow:
    """Return the row of a copy."""
    hand = copy.hand if len(part.hands()) > 1 else None
    place = copy.name.removesuffix(part.name).removeprefix(part.name).strip()
    return CopyRow(labels.copy(copy.name), copy.name, "" if place.isdigit() else place, hand)
