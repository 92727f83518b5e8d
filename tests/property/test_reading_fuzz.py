"""Whatever stands in the notes, all that `dryfit check` and `dryfit tidy` do comes to an end.

The long runs are those of `tests/fuzz`; this is their share in every run of the tests.
"""

import random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.property.strategies_notes import (
    FLAWLESS,
    TO_DAMAGE,
    anything,
    damaged,
    damaged_notes,
    leaves,
    salad,
)

from dryfit import workshop
from dryfit.diagnostics import Diagnostic, Severity, Source
from dryfit.diagnostics.render import full
from dryfit.notes import source_of, tidied
from dryfit.patterns import shipped

EXAMPLES = 300
OF_A_PIECE = "piece A\noverall 900 wide, 400 deep, 800 high\ntimber oak\n"
LEGS = "4 legs, upright, 40 x 40, at corners\n2 rails, across, 60 x 20, tenon 20 into legs\n"
OF_A_PATTERN = (
    "4 legs, upright, leg x leg, at corners",
    "2 rails, across, on edge, leg x 20, tenon 20 into legs",
    "1 top, flat, 20 thick, onto legs",
    "1 inner, as {}, 90 wide, 90 deep, 90 high",
    "leg = 40",
    "overall 1 wide",
    "glue up frame: legs, rails",
    "groove in rails: inside, 6 wide, 6 deep, 9 from top, through",
)
NAMES = ("base", "box", "box", "apron base", "legs", "no such", "")
PARAMETERS = ("width", "depth", "height", "leg = 45", "leg = 45, 30 to 90", "leg", "leg 9 to 3", "")
OPENINGS = (
    "bay = opening between legs",
    "bay = opening between legs and rails",
    "bay = opening between bay",
    "bay = opening between",
    "gap = bay.width - 4",
)
IN_OPENINGS = (
    "1 door, 18 thick, in bay, gap 2",
    "3 drawers, in bay, spread up and down, gap 3 all round",
    "1 shelf, flat, bay.width - {} x 200 x 20, in bay",
    "1 panel, 6 thick, into bay, groove 6",
    "bay at least {} wide, the crates",
    "measured bay width = {}, {}",
)
CUTS = (
    "groove",
    "rebate",
    "hole",
    "9 holes",
    "taper",
    "chamfer",
    "round-over",
    "profile",
    "arch",
    "notch",
    "slot",
    "bevel",
    "keys",
)
SUBJECTS = ("legs", "rails", "front legs", "frame", "base's legs", "legs and rails", "nothing")
ABOUT_A_CUT = (
    "inside",
    "top edge",
    "all edges",
    "bottom end",
    "{} wide",
    "{} deep",
    "{} dia",
    "radius {}",
    "{} to {}",
    "rows {} from front and {} from back",
    "{} at {} from {}",
    "from {} below the top to the bottom end",
    "from {} beyond legs to the ends",
    "stopped {} from left",
    "through",
    "{} degrees",
    "ogee",
    "centred",
    "after glue up frame",
)
AT_THE_BENCH = (
    "done: leg / rip, rail / thickness",
    "done: {} of legs / end tenon, on 2026-12-05",
    "done: frame / glue up",
    "measured leg.thickness = {}",
    "measured gap at the wall = {}",
    "measured leg length = {}, {} and {}",
    "spoiled: {} legs",
    "spoiled 1 rail and 1 leg",
    "glue up frame: legs, rails",
    "glue up {} frames: 2 legs, 1 rail",
    "finish inside of frame with oil, {} coats",
    "legs before rails",
    "rails before legs",
)
numbers = st.sampled_from(
    ("0", "1", "2", "20", "1/2", "12,5", "-3", "999", "999999999", "?", "1 h")
)
randoms = st.randoms(use_true_random=False)


def with_numbers(line: str, figures: list[str]) -> str:
    """The line with a figure in each of its gaps."""
    return line.format(*figures)


figures = st.lists(numbers, min_size=3, max_size=3)
pattern_lines = st.lists(
    st.builds(str.format, st.sampled_from(OF_A_PATTERN), st.sampled_from(NAMES)), max_size=5
)
patterns = st.builds(
    "pattern {} with {}\n{}\n{}".format,
    st.sampled_from(NAMES),
    st.lists(st.sampled_from(PARAMETERS), max_size=5).map(", ".join),
    pattern_lines.map("\n".join),
    st.sampled_from(("end", "end", "end pattern", "")),
)
uses = st.builds(
    "{} things, as {}, {} wide, 200 deep, 200 high, leg {}".format,
    numbers,
    st.sampled_from(NAMES),
    numbers,
    numbers,
)
openings = st.builds(with_numbers, st.sampled_from((*OPENINGS, *IN_OPENINGS)), figures)
cuts = st.builds(
    "{} in {}: {}".format,
    st.sampled_from(CUTS),
    st.sampled_from(SUBJECTS),
    st.lists(st.builds(with_numbers, st.sampled_from(ABOUT_A_CUT), figures), max_size=5).map(
        ", ".join
    ),
)
at_the_bench = st.builds(with_numbers, st.sampled_from(AT_THE_BENCH), figures)
lines_of_all_kinds = st.lists(st.one_of(patterns, uses, openings, cuts, at_the_bench), max_size=2)
of_a_piece = st.builds(
    "{}{}{}".format,
    st.sampled_from((OF_A_PIECE, OF_A_PIECE + "units inches\n")),
    st.sampled_from((LEGS, LEGS + "1 shelf, flat, 18 thick, between legs, up 200\n")),
    lines_of_all_kinds.map("\n".join),
)


def through_everything(text: str) -> None:
    """Check and tidy the text; nothing is raised, and errors alone keep it from being planned."""
    source = source_of("a.dryfit", text.encode("utf-8", "surrogatepass"))
    if isinstance(source, Diagnostic):
        assert source.severity is Severity.ERROR
        return
    checked = workshop.check(source, None, {})
    errors = any(finding.severity is Severity.ERROR for finding in checked.findings)
    assert errors or checked.model is not None
    assert checked.failed == errors
    full(checked.findings)
    after = tidied(source, shipped())
    assert tidied(Source("a.dryfit", after), shipped()) == after


@settings(max_examples=EXAMPLES)
@given(anything)
def test_any_text_is_checked_to_an_end(text: str) -> None:
    through_everything(text)


@settings(max_examples=EXAMPLES)
@given(salad)
def test_word_salad_is_checked_to_an_end(text: str) -> None:
    through_everything(text)


@settings(max_examples=EXAMPLES)
@given(damaged_notes)
def test_damaged_notes_are_checked_to_an_end(text: str) -> None:
    through_everything(text)


@settings(max_examples=EXAMPLES)
@given(st.sampled_from(FLAWLESS), st.sampled_from(TO_DAMAGE), randoms)
def test_lines_of_other_notes_mixed_in_are_checked_to_an_end(
    text: str, other: str, generator: random.Random
) -> None:
    lines = text.split("\n")
    for _ in range(4):
        strange = generator.choice(other.split("\n"))
        lines.insert(generator.randrange(len(lines) + 1), strange)
    through_everything("\n".join(lines))


@settings(max_examples=EXAMPLES)
@given(of_a_piece)
def test_lines_of_all_kinds_are_checked_to_an_end(text: str) -> None:
    through_everything(text)


@settings(max_examples=EXAMPLES)
@given(of_a_piece, randoms)
def test_damaged_lines_of_all_kinds_are_checked_to_an_end(
    text: str, generator: random.Random
) -> None:
    through_everything(damaged(text, generator))


@settings(max_examples=EXAMPLES)
@given(st.sampled_from(CUTS), leaves)
def test_any_words_about_a_cut_are_checked_to_an_end(cut: str, words: str) -> None:
    through_everything(f"{OF_A_PIECE}{LEGS}{cut} in legs: {words}")


@pytest.mark.parametrize("text", ["4 ½ ½\n", "piece Box\n2.5 ¾ ½, 40 x 20\n"])
def test_texts_that_the_fuzzer_stopped_at_are_checked_to_an_end(text: str) -> None:
    through_everything(text)
