"""Notes with other blanks: what `tidied` must make the same again."""

import random
import re

from dryfit.notes.reading.lines import goes_on

BLANKS = (" ", "  ", "    ", "\t", "\u00a0", " \t ")
FREE_TEXT = re.compile(r"\s*(?:piece|note)\b", re.IGNORECASE)
# Blanks may be lost before these signs, and after those where no digit follows a digit's comma.
LOSABLE = re.compile(r" (?=[,;:)=*])|(?<=[(=]) |(?<=[,;:]) (?=[a-z(])|(?<=\d) (?=x \d)")


def respaced(text: str, random: random.Random) -> str:
    """The notes with blanks added and, where they do not matter, lost; free text stays."""
    lines = []
    continued = False
    for line in text.split("\n"):
        before, sign, remark = line.partition("#")
        if before.strip() and not FREE_TEXT.match(before):
            indent = random.choice(("", "  ", "\t")) if continued or random.random() < 0.2 else ""
            blank = random.choice(("", *BLANKS)) if sign else random.choice(("", " ", "\t "))
            continued = goes_on(before.rstrip())
            before = indent + _respaced(before.strip(), random) + blank
        lines.append(before + sign + remark)
    return "\n".join(lines)


def _respaced(words: str, random: random.Random) -> str:
    words = LOSABLE.sub(lambda blank: random.choice(("", blank.group())), words)
    words = re.sub(r"(?=[,;:](?!\d))", lambda _: random.choice(("", " ")), words)
    return re.sub(" ", lambda _: random.choice((" ", " ", " ", *BLANKS)), words)
