"""Reads the lines of a drawing back, and finds what makes a figure unreadable."""

import re
from collections.abc import Iterator
from itertools import pairwise
from xml.etree import ElementTree as ET

from tests.unit.booklet.svg_reading import SVG, Lettering, lettering, root_of

from dryfit.booklet.drawing.canvas import Svg
from dryfit.booklet.drawing.rect import Point, Rect, Segment

_NUMBERS = re.compile(r"-?\d+(?:\.\d+)?")
_INSIDE = 0.5
"""mm by which a line must come into the room of a text to disturb it."""


def struck_out(svg: Svg) -> list[str]:
    """Texts that a line runs through, nothing white lying between the two."""
    found = []
    lines: list[Segment] = []
    whites: list[tuple[int, Rect]] = []
    texts = iter(lettering(svg))
    rows: list[tuple[Lettering, int]] = []
    for element, right, down in _walk(root_of(svg), 0.0, 0.0):
        if element.tag == f"{SVG}path":
            points = _paths(element.get("d", ""), right, down)
            if element.get("stroke"):
                lines += [line for path in points for line in pairwise(path)]
            if element.get("fill") == "#fff":
                whites += [(len(lines), _around(path)) for path in points]
        elif element.tag == f"{SVG}circle" and element.get("fill") == "#fff":
            x, y, r = (float(element.get(name, "0")) for name in ("cx", "cy", "r"))
            whites.append(
                (len(lines), Rect(x + right - r, y + down - r, x + right + r, y + down + r))
            )
        elif element.tag == f"{SVG}text":
            text = next(texts)
            rows += [(text, len(whites))] if element.get("fill") != "#fff" else []
    for text, before in rows:
        behind = max((at for at, white in whites[:before] if _covers(white, text.room)), default=0)
        room = text.room.grown(-_INSIDE)
        if any(room.is_crossed_by(line) for line in lines[behind:]):
            found.append(text.words)
    return found


def outside(svg: Svg) -> list[str]:
    """Texts and shapes that stick out of the view box."""
    box = [float(value) for value in root_of(svg).get("viewBox", "").split()]
    whole = Rect(box[0], box[1], box[0] + box[2], box[1] + box[3]).grown(0.02)
    out = [line.words for line in lettering(svg) if not _covers(whole, line.room)]
    for element, right, down in _walk(root_of(svg), 0.0, 0.0):
        if element.tag == f"{SVG}path":
            points = _paths(element.get("d", ""), right, down)
            out += ["path" for path in points if not _covers(whole, _around(path))]
    return out


def _walk(
    element: ET.Element, right: float, down: float
) -> Iterator[tuple[ET.Element, float, float]]:
    moved = element.get("transform")
    if moved:
        x, y = _NUMBERS.findall(moved)
        right, down = right + float(x), down + float(y)
    yield element, right, down
    for child in element:
        yield from _walk(child, right, down)


def _paths(path: str, right: float, down: float) -> list[list[Point]]:
    found = []
    for piece in path.split("M")[1:]:
        values = [float(value) for value in _NUMBERS.findall(piece)]
        points = [(x + right, y + down) for x, y in zip(values[::2], values[1::2], strict=True)]
        found.append([*points, points[0]] if piece.endswith("Z") else points)
    return found


def _around(points: list[Point]) -> Rect:
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return Rect(min(xs), min(ys), max(xs), max(ys))


def _covers(outer: Rect, inner: Rect) -> bool:
    return (
        outer.left <= inner.left + 0.4
        and inner.right - 0.4 <= outer.right
        and outer.top <= inner.top + 0.4
        and inner.bottom - 0.4 <= outer.bottom
    )
