"""Cautions of the machines and processes that occur: a reminder, no teaching.

The table is package data, one row a caution, each with its source.  `applies` names stations,
settings (``cutter:dado``), glues (``glue:epoxy``), what is done on site (``site:wall``) or ``any
machine``.  A row is printed when one
of them occurs in the plan, or when an operation asks for it by its key.
"""

from __future__ import annotations

import csv
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from dryfit.plan.operation import Operation
from dryfit.plan.plan import Step

TABLE = Path(__file__).with_name("cautions.csv")

ANY_MACHINE = "any machine"
CUTTER_CHANGE = "isolate"

_PRACTICE = "common practice"

_WITHOUT_POWER = frozenset({"bench", "glue bench", "finish bench"})


@dataclass(frozen=True, slots=True)
class Caution:
    """One reminder: a short title for the page where it applies, a sentence, and its source."""

    key: str
    title: str
    text: str
    applies: tuple[str, ...]
    source: str
    read: bool

    @property
    def general(self) -> bool:
        """Whether it holds at every machine, so that naming it on each page would dull it."""
        return ANY_MACHINE in self.applies

    @property
    def cited(self) -> str:
        """The source as printed; common practice is nobody's text that could be remembered."""
        if self.read or self.source == _PRACTICE:
            return self.source
        return f"{self.source} (from memory)"


@cache
def table() -> tuple[Caution, ...]:
    """Return all cautions in the order of the file."""
    with TABLE.open(encoding="utf-8", newline="") as file:
        return tuple(
            Caution(
                row["key"],
                row["title"],
                row["text"],
                tuple(word.strip() for word in row["applies"].split(";") if word),
                row["source"],
                row["mark"] == "read",
            )
            for row in csv.DictReader(file)
        )


def for_step(step: Step) -> tuple[Caution, ...]:
    """Return the cautions of a step: those of its station, its work and its operations' keys."""
    occurring = {word for op in step.operations for word in _words(op, step.station)}
    keys = {key for op in step.operations for key in op.cautions}
    return tuple(row for row in table() if row.key in keys or not occurring.isdisjoint(row.applies))


def for_steps(steps: Iterable[Step]) -> tuple[Caution, ...]:
    """Return each caution that applies to any of the steps, once, in the order of the table."""
    keys = {caution.key for step in steps for caution in for_step(step)}
    return tuple(row for row in table() if row.key in keys)


def for_words(words: Iterable[str]) -> tuple[Caution, ...]:
    """Return the cautions that apply to words such as ``site:wall``, in the order of the table."""
    said = frozenset(words)
    return tuple(row for row in table() if not said.isdisjoint(row.applies))


def for_visit(steps: Iterable[Step]) -> tuple[Caution, ...]:
    """Return the cautions to name on a visit's page: its own, and the plug where a cutter goes."""
    row = tuple(steps)
    changes = any("cutter" in step.changed for step in row)
    return tuple(
        caution
        for caution in for_steps(row)
        if not caution.general or (changes and caution.key == CUTTER_CHANGE)
    )


def _words(operation: Operation, station: str) -> set[str]:
    words = {station}
    if station not in _WITHOUT_POWER:
        words.add(ANY_MACHINE)
    if operation.glue_up is not None:
        words.add(f"glue:{operation.glue_up.glue}")
    for setting in operation.settings:
        if isinstance(setting.value, str):
            words.add(f"{setting.axis}:{setting.value}")
            words.add(f"{setting.axis}:{setting.value.split()[0]}")
    return words
