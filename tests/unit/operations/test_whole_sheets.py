"""Sheets that have the very size of their parts: nothing is sawn of them (A10)."""

from dataclasses import replace

from tests.property.plan_oracle import faults
from tests.property.plan_oracle.documents import documents, shop_tables
from tests.unit.rehearsal.played import played

from dryfit.rehearsal.fault import Reason

CASE = """piece Ply case
units mm
overall 636 wide, 300 deep, 800 high
timber birch ply
2 sides, upright, 300 x 18, at left and right
3 shelves, across, flat, 612 x 300 x 18, housing 6 into sides, up 40 and 400 and 760
have {shelves} of birch ply, 612 x 300 x 18, measures 18
have {sides} of birch ply, 800 x 300 x 18, measures 18
glue up case: sides, shelves, cure 1 h
finish hard wax oil, 1 coat
"""
WHOLE = CASE.format(shelves="3 sheets", sides="2 sheets")
TWO = CASE.format(shelves="2 sheets", sides="3 sheets")


def deeds(text: str) -> dict[str, list[str]]:
    """The copies that each sizing deed is done to."""
    steps = played(text).plan.steps
    rows = [op for step in steps for op in step.operations if op.kind in {"width", "length", "rip"}]
    return {op.id: [name for work in op.work for name in work.copies] for op in rows}


def test_nothing_is_sawn_of_a_sheet_that_has_its_parts_size() -> None:
    assert deeds(WHOLE) == {}
    case = played(WHOLE)
    assert case.faults() == ()
    # Each blank is the sheet itself, and none is taken to be a little larger.
    assert sorted(board.becomes.name for board in case.plan.boards if board.becomes) == [
        "shelf blank 1",
        "shelf blank 2",
        "shelf blank 3",
        "side blank 1",
        "side blank 2",
    ]


def test_only_what_comes_out_of_a_larger_sheet_is_sawn() -> None:
    found = deeds(TWO)
    assert set(found) == {"shelf / width", "shelf / length"}
    assert all(len(names) == 1 for names in found.values())
    documented, errors = documents(TWO)
    assert documented is not None, errors
    assert faults(*documented, shop_tables(None)) == []


def test_the_judge_measures_the_sheet() -> None:
    # A shelf that no cut makes 612 long cannot come out of a sheet of another size.
    case = played(WHOLE)
    longer = tuple(replace(board, length=board.length + 5) for board in case.plan.boards)
    assert Reason.SIZE in replace(case, plan=replace(case.plan, boards=longer)).reasons()
    wider = tuple(replace(board, width=board.width + 5) for board in case.plan.boards)
    assert Reason.SIZE in replace(case, plan=replace(case.plan, boards=wider)).reasons()
