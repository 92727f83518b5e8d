"""Lips in the booklet: the core that is sawn, the strips, and what is hatched on a part's sheet."""

import re
from functools import cache
from pathlib import Path

from tests.pieces.planning import planned
from tests.pieces.reading import text_of

from dryfit.booklet.html import render

BY_HAND = Path(__file__).parents[2] / "shops" / "hand_tools.toml"


@cache
def _words(shop: Path | None) -> str:
    """The booklet of the lipped case without its tags."""
    checked, plan, findings = planned(text_of("lipped_case"), shop)
    assert checked.model is not None
    assert checked.shop is not None
    assert plan is not None
    html = render(checked.model, plan, checked.shop, findings)
    return re.sub(r"\s+", " ", re.sub(r"<[^>]+>", "", html))


def test_by_hand_the_core_is_sawn_and_not_the_finished_width() -> None:
    # The sides are 300 wide with a lip of 8 (TRADE A10: core width = W - n x t).
    said = _words(BY_HAND)
    assert "To width 292 mm." in said
    assert "To width 300 mm." in said  # The core of the top: 324 less two lips of 12.
    assert "To width 324 mm." not in said
    assert "To thickness 8 mm." in said


def test_the_booklet_tells_core_strips_and_what_is_hatched() -> None:
    said = _words(None)
    assert "Core for the saw 420 × 292, lipped at E with a strip 8 thick of birch" in said
    assert "The core is 292 mm wide; with the lip at E it is 300 mm" in said
    assert "Lips glued on: top" in said
    assert "Hatched: the strip, proud of both faces." in said
    assert "Lips, hatched: E 12, E2 12, R 12, R2 12" in said
    assert "trim flush 12 h" in said
