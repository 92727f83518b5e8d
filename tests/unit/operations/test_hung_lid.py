"""A lid with battens: they are screwed to it, it is hung, and its stay goes on last (B17, B23)."""

from fractions import Fraction
from functools import cache

from tests.pieces.reading import model_of
from tests.unit.operations.worked import listed, operation

from dryfit.plan.operation import Operation, WorkList

CHEST = """piece Little chest
units mm
wood pine
overall 400 wide, 300 deep, 220 high
2 sides, across, on edge, 200 x 18, at front and back, box joint 40 into ends
2 ends, front to back, on edge, 200 x 18, at left and right
1 lid, flat, 20 thick, onto sides and ends, from 3 staves
lid to back side: 2 hinges
2 battens, front to back, flat, 40 x 18, 200 long, at left and right, set in 80 across,
    under lid, slotted screws
bought 1 lid stay, for lid
glue up box: sides, ends
"""


@cache
def chest() -> WorkList:
    return listed(model_of(CHEST))[0]


def waits(work: WorkList, later: Operation) -> set[str]:
    return {rule.before for rule in work.rules if rule.after == later.id}


def test_the_lid_is_hung_by_its_hinges_although_battens_are_screwed_to_it() -> None:
    lid = operation(chest(), "lid / fit")
    assert lid.sentence.startswith("Hang the lid: screw the 2 hinges into their recesses")
    assert lid.work[0].copies == ("lid",)
    assert not any("slot" in str(word) for row in lid.details for word in row)


def test_the_battens_go_on_the_lid_before_and_stand_where_the_line_says() -> None:
    battens = operation(chest(), "batten / fit")
    assert battens.sentence.startswith("Turn the lid face down")
    assert "2 battens" in battens.sentence
    assert "no glue" in battens.sentence
    # Worked by hand: 80 from the left; (300 - 200) / 2 from the front; 400 - 80 - 40 = 280.
    figures = [[w for w in row if isinstance(w, Fraction)] for row in battens.details[:2]]
    assert figures == [[80, 50], [280, 50]]
    assert "batten / fit" in waits(chest(), operation(chest(), "lid / fit"))


def test_the_stay_waits_for_the_lid_that_hangs() -> None:
    assert "lid / fit" in waits(chest(), operation(chest(), "lid stay / fit"))
