"""The drawings of a booklet as files of their own, each complete in itself.

Names of parts come from the notes: of them only letters and digits get into the name of a file.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator

from dryfit.booklet.boards import board_heading
from dryfit.booklet.drawing import Svg
from dryfit.booklet.drawing.board import board_drawing
from dryfit.booklet.html import as_spoken, font_faces
from dryfit.booklet.text import Say
from dryfit.booklet.view import Booklet
from dryfit.quantities import Display
from dryfit.stock.laid_out import LaidOut

_LONGEST = 60
_OTHER = re.compile(r"[^a-z0-9]+")
_OPENING = re.compile(r"<title>")


def drawing_files(booklet: Booklet) -> tuple[tuple[str, bytes], ...]:
    """Return the name and the content of a file for each drawing, no name twice.

    The piece, the piece taken apart, parts, boards, time line, changes of a setting, and a drawing
    for each step that has one.  Of a plan that was not rehearsed the steps say so in their names.
    """
    taken: set[str] = set()
    found = []
    for name, drawing in _named(booklet):
        stem, number = name, 1
        while stem in taken:
            number += 1
            stem = f"{name}-{number}"
        taken.add(stem)
        found.append((f"{stem}.svg", _whole(drawing)))
    return tuple(found)


def board_files(laid: LaidOut, display: Display) -> tuple[tuple[str, bytes], ...]:
    """Return the name and the content of a file for each board that is cut."""
    say = Say(display)
    return tuple(
        (f"board-{safe_name(layout.board.label)}.svg", _whole(drawing))
        for layout in laid.layouts
        for drawing in (board_drawing(layout, display, board_heading(layout.board, say)),)
    )


def _named(booklet: Booklet) -> Iterator[tuple[str, Svg]]:
    first = (("piece", booklet.cover.drawing), ("taken-apart", booklet.apart))
    yield from ((name, drawing) for name, drawing in first if drawing is not None)
    for drawing in (*booklet.drawn, *booklet.uncut):
        yield f"part-{safe_name(drawing.title)}", drawing
    for board in booklet.wood.boards if booklet.wood is not None else ():
        yield f"board-{safe_name(board.label)}", board.drawing
    if booklet.time_line is not None:
        yield "time-line", booklet.time_line
    if booklet.saving is not None:
        yield "changes", booklet.saving.drawing
    word = "step" if booklet.rehearsed else "unrehearsed-step"
    for step in (step for visit in booklet.visits for step in visit.steps):
        if step.drawing is not None:
            yield f"{word}-{step.number:03}", step.drawing


def safe_name(words: str) -> str:
    """Return words as a part of a file name: small letters, digits and hyphens, not too long.

    It is never empty and never a path.
    """
    plain = unicodedata.normalize("NFKD", words).encode("ascii", "ignore").decode("ascii").lower()
    return _OTHER.sub("-", plain)[:_LONGEST].strip("-") or "drawing"


def _whole(drawing: Svg) -> bytes:
    """Return the drawing with its font in it, so that it looks alike wherever it is opened."""
    style = f"<style>{font_faces()}</style><title>"
    spoken = as_spoken(drawing.markup)
    return (_OPENING.sub(lambda _: style, spoken, count=1) + "\n").encode("utf-8")
