"""Neither the blanks of the notes nor the order of their lines decide anything about the piece."""

import random
from collections.abc import Iterable
from dataclasses import fields, replace
from functools import cache

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.pieces.reading import FILES, checked, model_of, model_of_piece, text_of
from tests.property.meaning import as_multiset, meaning, statements, told
from tests.property.strategies_blanks import respaced

from dryfit.diagnostics import Source
from dryfit.notes import tidied
from dryfit.patterns import library
from dryfit.placing.model import Model

randoms = st.randoms(use_true_random=False)
# What `facts` looks at more closely, and the sentences on what was taken for granted.
OF_THEIR_OWN = {
    "parts",
    "joints",
    "assemblies",
    "fittings",
    "coatings",
    "hardware",
    "figures",
    "assumptions",
}
SHIPPED, _ = library({})


@cache
def model(name: str) -> Model:
    return model_of_piece(name)


@pytest.mark.parametrize("name", FILES)
@settings(max_examples=3)
@given(random=randoms)
def test_a_tidied_piece_is_the_same_piece(name: str, random: random.Random) -> None:
    text = respaced(text_of(name), random)
    before, after = checked(text), checked(tidied(Source("a.dryfit", text), SHIPPED))
    assert told(after.findings) == told(before.findings)
    assert after.model is not None
    assert before.model is not None
    assert facts(after.model) == facts(before.model) == facts_of(name)
    assert [joint.id for joint in after.model.joints] == [joint.id for joint in model(name).joints]


def reordered(text: str, random: random.Random) -> str:
    """The statements in another order."""
    chunks = statements(text)
    random.shuffle(chunks)
    return "\n".join(chunks)


@pytest.mark.parametrize("name", FILES)
@settings(max_examples=4)
@given(random=randoms)
def test_the_order_of_lines_decides_nothing_but_numbers_and_order(
    name: str, random: random.Random
) -> None:
    """The lists of the Model follow the lines, joints are numbered in that order, and of several
    parts that one assumption makes level the sentence may name others; nothing else changes.
    """
    assert facts(model_of(reordered(text_of(name), random))) == facts_of(name)


@cache
def facts_of(name: str) -> dict[str, object]:
    """The same of a piece as it is written."""
    return facts(model(name))


def facts(piece: Model) -> dict[str, object]:
    """Everything in a Model that must not hang on the order of lines."""
    joints = {joint.id: meaning(replace(joint, id="")) for joint in piece.joints}

    def unnumbered(ids: Iterable[str]) -> list[str]:
        return sorted(repr(joints[number]) for number in ids)

    return {
        "copies": {copy.name: meaning(copy) for part in piece.parts for copy in part.copies},
        "parts": {
            part.name: meaning(replace(part, copies=(), features=())) for part in piece.parts
        },
        "features": {
            part.name: as_multiset(replace(feature, joint=None) for feature in part.features)
            for part in piece.parts
        },
        "joints": unnumbered(joints),
        "glue-ups": {
            assembly.name: (
                meaning(replace(assembly, of=(), joints=())),
                sorted(assembly.of),
                unnumbered(assembly.joints),
            )
            for assembly in piece.assemblies
        },
        "fittings": {
            (fitting.name, fitting.kind): (
                meaning(replace(fitting, onto=(), joints=())),
                sorted(fitting.onto),
                unnumbered(fitting.joints),
            )
            for fitting in piece.fittings
        },
        "coatings": as_multiset(
            (
                replace(coating, copies=(), masks=(), spared=()),
                sorted(coating.copies),
                sorted(coating.spared),
                unnumbered(coating.masks),
            )
            for coating in piece.coatings
        ),
        "hardware": as_multiset(
            replace(row, purpose=", ".join(sorted(row.purpose.split(", "))))
            for row in piece.hardware
        ),
        "figures": {name: figure.value for name, figure in piece.figures.items()},
        **{
            field.name: as_multiset(value) if isinstance(value, tuple) else meaning(value)
            for field in fields(piece)
            if field.name not in OF_THEIR_OWN
            for value in [getattr(piece, field.name)]
        },
    }
