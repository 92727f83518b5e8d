"""How long notes take to be read and tidied as they get longer, and what the grammar costs.

Run by hand: ``python tests/benchmarks/reading_time.py``.  The notes are made here: every kind of
line of the language, each with names of its own, nothing wrong in them; a line that is refused is
told.  Sizes take turns, so that a busy machine is busy for all.  The figures are processor seconds,
the least of the rounds, and what a line takes as a multiple of what it takes in the longest notes.
"""

from __future__ import annotations

import time
from collections.abc import Callable, Iterator

from dryfit.diagnostics import Severity, Source
from dryfit.notes import parse, tidied
from dryfit.notes.reading.table import GRAMMAR, table, worked_out
from dryfit.resources import root

LINES = (50, 100, 500, 1000, 2500, 5000, 10_000)
ROUNDS = 3
SYLLABLES = [consonant + vowel for consonant in "bdgkmprtvz" for vowel in "aiou"]
HEAD = """piece Many lines
overall 900 wide, 400 deep, 800 high
4 posts, upright, 50 x 50, at corners
2 rails, across, on edge, 100 x 20, tenon 18 into posts
1 board, flat, 22 thick
2 panels, 12 thick
pattern crate with width, depth, height, wall = 12
2 sides, upright, depth x wall, at left and right
end
glue up frame: posts, rails
"""
# Each @ is a name that only this line bears; & is that of the line before it in this list.
KINDS = """
@ = 12.5 mm
let @ be 17 3/4 mm
@ = (posts.width - 2 * &) / 3 + overall width
2 @, across, on edge, 100 x 20, tenon 18 long 8 thick, 5 from bottom, into posts, pegged
1 @, flat, glued from 5, 18 thick, live edge at front, at most 620 long, in sequence
5 @, across, 40 x 18, onto rails, spread front to back, gap 8, no gap at ends
2 @, on the inside of posts, 15 below the top, 30 x 20 x 300
3 @, behind posts, against rails, lapping 20, up 78.7, 262.6 and 446.5
@ = opening between posts and rails
2 @, 20 thick, in &, gap 2, 3 between
1 @, as crate, 600 wide, 300 deep, 160 high, wall 15
bought 4 @, 108 high, 50 dia, under board at corners
2 @, 18 thick, of birch ply, on posts, set in 15 at left and right
groove in panels: outside, 13 wide, 6 deep, 64 from bottom, through
taper in rails: inside faces, from 100 below the top to the bottom end, 40 to 25
holes in panels: inside, 5 dia, 10 deep, rows 37 from front and 37 from back, 12 at 32 from 250
chamfer on board: all top edges, 3 wide
panels into posts: tenon 20, 2 wedges, glue front 75
board onto rails: screws, not glued
rails crossing posts: half lap at corners, rails show, after glue up frame
finish posts and rails with primer 1 coat then milk paint 2 coats, 2 h apart
no finish on underside of board
measured post.thickness = 29.6
done: 3 of post / end lap
posts before rails
board top at most 460, for the child
note a free line about something
""".strip().split("\n")


def notes_of(lines: int) -> str:
    """Return notes of so many lines."""
    made = HEAD.rstrip().split("\n")
    name = ""
    while len(made) < lines:
        kind = KINDS[len(made) % len(KINDS)]
        before, name = name, _name(len(made)) if "@" in kind else name
        made.append(kind.replace("@", name).replace("&", before))
    return "\n".join(made)


def _name(number: int) -> str:
    word = ""
    for _ in range(3):
        number, syllable = divmod(number, len(SYLLABLES))
        word += SYLLABLES[syllable]
    return f"{word}ng {word[2:]}lt"


def main() -> None:
    """Print what the grammar costs, then one row for each size."""
    grammar = (root("grammar") / GRAMMAR).read_text(encoding="utf-8")
    for name, make in (("worked out", lambda: worked_out(grammar)), ("from its file", table)):
        print(f"grammar, {name:14} {_processor_seconds(make):7.3f} s")  # noqa: T201
    texts = [notes_of(lines) for lines in LINES]
    for text in texts:
        for refused in _refused(text):
            print(f"refused: {refused}")  # noqa: T201
    for name, stage in (("parse", parse), ("tidied", tidied)):
        print(f"{name:>8}  lines    seconds   lines/s   a line takes")  # noqa: T201
        for lines, seconds, ratio in _rows(stage, texts):
            row = f"{lines:>15}  {seconds:9.3f}  {lines / seconds:8.0f}  {ratio:10.2f} x"
            print(row)  # noqa: T201


def _rows(
    stage: Callable[[Source], object], texts: list[str]
) -> Iterator[tuple[int, float, float]]:
    """Yield lines, seconds, and the cost of a line against the longest notes."""
    least = [float("inf")] * len(texts)
    for _ in range(ROUNDS):
        for index, text in enumerate(texts):
            source = Source("many.dryfit", text)
            least[index] = min(least[index], _processor_seconds(lambda: stage(source)))  # noqa: B023
    whole = least[-1] / LINES[-1]
    for lines, seconds in zip(LINES, least, strict=True):
        yield lines, seconds, seconds / lines / whole


def _refused(text: str) -> Iterator[str]:
    for finding in parse(Source("many.dryfit", text))[1]:
        if finding.severity is Severity.ERROR and finding.span:
            line = text.split("\n")[finding.span.line - 1]
            yield f"{finding.code}: {finding.message}: {line}"


def _processor_seconds(work: Callable[[], object]) -> float:
    before = time.process_time()
    work()
    return time.process_time() - before


if __name__ == "__main__":
    main()
