"""The likely mistakes in what notes mean: each is found on its line, and nothing else is.

Numbers are those of the catalogue that the language was designed with.
"""

from __future__ import annotations

from dataclasses import dataclass

import pytest
from tests.pieces.reading import changed, checked, checked_piece, text_of

Change = tuple[str, str]


@dataclass(frozen=True)
class Mistake:
    """What is written, the codes that may tell of it, and words of the line that is meant."""

    number: int
    codes: frozenset[str]
    severity: str
    piece: str
    line: str
    changes: tuple[Change, ...]
    more: str = ""


def mistake(
    number: int, codes: str, piece: str, line: str, *changes: Change, more: str = ""
) -> Mistake:
    severity = "question" if codes.startswith("?") else "error"
    return Mistake(
        number, frozenset(codes.lstrip("?").split("|")), severity, piece, line, changes, more
    )


LONG = "2 long rails, across, 55 x 20, tenon 20 long"
ONE_LONG = "1 long rail, across, 55 x 20, tenon 20 long"
LOOSE_BAR = "1 tie bar, front to back, flat, 100 x 50 x 20, 200 from left, 100 from front"
STRIP = "1 strip, across, flat, 5 thick, up 0, 50 from front"
CLEATS = "2 cleats, front to back, flat, 360 x 40 x 25, at left and right"
UNDER = ", set in 40 across, under board, up 0"
WISHES = "legs before long rails\nlong rails before short rails\nshort rails before legs\n"
MISTAKES = [
    mistake(22, "part-as-measure", "step_stool", "4 legs", ("in overhang", "in leg")),
    mistake(23, "measure-as-part", "housed_stretcher", "1 stretcher",
            ("4 legs", "reveal = 2\n4 legs"), ("between long rails:", "between reveal:")),
    mistake(24, "measure-has-no-dimension", "step_stool", "4 legs",
            ("in overhang", "in overhang.width")),
    mistake(25, "mixed-kinds", "step_stool", "4 legs",
            ("in overhang", "in overhang + drying"), ("reveal = 2", "drying = 2 h\nreveal = 2")),
    mistake(25, "mixed-kinds", "step_stool", "overhang = ", ("g = 15", "g = 15 / (1 - 1)")),
    mistake(26, "wrong-kind", "step_stool", "4 legs", ("in overhang", "in width * depth")),
    mistake(26, "wrong-kind", "step_stool", "4 legs", ("in overhang", "in width / depth")),
    mistake(26, "wrong-kind", "step_stool", "glue up base", ("cure 2 h", "cure 20 mm")),
    mistake(27, "circle", "step_stool", "reveal = overhang",
            ("overhang = 15", "overhang = reveal + 1"), ("reveal = 2", "reveal = overhang * 2")),
    mistake(28, "size-not-positive", "step_stool", "4 legs", ("40 x 40", "100 - 2*60 x 40")),
    mistake(28, "no-room-between", "step_stool", "2 long rails", ("overall 420", "overall 90")),
    mistake(29, "?size-huge", "step_stool", "have", ("1800 x 160", "7800 x 160")),
    mistake(33, "joined-to-itself", "step_stool", "legs into legs", more="legs into legs: tenon\n"),
    mistake(34, "copies-and-gaps", "step_stool", "long rail", ("2 long rails", "3 long rails")),
    mistake(35, "copies-and-gaps", "step_stool", "long rail", ("2 long rails", "4 long rails")),
    mistake(35, "copies-and-gaps", "step_stool", "long rail", (LONG, ONE_LONG)),
    mistake(35, "copies-and-places", "boot_bench", "4 posts", ("at corners", "at left and right")),
    mistake(36, "tenon-too-long", "step_stool", "2 long rails", (LONG, f"{LONG[:-7]}45 long")),
    mistake(36, "tenon-too-thick", "step_stool", "2 long rails",
            (f"{LONG} 6 thick", f"{LONG} 22 thick")),
    mistake(36, "tenon-off-rail", "boot_bench", "2 aprons", ("5 from bottom", "65 from bottom")),
    mistake(36, "tenon-misses-host", "upright_trestle", "posts into beam",
            ("40 long 12 thick", "40 long 12 thick 60 wide")),
    mistake(37, "sizes-clash", "step_stool", "2 long rails", ("across, 55", "across, 400 x 55")),
    mistake(37, "shoulder-length-given", "step_stool", "2 long rails",
            ("across, 55", "across, 310 x 55")),
    mistake(37, "shoulder-length-given", "housed_stretcher", "1 stretcher",
            ("flat, 60", "flat, 226 x 60")),
    mistake(38, "place-unknown", "shelf_box", "1 low shelf",
            ("glue up", "1 low shelf, flat, depth x board, housing 6 into sides\nglue up")),
    mistake(39, "copies-unclear", "step_stool", "5 legs",
            ("4 legs, upright, 40 x 40, at corners", "5 legs, upright, 40 x 40")),
    mistake(40, "spread-too-full", "boot_bench", "8 slats", ("5 slats", "8 slats")),
    mistake(42, "glued-more-than-there-are", "step_stool", "side frames", (": 2 legs", ": 3 legs")),
    mistake(42, "glued-twice", "step_stool", "glue up base", ("base: side", "base: legs, side")),
    mistake(42, "stages-in-a-circle", "boot_bench", "end frames", ("2 posts, 1", "base, 1")),
    mistake(43, "wishes-in-a-circle", "step_stool", "short rails before legs", more=WISHES),
    mistake(45, "overall-missing", "step_stool", "piece",
            ("overall 420 wide, 300 deep, 240 high\n", "")),
    mistake(45, "overall-twice", "step_stool", "overall 1", more="overall 1 x 2 x 3\n"),
    mistake(45, "finish-twice", "step_stool", "finish shellac", more="finish shellac\n"),
    mistake(52, "in-no-glue-up", "housed_stretcher", "1 stretcher",
            ("rails, stretcher, cure", "rails, cure")),
    mistake(53, "?near-values", "step_stool", "overhnag", ("reveal =", "overhnag = 3\nreveal =")),
    mistake(0, "set-back-from-nothing", "step_stool", "1 seat",
            ("1 seat, flat", "1 seat, flat, set back 3")),
    mistake(0, "lap-of-parallel-parts", "flat_lap_frame", "half lap",
            ("short bars crossing long bars", "slip crossing long bars"),
            ("\nglue up", "1 slip, across, flat, 300 x 20 x 20\n\nglue up")),
    mistake(0, "joint-without-contact", "flat_lap_frame", "tie bar crossing",
            ("\nglue up", f"{LOOSE_BAR}\ntie bar crossing long bars: half lap\n\nglue up")),
    mistake(0, "feature-off-part", "boot_bench", "groove in aprons",
            ("12 from top, through", "96 from top, through")),
    mistake(0, "waits-for-itself", "boot_bench", "5 slats",
            ("end frames, aprons", "end frames, aprons, slats")),
    mistake(0, "waits-for-others", "boot_bench", "groove in aprons",
            ("from top, through", "from top, through, after glue up end frame")),
    mistake(0, "stage-without-joint", "boot_bench", "glue up shelf",
            ("\nglue up base", "\nglue up shelf: slats\nglue up base")),
    mistake(0, "button-slot-off-rail", "boot_bench", "groove in aprons",
            ("inside, 6 wide, 9 deep", "inside, 6 wide, 22 deep")),
    mistake(0, "button-slot-off-rail", "boot_bench", "groove in aprons",
            ("inside, 6 wide", "inside, 1/3 wide")),
    mistake(0, "buttons-too-many", "boot_bench", "buttons", ("6 buttons", "90 buttons")),
    mistake(0, "button-slot-shallow", "boot_bench", "buttons", ("wide, 9 deep", "wide, 4 deep")),
    mistake(0, "no-screw-fits", "upright_trestle", "screws",
            ("posts into beam: tenon 40 long 12 thick", "posts under beam: screws")),
    mistake(0, "size-unknown", "glued_board", "1 strip",
            ("\nfinish", f"\n{STRIP}\nfinish")),
    mistake(0, "no-parts", "glued_board", "piece",
            ("1 board, across, flat, 500 x 400 x 20, glued from 5\n", ""),
            (f"{CLEATS}{UNDER}\n", ""), ("cleats under board: screws\n", "")),
]  # fmt: skip


def names() -> list[str]:
    return [f"{each.number}-{min(each.codes)}-{index}" for index, each in enumerate(MISTAKES)]


@pytest.mark.parametrize("each", MISTAKES, ids=names())
def test_a_mistake_is_found_on_its_line(each: Mistake) -> None:
    text = changed(text_of(each.piece), *each.changes) + each.more
    found = checked(text)
    own = [finding for finding in found.findings if finding.code in each.codes]
    assert own, [(finding.code, finding.message) for finding in found.findings]
    (finding,) = own
    assert finding.severity.value == each.severity
    assert finding.span is not None
    assert each.line in text.split("\n")[finding.span.line - 1]
    others = [f.message for f in found.findings if f not in own and f.severity.value == "error"]
    assert others == []


@pytest.mark.parametrize("each", MISTAKES, ids=names())
def test_the_notes_without_the_mistake_have_no_such_finding(each: Mistake) -> None:
    codes = {finding.code for finding in checked_piece(each.piece).findings}
    assert each.codes.isdisjoint(codes)


@pytest.mark.parametrize("each", MISTAKES, ids=names())
def test_a_message_is_one_short_line_with_advice(each: Mistake) -> None:
    found = checked(changed(text_of(each.piece), *each.changes) + each.more)
    for finding in found.findings:
        assert "\n" not in finding.message
        assert not finding.message.endswith(".")
        assert all(hint.message for hint in finding.hints)
        if finding.code in each.codes and each.number != 33:
            assert finding.hints
