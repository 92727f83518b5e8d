"""Lines of parts may stand in any order: every copy lies in the same place."""

from __future__ import annotations

import pytest
from tests.generator.pieces import random_notes
from tests.pieces.reading import checked, errors

from dryfit.geometry.box import Box


def turned_round(text: str, first: int) -> str:
    """The notes with their lines of parts, which begin with a count, last to first from one on."""
    lines = text.split("\n")
    parts = [at for at, line in enumerate(lines) if line[:1].isdigit()]
    at = first % len(parts)
    order = (parts[at:] + parts[:at])[::-1]
    moved = dict(zip(parts, order, strict=True))
    return "\n".join(lines[moved.get(at, at)] for at in range(len(lines)))


def placed(text: str) -> tuple[list[str], dict[str, Box]]:
    """The codes of the errors and the boxes of all copies but buttons, numbered as they stand."""
    found = checked(text)
    parts = found.model.parts if found.model else ()
    boxes = {copy.name: copy.box for part in parts if not part.made for copy in part.copies}
    return sorted(finding.code for finding in errors(found)), boxes


# Lines inside a pattern have to stay there.
SEEDS = [seed for seed in range(50) if "pattern " not in random_notes(seed)]


@pytest.mark.parametrize("seed", SEEDS)
def test_the_order_of_lines_places_nothing(seed: int) -> None:
    text = random_notes(seed)
    assert placed(turned_round(text, seed)) == placed(text)
