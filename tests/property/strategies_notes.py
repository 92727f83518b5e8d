"""Texts for the reader of notes: anything, word salad, and flawless notes with damage."""

import random
from pathlib import Path

from hypothesis import strategies as st

from dryfit.notes.reading.words import SPELLINGS

EXAMPLES = sorted((Path(__file__).parents[2] / "examples").glob("*.dryfit"))
FLAWLESS = tuple(path.read_text(encoding="utf-8") for path in EXAMPLES)
OF_THE_LANGUAGE = sorted((Path(__file__).parents[1] / "language").glob("flawless*.dryfit"))
TO_DAMAGE = (*FLAWLESS, *(path.read_text(encoding="utf-8") for path in OF_THE_LANGUAGE))
WORDS = tuple(
    sorted(
        {word for phrases in SPELLINGS.values() for phrase in phrases for word in phrase.split()}
    )
)
NAMES = (
    "legs",
    "bay",
    "box",
    "long rail",
    "top",
    "seat",
    "overhang",
    "end frame",
    "base",
    "x",
    "xs",
)
NUMBERS = (
    "4",
    "12,5",
    "1,220",
    "17-3/4",
    "3/0",
    "½",
    "22mm",
    "6O",
    "5' 6\"",
    "8 h",
    "9" * 12,
    ".5",
)
SIGNS = tuple(",:;=+-*/×().'\"#@%\\[]{}°½\t\u00a0\u2033\u2019\u2044\u200b\x00\x1b\u2028")

anything = st.text(max_size=200)
BEGINNINGS = (
    "",
    "4 legs,",
    "2 long rail, into legs,",
    "overhang = ",
    "have 2 boards of ash,",
    "overall 4 x 3 x 2",
    "seat onto legs:",
    "groove in legs:",
    "glue up base: legs,",
    "finish oil,",
    "cut legs before",
    "units mm",
    "bay = opening between",
    "1 panel, in bay, gap",
    "2 legs, on the inside of",
    "holes in legs: inside,",
    "legs into seat: tenon 20,",
    "bought 4 knobs,",
    "finish inside of legs with",
    "no finish on",
    "at most 620 high,",
    "seat top between",
    "measured",
    "done:",
    "spoiled:",
    "pattern box with width,",
    "1 base, as box,",
    "box's",
    "end",
)
leaves = st.lists(st.sampled_from((*WORDS, *NAMES, *NUMBERS, *SIGNS)), max_size=10).map(" ".join)
salad = st.lists(st.builds("{} {}".format, st.sampled_from(BEGINNINGS), leaves), max_size=12).map(
    "\n".join
)


def damaged(text: str, random: random.Random) -> str:
    """The text with one to four of its signs, words or lines changed, lost, doubled or swapped."""
    for _ in range(random.randint(1, 4)):
        text = random.choice((_one_sign, _one_word, _one_line))(text, random)
    return text


damaged_notes = st.builds(damaged, st.sampled_from(TO_DAMAGE), st.randoms(use_true_random=False))


def _one_sign(text: str, random: random.Random) -> str:
    at = random.randrange(len(text) + 1)
    new = random.choice((*SIGNS, "a", "x", "9", "\n", ""))
    return text[:at] + new + text[at + random.randint(0, 2) :]


def _one_word(text: str, random: random.Random) -> str:
    lines = text.split("\n")
    at = random.randrange(len(lines))
    words = lines[at].split(" ")
    place = random.randrange(len(words))
    new = random.choice((*WORDS, *NAMES, *NUMBERS, ""))
    words[place : place + random.randint(0, 2)] = [new] * random.randint(0, 2)
    lines[at] = " ".join(words)
    return "\n".join(lines)


def _one_line(text: str, random: random.Random) -> str:
    lines = text.split("\n")
    first, second = random.randrange(len(lines)), random.randrange(len(lines))
    match random.randrange(4):
        case 0:
            lines[first], lines[second] = lines[second], lines[first]
        case 1:
            lines.insert(first, lines[second])
        case 2:
            del lines[first]
        case _:
            lines[first] += random.choice((",", " x", " +", lines[second]))
    return "\n".join(lines)
