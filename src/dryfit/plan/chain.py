"""Rules that contradict one another, one leading to the next, as they are told."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Link:
    """One link of a chain: a rule, or two operations of one visit, which no rule puts in order."""

    one: str
    other: str
    reason: str
    visit: bool = False

    def told(self) -> str:
        """Return the link with its reason: ``A before B: why``, ``A together with B: why``."""
        between = "together with" if self.visit else "before"
        return f"{self.one} {between} {self.other}: {self.reason}"
