"""What stays bare in a frame that is coated, or of which members are, is sanded all the same."""

from __future__ import annotations

import pytest
from tests.pieces.reading import model_of
from tests.unit.operations.worked import listed, operation

FRAME = """piece Frame
overall 400 wide, 30 deep, 500 high
timber oak
2 stiles, upright, 60 x 30, at left and right, facing front
1 rail, across, on edge, 60 x 30, up 20, tenon 30 long 10 thick 36 wide into stiles
1 top rail, across, on edge, 60 x 30, down 20, tenon 30 long 10 thick 36 wide into stiles
glue up frame: stiles, rail, top rail
{finish}
"""
ALL = {"left stile", "right stile", "rail", "top rail"}


@pytest.mark.parametrize(
    ("finish", "sanded", "coated"),
    [
        ("no finish on rail\nfinish oil, 2 coats", ALL, {"frame": ALL - {"rail"}}),
        (
            (
                "finish top rail before glue up frame\nno finish on rail\nno finish on stiles\n"
                "finish oil, 2 coats"
            ),
            ALL - {"top rail"},
            {"top rail": {"top rail"}},
        ),
    ],
)
def test_bare_members_are_sanded_and_eased_with_their_frame(
    finish: str, sanded: set[str], coated: dict[str, set[str]]
) -> None:
    work, _ = listed(model_of(FRAME.format(finish=finish)))
    for deed in ("sand 120", "sand 180", "ease edges"):
        (row,) = operation(work, f"frame / {deed}").work
        assert set(row.copies) == sanded
    for subject, copies in coated.items():
        (row,) = operation(work, f"{subject} / coat 1").work
        assert set(row.copies) == copies
