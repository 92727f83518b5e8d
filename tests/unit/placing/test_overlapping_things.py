"""Two things made by patterns that stand in each other are told of once, as the things."""

from __future__ import annotations

import pytest
from tests.pieces.reading import changed, checked, errors, text_of

CHEST = text_of("tray_chest")
HEIGHTS = "up 60, 170, 280"
ROW = f"3 trays, as tray, in bay, gap 2 across, 280 deep, 80 high, 0 from front, {HEIGHTS}"


def own_lines(low: int, high: int) -> tuple[str, str]:
    """A line for each of two trays, at these heights."""
    line = ROW.replace("3 trays", "1 {} tray").replace(HEIGHTS, "up {}")
    return line.format("low", low), line.format("high", high)


def test_copies_in_one_place_are_told_once_with_a_list_to_write() -> None:
    (found,) = errors(checked(changed(CHEST, (HEIGHTS, "up 60, 60, 280"))))
    assert found.code == "copies-in-one-place"
    # They are 80 high.
    assert found.message == "tray 1 and tray 2 are in one place, in height from 60 to 140"
    assert "a list such as" in found.hints[0].message
    assert found.span is not None
    assert found.span.text().startswith("3 trays")


@pytest.mark.parametrize(
    ("high", "code", "message"),
    [
        (60, "copies-in-one-place", "are in one place, in height from 60 to 140"),
        (100, "overlap", "take up the same space: in height from 60 to 140 and from 100 to 180"),
    ],
)
def test_things_of_two_lines_are_told_with_both_lines(high: int, code: str, message: str) -> None:
    lines = own_lines(60, high)
    text = changed(CHEST, (ROW, "\n".join(lines)))
    (found,) = (each for each in errors(checked(text)) if "low" in each.message)
    assert (found.code, found.message) == (code, f"low tray and high tray {message}")
    spans = (found.span, found.notes[-1].span)
    assert [span and span.text() for span in spans] == list(lines)
