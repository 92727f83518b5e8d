"""Measured by hand: `pytest -m benchmark -s tests/benchmarks/test_drawing_time.py`.

How long the views take beside how long the piece takes to place; processor time.  The aim is a
second for the view of the largest example taken apart and three for a piece of 300 members.
"""

import time
from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction

import pytest
from tests.pieces.reading import FILES, checked, text_of
from tests.unit.booklet.drawn_bench import bench

from dryfit.booklet.drawing import piece_drawing
from dryfit.booklet.drawing.exploded import exploded_drawing
from dryfit.booklet.labels import label
from dryfit.geometry.box import Box
from dryfit.placing.model import Model

MEMBERS = 300
ROW = 15


def many() -> Model:
    """A stack of crossing slats, 15 in a layer: 300 members of two kinds."""
    model = bench()
    slat = model.part("slat")
    kinds = []
    for kind in range(2):
        copies = []
        for number in range(MEMBERS // 2):
            layer, at = divmod(number, ROW)
            low, high = Fraction(at * 50), Fraction(at * 50 + 30)
            z = Fraction(40 * (2 * layer + kind))
            along, across = (Fraction(0), Fraction(750)), (low, high)
            x, y = (along, across) if kind else (across, along)
            box = Box((x[0], y[0], z), (x[1], y[1], z + 40))
            copies.append(replace(slat.copies[0], name=f"{kind} slat {number}", box=box))
        kinds.append(replace(slat, name=f"slat {kind}", copies=tuple(copies)))
    side = Fraction(750)
    return replace(
        model, parts=tuple(kinds), joints=(), assemblies=(), overall=(side, side, Fraction(800))
    )


def seconds(work: Callable[[], object]) -> float:
    begun = time.process_time()
    work()
    return time.process_time() - begun


@pytest.mark.benchmark
def test_views_beside_placing() -> None:
    print(f"\n{'piece':18} copies  placed s   view s  apart s  apart/placed")  # noqa: T201
    rows = [(name, text_of(name)) for name in sorted(FILES)]
    for name, text in rows:
        placed = seconds(lambda text=text: checked(text))  # type: ignore[misc]
        model = checked(text).model
        assert model is not None
        _row(name, model, placed)
    _row(f"{MEMBERS} members", many(), None)


def _row(name: str, model: Model, placed: float | None) -> None:
    labels = label(model)
    view = seconds(lambda: piece_drawing(model, labels.parts))
    apart = seconds(lambda: exploded_drawing(model, labels.copies, labels.parts))
    count = sum(len(part.copies) for part in model.parts)
    beside = "" if placed is None else f"{apart / placed:8.2f}"
    shown = "" if placed is None else f"{placed:8.3f}"
    print(f"{name:18} {count:6} {shown:>9} {view:8.3f} {apart:8.3f} {beside}")  # noqa: T201
