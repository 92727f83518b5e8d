"""What is wrong with a plan: the step, the reason, and what would have had to hold."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class Reason(StrEnum):
    """Why a step cannot be done, or why the piece is not what the notes want."""

    MACHINE = "the machine"
    """A station, axis, cutter or accessory that is not there, or a limit that is passed."""
    SETTING = "the setting"
    """An axis does not stand where the work needs it, or its change is not announced."""
    REFERENCE = "the reference"
    """The surface that a cut is measured from is not true yet, or is there no more."""
    HOLD = "the hold"
    """The copy cannot lie so without being its mirror image, or is not at hand."""
    WOOD = "the wood"
    """Another timber or thickness, bad wood in a blank, or too much warp to plane out."""
    CUT = "the cut"
    """Wood goes that is wanted, or nothing is cut."""
    SIZE = "the size"
    """A blank is too small for its cut, or a finished part has another size than it needs."""
    FIT = "the fit"
    """Parts share space, or a joint is not filled."""
    ORDER = "the order"
    """Done before what it needs, or after it can be reached no more."""
    WAIT = "the wait"
    """Glue, coat or measurement is not ready."""
    HOURS = "the hours"
    """Moments that do not agree with the minutes or the working day."""
    RESOURCES = "the clamps and the bench"
    """More in use than the shop has, or none that opens so far."""
    DUST = "the dust"
    """Dust is made while a coat is wet."""
    SURFACE = "the surface"
    """Sanded, coated or masked where that must not be, or not where it must be."""
    COUNT = "the count"
    """A copy that is left over, missing, or made twice."""
    SUMS = "the sums"
    """Totals or numbers that do not follow from the steps."""


@dataclass(frozen=True, slots=True)
class Trouble:
    """Why something does not go as planned, and what would have had to hold; not yet where."""

    reason: Reason
    message: str
    needed: str


@dataclass(frozen=True, slots=True)
class Fault:
    """Something that does not work: where, why, and what would have had to hold.

    `step` is the number of the step, None for what is found when all steps are done; `operation`
    the id of the operation, or None.
    """

    reason: Reason
    message: str
    needed: str
    step: int | None = None
    operation: str | None = None
