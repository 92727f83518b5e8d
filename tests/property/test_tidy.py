"""Whatever the text, tidying changes blanks and look-alike signs, no meaning, and once only."""

import random
import re
from collections.abc import Iterable, Iterator
from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.pieces.reading import FILES, checked, model_of, text_of
from tests.property.meaning import as_multiset, meaning, said, told, words
from tests.property.strategies_blanks import respaced
from tests.property.strategies_notes import FLAWLESS, anything, damaged, damaged_notes, salad

from dryfit.diagnostics import Source
from dryfit.notes import tidied
from dryfit.notes.limits import beyond_limits
from dryfit.notes.mistakes import is_readable
from dryfit.notes.parse import names_of
from dryfit.notes.reading.lines import fold, sense_lines
from dryfit.placing.model import Model

LANGUAGE = sorted((Path(__file__).parents[1] / "language").glob("*.dryfit"))
TEXTS = {
    **{name: text_of(name) for name in FILES},
    **{path.stem: path.read_text(encoding="utf-8") for path in LANGUAGE},
}
randoms = st.randoms(use_true_random=False)
respaced_notes = st.builds(respaced, st.sampled_from(sorted(TEXTS.values())), randoms)


def tidy(text: str) -> str:
    """The text tidied, after everything that must hold for any text was checked."""
    after = tidied(Source("a.dryfit", text))
    assert tidied(Source("a.dryfit", after)) == after
    old, new = text.split("\n"), after.split("\n")
    assert len(old) == len(new)
    for before, line in zip(old, new, strict=True):
        assert words(before) == words(line)
        assert before.partition("#")[2].rstrip() == line.partition("#")[2].rstrip()
        assert before.count("#") == line.count("#")
    assert said(after) == said(text)
    for number in kept(text):
        assert new[number - 1] == old[number - 1]
    return after


def kept(text: str) -> Iterator[int]:
    """The numbers of the lines that cannot be read without an error or say nothing."""
    source = Source("a.dryfit", text)
    lines = tuple(sense_lines(source))
    names = names_of(lines)
    for line in lines:
        if beyond_limits(line) or not is_readable(line, names):
            yield from (stretch.line for stretch in line.stretches)
    for number, typed in enumerate(source.lines(), start=1):
        if not fold(typed):
            yield number


@given(anything)
def test_any_text_keeps_what_it_says(text: str) -> None:
    tidy(text)


@given(salad)
def test_word_salad_keeps_what_it_says(text: str) -> None:
    tidy(text)


@given(damaged_notes)
def test_damaged_notes_keep_what_they_say(text: str) -> None:
    tidy(text)


@given(respaced_notes, randoms)
def test_damaged_notes_with_other_blanks_keep_what_they_say(
    text: str, random: random.Random
) -> None:
    tidy(damaged(text, random))


@pytest.mark.parametrize("name", TEXTS)
def test_notes_keep_what_they_say(name: str) -> None:
    tidy(TEXTS[name])


@given(st.sampled_from(sorted(FLAWLESS)), randoms)
def test_notes_that_differ_in_blanks_become_the_same(text: str, random: random.Random) -> None:
    assert tidy(respaced(text, random)) == tidy(text)


@cache
def model(name: str) -> Model:
    return model_of(text_of(name))


@pytest.mark.parametrize("name", FILES)
@settings(max_examples=3)
@given(random=randoms)
def test_a_tidied_piece_is_the_same_piece(name: str, random: random.Random) -> None:
    text = respaced(text_of(name), random)
    before, after = checked(text), checked(tidied(Source("a.dryfit", text)))
    assert told(after.findings) == told(before.findings)
    assert after.model is not None
    assert before.model is not None
    assert facts(after.model) == facts(before.model) == facts(model(name))
    assert [joint.id for joint in after.model.joints] == [joint.id for joint in model(name).joints]


# --- the order of lines


def reordered(text: str, random: random.Random) -> str:
    """The statements in another order; continued lines and patterns are not torn."""
    lines = text.split("\n")
    chunks: list[str] = []
    in_pattern = False
    for line in sense_lines(Source("a.dryfit", text)):
        typed = "\n".join(lines[line.line - 1 : line.stretches[-1].line])
        if in_pattern:
            chunks[-1] += f"\n{typed}"
        else:
            chunks.append(typed)
        opens = re.match(r"\s*pattern\b", line.text, re.IGNORECASE) is not None
        closes = re.fullmatch(r"\s*end", line.text, re.IGNORECASE) is not None
        in_pattern = (in_pattern or opens) and not closes
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
    before, after = model(name), model_of(reordered(text_of(name), random))
    assert facts(after) == facts(before)


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
            fitting.name: (fitting.part, sorted(fitting.onto), unnumbered(fitting.joints))
            for fitting in piece.fittings
        },
        "coatings": as_multiset(
            (coating.subject, sorted(coating.copies), coating.area, unnumbered(coating.masks))
            for coating in piece.coatings
        ),
        "bought": as_multiset((*piece.hardware, *piece.stock)),
        "wishes": as_multiset(piece.wishes),
        "rest": meaning((piece.piece, piece.overall, piece.display, piece.finish)),
        "figures": {name: figure.value for name, figure in piece.figures.items()},
    }
