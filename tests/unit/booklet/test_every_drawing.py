"""Every drawing of every example: something is drawn, nothing is clipped, each figure is read."""

from collections.abc import Iterator
from functools import cache
from pathlib import Path
from xml.etree import ElementTree as ET

import pytest
from tests.pieces.planning import planned
from tests.unit.booklet.drawn_lines import outside, struck_out
from tests.unit.booklet.svg_reading import SVG, collisions, lettering, root_of

from dryfit import workshop
from dryfit.booklet import booklet_view, drawing_files
from dryfit.booklet.drawing import Svg
from dryfit.booklet.drawing_files import safe_name
from dryfit.booklet.view import Booklet

EXAMPLES = sorted((Path(__file__).parents[3] / "examples").glob("*.dryfit"))


@cache
def view(path: Path) -> Booklet:
    checked, plan, findings = planned(path.read_text(encoding="utf-8"))
    assert checked.model is not None
    assert checked.shop is not None
    assert plan is not None
    _, laid, _ = workshop.laid_out(checked)
    return booklet_view(checked.model, plan, checked.shop, findings, laid=laid)


def drawings(booklet: Booklet) -> Iterator[Svg]:
    every = (booklet.cover.drawing, booklet.apart, *booklet.drawn, *booklet.uncut)
    steps = (step.drawing for visit in booklet.visits for step in visit.steps)
    order = (booklet.time_line, booklet.saving.drawing if booklet.saving else None)
    boards = (board.drawing for board in (booklet.wood.boards if booklet.wood else ()))
    yield from (each for each in (*every, *boards, *order, *steps) if each is not None)


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.stem)
def test_every_drawing_is_whole_and_readable(path: Path) -> None:
    tried = 0
    for drawing in drawings(view(path)):
        assert list(root_of(drawing).iter(f"{SVG}path")), drawing.title
        assert lettering(drawing), drawing.title
        assert collisions(drawing) == [], drawing.title
        assert outside(drawing) == [], drawing.title
        assert struck_out(drawing) == [], drawing.title
        tried += 1
    assert tried > 10


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.stem)
def test_each_drawing_becomes_a_file_that_needs_nothing_else(path: Path) -> None:
    booklet = view(path)
    files = drawing_files(booklet)
    assert len({name for name, _ in files}) == len(files) == len(list(drawings(booklet)))
    for name, data in files:
        assert name == f"{safe_name(name.removesuffix('.svg'))}.svg"
        root = ET.fromstring(data)  # noqa: S314 - our own markup
        assert root.tag == f"{SVG}svg"
        assert b"url(data:font/woff2" in data
        assert data.count(b"url(") == 2
    names = [name for name, _ in files]
    assert names[0] == "piece.svg"
    assert "unrehearsed-step-" in "".join(names)


@pytest.mark.parametrize(
    ("words", "name"),
    [
        ("post, face and edge", "post-face-and-edge"),
        ("../../etc/passwd", "etc-passwd"),
        ("C:\\nul\x00", "c-nul"),
        ("Stra\u00dfe \u00e9t\u00e9 \u26ab", "strae-ete"),
        ("...", "drawing"),
        ("", "drawing"),
        ("x" * 300, "x" * 60),
    ],
)
def test_what_the_notes_say_never_is_a_path(words: str, name: str) -> None:
    assert safe_name(words) == name
