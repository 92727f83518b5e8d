"""The sentences of the language as examples: what `dryfit help language` prints.

All speak of one piece, `WHOLE`.  A test reads every one of them with the piece, and holds the table
against the grammar: each rule and each word class must occur in an example.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Sentence:
    """A line as a maker would write it, and what it says, in a few words."""

    line: str
    says: str


@dataclass(frozen=True, slots=True)
class Chapter:
    """Sentences of one theme."""

    heading: str
    sentences: tuple[Sentence, ...]


WHOLE = """\
piece Step stool
overall 420 wide, 300 deep, 240 high
timber ash
overhang = 15
4 legs, upright, 40 x 40, at corners, set in overhang
2 long rails, across, 55 x 20, tenon 20 into legs, set back 2
2 short rails, front to back, 55 x 20, tenon 20 into legs, set back 2
1 seat, flat, 22 thick
seat onto legs and long rails: buttons
glue up 2 side frames: 2 legs, 1 short rail, cure 1 h
glue up base: side frames, long rails
finish hard wax oil, 2 coats, 8 h apart
"""

_PIECE = Chapter(
    "The piece",
    (
        Sentence("piece Step stool for the pantry", "the title"),
        Sentence("note keep the old label", "a remark that is printed"),
        Sentence("units mm, to nearest 1", "mm to 1/2 without it"),
        Sentence("units inches to 1/16", "bare numbers are inches"),
        Sentence("units mm, decimal comma", "12,5 is twelve and a half"),
        Sentence("units mm, thickness first", "sizes as 22 x 60 x 900"),
        Sentence("overall 420 wide, 300 deep, 240 high", "the outside of the finished piece"),
        Sentence("timber ash", "of what it is made"),
        Sentence("have 2 boards of ash, 1800 x 160 x 32, rough, cup 4", "wood on hand"),
    ),
)
_SUMS = Chapter(
    "Values, sums, openings",
    (
        Sentence("reveal = 2", "a value for sums"),
        Sentence("let reveal be 2 1/2", "the same in words"),
        Sentence("rise = overall height - 2 * overhang", "+ - * / and brackets"),
        Sentence("rise = (leg.width + width of leg) / 2", "a size of a part, both ways"),
        Sentence("rise = half the height + (-3)", "bare width, depth, height: the piece's"),
        Sentence(
            "bay = opening between legs and long rails and seat", "a space: bay.width, bay.depth"
        ),
        Sentence("shelf gap = leg's width + 1' 6 1/2\"", "numbers may carry their unit"),
    ),
)
_PARTS = Chapter(
    "Parts: a count and a name, then phrases in any order",
    (
        Sentence("4 posts, upright, 40 x 40, at corners, set in overhang", "width x thickness"),
        Sentence("four x posts, upright, 218 x 40 x 40", "length x width x thickness"),
        Sentence("2 off slats, across, 30 wide, thickness = 12", "a size by its name"),
        Sentence("2 slats, across, thickness 12, of cherry", "of another wood"),
        Sentence(
            "1 shelf, flat, 18 thick, between legs, up 80", "80 from the floor to its underside"
        ),
        Sentence("2 slats, front to back, on edge, at left and right", "where they are"),
        Sentence("1 slat, across, down 20, 120 from left", "from the outside of the piece"),
        Sentence(
            "4 posts, upright, at corners, set in 30 across, 10 front to back", "by direction"
        ),
        Sentence(
            "1 slat, across, set back 6, flush with top of legs", "from the face of what it joins"
        ),
        Sentence(
            "5 slats, across, 40 x 18, spread front to back, gap 8", "equal gaps, or that one"
        ),
        Sentence("5 slats, across, 40 x 18, spread front to back, no gap at ends", "or half a gap"),
        Sentence("5 slats, across, 40 x 18, 12 between them", "the same gap in other words"),
        Sentence("1 lid, flat, 20 thick, onto legs, lapping 10", "past what it lies on"),
        Sentence("2 brackets, upright, 60 x 20, handed", "a left and a right one"),
        Sentence("1 lid, flat, 20 thick, glued from 4 staves", "a panel of boards"),
        Sentence("1 lid, flat, 20 thick, cut after glue up base", "waits for a measurement"),
    ),
)
_JOINTS = Chapter(
    "Joints: on the part's line, or on a line of their own",
    (
        Sentence("2 rails, across, 55 x 20, tenon 20 long 6 thick into legs", "on the part's line"),
        Sentence(
            "short rails into front legs: tenon 20 long 6 thick 40 wide, 5 from bottom", "which"
        ),
        Sentence("long rail ends into legs: tenon 20", "long"),
        Sentence("legs crossing short rails: half lap", "at the crossing"),
        Sentence("1 shelf, flat, 18 thick, between short rails, housing 6", "let in 6"),
        Sentence(
            "1 back, upright, facing front, 8 thick, inside legs and long rails, groove 6",
            "a panel",
        ),
        Sentence("seat onto long rails: 6 buttons", "or screws, or nothing"),
        Sentence("long rails under seat: glued", "glued"),
        Sentence(
            "groove in long rails: inside, 6 wide, 9 deep, 12 from top, through",
            "a cut with no mate",
        ),
        Sentence("groove in long rails: bottom, 6 wide, 9 deep, after glue up base", "made later"),
    ),
)
_WORK = Chapter(
    "Glue, finish, order",
    (
        Sentence("glue up 2 side frames: 2 legs, 1 short rail, cure 1 h", "what is glued together"),
        Sentence("finish oil varnish, 2 coats, 24 h apart", "what it is given"),
        Sentence("finish shellac, 3 coats, apart 2 h", "the same"),
        Sentence("finish seat before glue up base", "a wish for the order"),
        Sentence(
            "sand legs and long rails after cutting seat", "deeds: cut, sand, finish, glue up"
        ),
    ),
)

CHAPTERS: tuple[Chapter, ...] = (_PIECE, _SUMS, _PARTS, _JOINTS, _WORK)
