"""The steps at holes that are slotted so that a broad part can move (B17, B18)."""

from __future__ import annotations

from tests.pieces.reading import model_of_piece
from tests.unit.operations.worked import listed, said, shipped_shop


def details(piece: str) -> list[tuple[str, str]]:
    """What each operation of a piece says beside its settings."""
    work, _ = listed(model_of_piece(piece), shipped_shop())
    return [(each.id, said(detail)) for each in work.operations for detail in each.details]


def test_the_holes_away_from_the_fixed_row_are_slotted_where_they_are_drilled() -> None:
    slotted = [(name, row) for name, row in details("trestle") if "slot each across" in row]
    assert [name for name, _ in slotted] == ["seat / screw holes / 1", "seat / screw holes / 3"]
    assert not any("on F 2" in row or "on F 5" in row for _, row in slotted)
    assert all("across the grain of the seat to 10 mm long" in row for _, row in slotted)


def test_screws_in_slots_are_not_pulled_tight_where_the_part_is_fitted() -> None:
    (row,) = (row for name, row in details("trestle") if name == "seat / fit" and "move" in row)
    assert "it does so by 1.6" in row


def test_steps_at_slats_say_nothing_of_slots() -> None:
    assert not any("slot each" in row or "in slots" in row for _, row in details("slat_bench"))
