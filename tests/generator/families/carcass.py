"""What a case offers to what stands in it."""

from dataclasses import dataclass
from fractions import Fraction

from tests.generator.page import Page


@dataclass(frozen=True, slots=True)
class Carcass:
    """The sizes that what goes into a case has to keep to, in mm; `groove`: with a back in
    one; `planted`: with a back on it from behind.
    """

    wide: Fraction
    deep: Fraction
    high: Fraction
    board: Fraction
    clear: Fraction
    groove: bool
    planted: bool
    staves: str


def inner(page: Page, made: Carcass) -> Fraction:
    """Return how deep a shelf may be, before a back or without one."""
    return page.rounded(made.deep - (30 if made.groove else 10))
