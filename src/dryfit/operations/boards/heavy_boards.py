"""Boards and sheets that one person does not lift to a saw, or onto supports (TRADE A10, F2)."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

from dryfit.operations.boards.board_words import board_name
from dryfit.operations.boards.layout_cuts import LayoutCut
from dryfit.operations.words import in_a_word
from dryfit.placing.hands import hands_needed
from dryfit.plan.operation import Operation
from dryfit.wood.weight import density_of, weight, weight_words

MOISTURE = Fraction(12)
"""Percent of moisture that wood is weighed with where its line tells nothing (common practice)."""


def with_helpers(operation: Operation, cuts: Sequence[LayoutCut], unit: str) -> Operation:
    """Return the cuts of boards with as many people as the heaviest piece in hand takes.

    A long board lies on a stand while it is sawn, so that only its weight counts.  `unit` is the
    maker's, ``mm`` or ``in``.
    """
    heaviest = max(cuts, key=_kilograms)
    kilograms = _kilograms(heaviest)
    people = hands_needed(kilograms, Fraction(0))
    if people <= operation.hands:
        return operation
    why = (
        f"Takes {in_a_word(people)} people: {board_name(heaviest.board)} weighs about "
        f"{weight_words(kilograms, unit)}"
    )
    return replace(operation, hands=people, details=((why,), *operation.details))


def _kilograms(cut: LayoutCut) -> Fraction:
    """Return what the piece in hand weighs; nothing where no table tells of its wood."""
    line = cut.board.line
    dense = None
    if line.timber is not None:
        dense = density_of(line.timber, MOISTURE if line.moisture is None else line.moisture)
    volume = cut.length * cut.width * cut.board.sizes[2]
    return Fraction(0) if dense is None else weight(volume, dense)
