"""A value on one axis of a station, and how a part is held while it is cut."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction


@dataclass(frozen=True, slots=True)
class Setting:
    """One axis with its value: a name (cutter, accessory), mm, or degrees.

    For distances `value` is the near face of the cutter (towards the fence or stop that locates
    the work), `far` the far face; `origin` names the end or edge that touches (R, E, ...).
    `above` is ``table`` for heights.  `side` tells left from right for mirrored stops.  A value
    that waits for a measurement carries its name and formula, `worked` with exact mm between
    words; it shares a setting with nothing.
    Once that is `taken` the value is the true figure, else the one on paper.
    `at_least` and `at_most` are the bounds of what would do as well, where there is a choice: the
    height of a cut right through.
    """

    axis: str
    value: Fraction | str
    unit: str = "mm"
    to: str | None = None
    far: Fraction | None = None
    origin: str | None = None
    above: str | None = None
    side: str | None = None
    measure: str | None = None
    formula: str | None = None
    at_least: Fraction | None = None
    at_most: Fraction | None = None
    taken: bool = False
    worked: tuple[str | Fraction, ...] = ()

    @property
    def waits(self) -> str | None:
        """The measurement that the value waits for while nobody has taken it."""
        return None if self.taken else self.measure

    def token(self) -> str:
        """Return what the machine must stand at: equal tokens share the setting.

        The end that touches is a matter of holding the part, not of the machine, so `origin`
        does not count.  The far face does: a cutter of another width has one of its faces, on a
        drill both, elsewhere, and the fence or stop has to be set again for it (TRADE 0.4).
        """
        words = [str(self.value)]
        if self.far is not None:
            words.append(f"to {self.far}")
        if self.side:
            words.append(self.side)
        if self.measure:
            words.append(f"measured {self.measure}")
        return " ".join(words)


@dataclass(frozen=True, slots=True)
class Hold:
    """How the part lies: surface down on the table, surface at the fence, end at the stop."""

    down: str | None
    against_fence: str | None
    at_stop: str | None


@dataclass(frozen=True, slots=True)
class Pass:
    """One pass: a spacer in mm at the stop, a fence position in mm, or in between freehand.

    `moved` is how far the work stands from where it touched the stop, away from it and with it the
    cut: a socket that is cut goes over the pin of a jig, and the next is cut so much further on.
    """

    spacer: Fraction | None = None
    fence: Fraction | None = None
    between: bool = False
    moved: Fraction | None = None
