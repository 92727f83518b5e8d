"""What is said of a drawer's play is in the unit of the notes: `gap 1` would be an inch."""

from collections.abc import Iterator
from dataclasses import replace

import pytest
from tests.pieces.reading import checked

from dryfit.checks.drawer_room import check_drawer_room
from dryfit.checks.runners import check_runners
from dryfit.diagnostics import Diagnostic
from dryfit.diagnostics.explain import page
from dryfit.quantities import Display


def told_in_inches(code: str) -> Iterator[Diagnostic]:
    shown = page(code)
    assert shown is not None
    model = checked(shown.example).model
    assert model is not None
    inches = replace(model, display=Display.inches())
    for each in (*check_runners(inches), *check_drawer_room(inches)):
        if each.code == code:
            yield each


@pytest.mark.parametrize(
    ("code", "words", "remedy"),
    [
        # C5.5: 1 mm or 1/32 in beside a drawer; half a millimetre is nearest to 1/64 in.
        ("drawer-without-play", '1/64" to 1/32"', '`gap 1/32" across`'),
        ("runner-groove-close", "of wood is left", '1/4" or more are left'),
        ("drawer-tight-above", '1/16" and what its sides', "make the drawer lower"),
    ],
)
def test_figures_are_inches(code: str, words: str, remedy: str) -> None:
    found = list(told_in_inches(code))
    assert found
    for each in found:
        assert words in each.message
        assert " mm" not in each.message
        assert remedy in each.hints[0].message
