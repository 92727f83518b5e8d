"""H43 never tells of a shortage where the parts do come out of the boards, however they lie."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from functools import cache
from random import Random

from hypothesis import given, settings
from hypothesis import strategies as st
from tests.pieces.reading import model_of
from tests.unit.operations.worked import shipped_shop

from dryfit.checks.wood_short import check_wood_short
from dryfit.piece.declared import Have
from dryfit.placing.model import Model, Part

KERF = Fraction(13, 10)
"""The band saw's, the thinnest of the shipped shop."""
ROOM = {"rough_length": 0, "rough_width_band_saw": 0, "facing": 0, "hand_margin": 0}
BOARD = """piece Board
overall 600 wide, 100 deep, 20 high
timber ash
have 1 board of ash, 2000 x 200 x 40, rough
1 board, across, flat, 20 thick
"""


@cache
def board() -> Model:
    return model_of(BOARD)


def sawn(chance: Random, long: Fraction, wide: Fraction) -> Iterator[tuple[Fraction, Fraction]]:
    """Faces that a board is sawn into without waste, by cuts across and along that each lose."""
    if chance.random() < 0.2 or min(long, wide) < 60:
        yield long, wide
        return
    along = wide > long or (wide > 80 and chance.random() < 0.5)
    size = wide if along else long
    cut = Fraction(chance.randint(20, int(size) - 30))
    for part in (cut, size - cut - KERF):
        yield from sawn(chance, *((long, part) if along else (part, wide)))


def parts_of(chance: Random, base: Part, lines: tuple[Have, ...]) -> Iterator[Part]:
    """Parts that fill the boards wholly, in as many layers as were drawn, some on their edge."""
    for line in lines:
        long, wide, deep = (size for size in line.sizes if size is not None)
        for _ in range(line.count):
            layers = chance.randint(1, 2)
            thick = (deep - KERF * (layers - 1)) / layers
            for _ in range(layers):
                for length, width in sawn(chance, long, wide):
                    size = (width, thick) if chance.random() < 0.7 else (thick, width)
                    yield replace(base, length=length, width=size[0], thickness=size[1])


def short(model: Model, parts: list[Part], lines: tuple[Have, ...]) -> bool:
    shop = shipped_shop()
    bare = replace(
        shop, allowances={**shop.allowances, **{k: Fraction(v) for k, v in ROOM.items()}}
    )
    named = tuple(replace(part, name=f"part {number}") for number, part in enumerate(parts))
    return bool(tuple(check_wood_short(replace(model, parts=named, stock=lines), bare)))


@given(chance=st.randoms(use_true_random=False))
@settings(max_examples=60, deadline=None)
def test_parts_sawn_out_of_boards_are_never_said_to_be_too_many(chance: Random) -> None:
    model = board()
    (line,), (base,) = model.stock, model.parts
    lines = tuple(
        replace(
            line,
            count=chance.randint(1, 2),
            sizes=(
                Fraction(chance.randint(500, 2400)),
                Fraction(chance.randint(90, 260)),
                Fraction(chance.randint(18, 60)),
            ),
        )
        for _ in range(chance.randint(1, 3))
    )
    parts = list(parts_of(chance, base, lines))
    assert not short(model, parts, lines)


def test_one_part_more_is_said_to_be_too_many() -> None:
    model = board()
    (base,) = model.parts
    parts = [replace(base, length=Fraction(1900), width=Fraction(95)) for _ in range(5)]
    # Two side by side in a board 200 wide, in two layers of 20 less a kerf: only one of 20.
    assert short(model, parts, model.stock)
    assert not short(model, parts[:2], model.stock)
