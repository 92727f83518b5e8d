"""The sentences of the language as examples: what `dryfit help language` prints.

All speak of one piece, `WHOLE`, but for those of `PATTERNS`, which are a text of their own behind
it.  Tests read every one of them, and hold the table against the grammar: each rule and each word
class must occur in an example.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Sentence:
    """A line as a maker would write it, and what it says in a few words, or nothing."""

    line: str
    says: str


@dataclass(frozen=True, slots=True)
class Chapter:
    """Sentences of one theme."""

    heading: str
    sentences: tuple[Sentence, ...]


WHOLE = Chapter(
    "A whole piece",
    (
        Sentence("piece Step stool", "the title"),
        Sentence("overall 420 wide, 300 deep, 240 high", "the outside of the finished piece"),
        Sentence("timber ash", "of what it is made"),
        Sentence("overhang = 15", "a value for sums"),
        Sentence("4 legs, upright, 40 x 40, at corners, set in overhang", "width x thickness"),
        Sentence("2 long rails, across, 55 x 20, tenon 20 into legs, set back 2", ""),
        Sentence("2 short rails, front to back, 55 x 20, tenon 20 into legs, set back 2", ""),
        Sentence("1 seat, flat, 22 thick", ""),
        Sentence("seat onto legs and long rails: buttons", "a joint on a line of its own"),
        Sentence("glue up 2 side frames: 2 legs, 1 short rail, cure 1 h", "time in clamps"),
        Sentence("glue up base: side frames, long rails", ""),
        Sentence("finish hard wax oil, 2 coats, 8 h apart", "all not named otherwise"),
    ),
)
_PIECE = Chapter(
    "The piece",
    (
        Sentence("note keep the old label", "a remark that is printed"),
        Sentence("units mm, to nearest 1", "mm to 1/2 without it"),
        Sentence("units inches to 1/16", "bare numbers are inches"),
        Sentence("units mm, decimal comma", "12,5 is twelve and a half"),
        Sentence("units mm, thickness first", "sizes as 22 x 60 x 900"),
        Sentence("wood at 9 %", "what it holds now, or by"),
        Sentence("shop at 18 C, 60 % humidity", "the air that it lay in"),
        Sentence("stands at 40 to 65 % humidity", "or in a damp place, outdoors"),
    ),
)
_STOCK = Chapter(
    "Wood on hand, and what the yard sells",
    (
        Sentence(
            "have 2 boards of ash, 1800 x 160 x 32, rough, cup 4, at 12 %", "bow, twist; planed"
        ),
        Sentence("have (in) 3 boards of ash, 96 x 6 x 1, hit-and-miss", "a line in inches"),
        Sentence(
            "have 1 board of ash, 900 x 95 x 27, knot 300 to 380", "from the left end; split, avoid"
        ),
        Sentence(
            "have 1 offcut of ash, 900 x 95 x 27, avoid 0 to 90, 15 from far edge",
            "`edge`: near you",
        ),
        Sentence(
            "have 1 slab of elm, 1200 x 480 to 560 x 52, waney both edges", "width at both ends"
        ),
        Sentence("have 2 sheets of birch ply, 1220 x 610 x 6, measures 5.6", "with a grain"),
        Sentence("have 1 sheet of birch ply, 610 x 610 x 9, no grain", "any way round"),
        Sentence("buy boards of ash, 2400 x 180 x 27, 48.00 each, 3 available", "at most 3"),
        Sentence("buy strips of ash, 2400 x 30 x 12, at £3.20 a metre", "m2, board foot"),
        Sentence('stock from "offcuts.dryfit"', "a file of such lines"),
    ),
)
_SUMS = Chapter(
    "Values, sums, openings",
    (
        Sentence("rise = overall height - 2 * overhang", "+ - * / and brackets"),
        Sentence("rise = (leg.width + width of leg) / 2", "a size of a part, both ways"),
        Sentence("rise = half the height + (-3)", "a bare height is the piece's"),
        Sentence("let bay be opening between legs and long rails and seat", "bay.width, bay.depth"),
        Sentence("shelf gap = leg's width + 1' 6 1/2\"", "numbers may carry their unit"),
    ),
)
_PARTS = Chapter(
    "Parts: a count and a name, then phrases in any order",
    (
        Sentence("four x posts, upright, 218 x 40 x 40", "length x width x thickness"),
        Sentence(
            "2 off slats, across, 30 wide, thickness = 12, of cherry", "or a size by its name"
        ),
        Sentence("1 shelf, flat, 18 thick, between legs, 80 above the floor, carries books", ""),
        Sentence("2 slats, front to back, on edge, at left and right", "at two places"),
        Sentence("3 shelves, flat, 12 thick, in bay, up 40, 90 and 140", "three heights"),
        Sentence(
            "1 shelf, 18 thick, of MDF, lipped 6 of ash at front, carries 30 kg a metre",
            "",
        ),
        Sentence(
            "2 ledgers, across, 20 x 20, on the inside of long rails, 15 below the top",
            "or on the back of, behind, against",
        ),
        Sentence("1 door, 18 thick, in bay, gap 2", "in an opening, with 2 all round"),
        Sentence("1 slat, across, down 20, 120 from left", "from the outside of the piece"),
        Sentence(
            "4 posts, upright, at corners, set in 30 across, 10 front to back",
            "by direction",
        ),
        Sentence(
            "1 slat, across, set back 6, flush with top of legs",
            "back from the face of what it joins; level with",
        ),
        Sentence(
            "5 slats, across, 40 x 18, spread front to back, 8 between",
            "equal gaps, or those that are written",
        ),
        Sentence(
            "5 slats, across, 40 x 18, spread front to back, no gap at ends",
            "or half a gap, or the same",
        ),
        Sentence("5 slats, tongue and groove, the last ripped to fit", "or outer ripped alike"),
        Sentence(
            "1 lid, flat, 20 thick, onto legs, lapping 10",
            "bears 10 on each, ends there; else see `set in`",
        ),
        Sentence("2 stiles, upright, 60 x 20, horns 20, handed", "sawn off when glued"),
        Sentence("4 posts, upright, splayed 7 degrees to the sides", "or `1 in 8`, or both ways"),
        Sentence(
            "2 rims, across, on edge, 90 x 15, sloping out 1 in 4",
            "four sides of a box, mitred",
        ),
        Sentence("1 lid, flat, ? x 300 x 20, glued from boards", "? is worked out"),
        Sentence(
            "1 lid, flat, glued from 4 staves, at least 280 wide, waney at front", "in limits"
        ),
        Sentence("2 flaps, rift, grain upright, resawn, 3 days on stickers", "or bookmatched"),
        Sentence(
            "1 lid, flat, 18 thick, of MDF, lipped with ash at ends, banding on front edge",
            "",
        ),
        Sentence("4 posts, in sequence, planed in one go, 1 spare", "or a line `1 spare post`"),
        Sentence("1 lid, flat, 20 thick, cut after glue up base", "its length is measured then"),
        Sentence("1 door, upright, 20 thick, in bay, gap 2, cut as drawn", "or else to measure"),
    ),
)
_JOINTS = Chapter(
    "Joints: on the part's line, or on a line of their own",
    (
        Sentence(
            "2 rails, across, 55 x 20, tenon 20 long 6 thick into legs", "on the line of the part"
        ),
        Sentence(
            "short rails into front legs: tenon 20 long 6 thick 40 wide, 5 from bottom",
            "only the front ones; where the tenon sits",
        ),
        Sentence("long rail ends into legs: tenon 20", "what is not said is by rule"),
        Sentence(
            "1 shelf, flat, 18 thick, between short rails, housing 6", "let in 6 on each side"
        ),
        Sentence(
            "1 back, facing front, 8 thick, inside legs and long rails, groove 6, stopped",
            "a panel in a groove all round",
        ),
        Sentence("seat onto long rails: 6 buttons", "or clips, screws, or nothing"),
        Sentence("seat onto legs: shelf pins 5, 32 apart", "loose on pins, as a shelf is"),
        Sentence(
            "long rails into legs: 2 tenons 20 long 6 thick, haunch 10 long 6 deep", "two, haunched"
        ),
        Sentence(
            "short rails into legs: through tenon, 2 wedges, 3 proud", "or pegs 6 dia, drawbored"
        ),
        Sentence(
            "short rails into legs: tenon 20, offset 2 to back, shoulders 5 below 10 above",
            "off the middle",
        ),
        Sentence(
            "legs crossing short rails: half lap at corners, legs show", "whose face is unbroken"
        ),
        Sentence("seat onto long rails: glue the middle 60", "or glue one edge, dry, pinned"),
        Sentence("long rails under seat: glued", "flat against it, with glue"),
        Sentence("2 blocks, 30 x 30 x 30, under seat, glued", "the same on the part's own line"),
    ),
)
_CUTS = Chapter(
    "Cuts with no mate: in what, on which face or edge, how big, how far",
    (
        Sentence(
            "groove in long rails: inside, 6 wide, 9 deep, 12 from top, stopped 9 from left",
            "or through",
        ),
        Sentence(
            "rebate in short rails: back inner edge, 10 wide, 12 deep",
            "along the arris of two faces; or rabbet",
        ),
        Sentence(
            "taper in legs: inside faces, from 90 below top to bottom end, 40 to 25",
            "from one size to another",
        ),
        Sentence(
            "taper in seat: bottom face, from 2 beyond legs to the ends, 22 to 14",
            "begins beyond a part",
        ),
        Sentence("2 holes in seat: top, 5 dia, 10 deep, 60 from each end", "one at each end"),
        Sentence(
            "holes in seat: top, 5 dia, 10 deep, rows 37 from front, 12 at 32 from 50",
            "a row of twelve, 32 apart, the first at 50",
        ),
        Sentence("12 holes in seat: top, 5 dia, 10 deep, 32 apart", "the count in front"),
        Sentence(
            "chamfer on seat: all top edges, 3 wide", "or round-over, 6 radius; bevel, 10 degrees"
        ),
        Sentence("profile on seat: front and end top edges, ogee, 12 wide", "a shape by its name"),
        Sentence(
            "curve in long rails: bottom edge, 30 deep, from 60 from left to 60 from right",
            "an arch",
        ),
        Sentence(
            "slot in seat: top, centred, 12 wide, 90 long, through", "or notch, groove, taper"
        ),
        Sentence(
            "keys in side frames: 2 a corner, 3 thick, 25 deep, after glue up base",
            "after the glue-up; 2 at each corner",
        ),
    ),
)
_BOUGHT = Chapter(
    "Bought things: never milled, on the shopping list",
    (
        Sentence("bought 4 casters, 108 high, 50 dia, under legs at corners", "they take up room"),
        Sentence("bought 1 mirror, 4 thick, in bay, gap 1.5, order after measured", "when"),
        Sentence("bought 2 knobs, for seat, weighs 40 g each", "without a place"),
    ),
)
_WORK = Chapter(
    "Glue, finish, order",
    (
        Sentence("glue up base: side frames, long rails, with epoxy, 2 people, tape", "how"),
        Sentence("outdoors", "where it stands; glue must suit"),
        Sentence("finish legs with primer 1 coat then milk paint 2 coats, 2 h apart", "in turn"),
        Sentence("finish faces of seat with shellac, 3 coats, apart 2 h", "only there"),
        Sentence("finish everything else with oil varnish, 2 coats", "what no other line names"),
        Sentence("no finish on underside of seat", "bare"),
        Sentence("mask leg seats", "bare where the legs sit"),
        Sentence("finish seat before glue up base", "a wish for the order"),
        Sentence("sand legs and long rails after cutting seat", "cut, sand, finish, glue up"),
    ),
)

_SITE = Chapter(
    "The place, and the way in",
    (
        Sentence("place 900 to 904 wide, ceiling 2400, skirting 60 x 15, floor 8 out", ""),
        Sentence("scribe 20 at left and right", "may be cut away on site"),
        Sentence("way in 720 wide, 1980 high, turn 900", "turn: into a passage"),
        Sentence("fixed to the wall", "so that it cannot tip"),
        Sentence("hangs on a stud wall, 1400 up", "or masonry, board"),
        Sentence("for children", "lids, gaps and air are looked at"),
        Sentence("built in place", "what is too large is glued on site"),
    ),
)
_SO_FAR = Chapter(
    "Limits, and how far the work is",
    (
        Sentence("at most 620 high, the window sill", "of the piece, and why"),
        Sentence("seat top between 230 and 250, for the child", "or at least, at most"),
        Sentence("measured leg.thickness = 39.6", "in place of what was planned"),
        Sentence("measured overhang = 15.5", "or of a value, a sheet, an opening"),
        Sentence("done: leg / mortise for long rail", "looked up in the order of work, and kept"),
        Sentence("spoiled: 1 short rail", "checked against the cut list, and kept"),
    ),
)

PATTERNS = Chapter(
    "Patterns: a piece in pieces, also those that come with the program",
    (
        Sentence("pattern trestle with width, depth, height, foot = 60, 40 to 90", "within limits"),
        Sentence("2 feet, front to back, foot x foot, at left and right, up 0", ""),
        Sentence("1 beam, across, foot x 30, onto feet", "up to `end` only its own names"),
        Sentence("end", ""),
        Sentence("1 stand, as trestle, 300 wide, 200 deep, 90 high, foot 50", "an instance"),
        Sentence("chamfer on stand's feet: all long edges, 3 wide", "a part inside of it"),
    ),
)
CHAPTERS: tuple[Chapter, ...] = (
    WHOLE,
    _PIECE,
    _STOCK,
    _SUMS,
    _PARTS,
    _JOINTS,
    _CUTS,
    _BOUGHT,
    _WORK,
    _SITE,
    _SO_FAR,
    PATTERNS,
)
