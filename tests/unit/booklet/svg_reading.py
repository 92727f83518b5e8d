"""Reads a drawing back: where each line of text stands, and which quantities it carries."""

from dataclasses import dataclass
from xml.etree import ElementTree as ET

from dryfit.booklet.drawing.canvas import Svg, text_room
from dryfit.booklet.drawing.rect import Rect

SVG = "{http://www.w3.org/2000/svg}"


@dataclass(frozen=True, slots=True)
class Lettering:
    """One line of text: what it says, its room on paper, its size, and its quantities in mm."""

    words: str
    room: Rect
    size: float
    quantities: tuple[str, ...]


def root_of(svg: Svg) -> ET.Element:
    return ET.fromstring(svg.markup)  # noqa: S314 - our own markup


def lettering(svg: Svg) -> list[Lettering]:
    """Every line of text in the order drawn, moved as its groups are."""
    found: list[Lettering] = []
    _read(root_of(svg), 0.0, 0.0, found)
    return found


def _read(element: ET.Element, right: float, down: float, found: list[Lettering]) -> None:
    moved = element.get("transform")
    if moved:
        x, y = moved.removeprefix("translate(").removesuffix(")").split()
        right, down = right + float(x), down + float(y)
    if element.tag == f"{SVG}text":
        found.append(_line(element, right, down))
    for child in element:
        _read(child, right, down, found)


def _line(element: ET.Element, right: float, down: float) -> Lettering:
    size = float(element.get("font-size", "0"))
    words = "".join(element.itertext())
    baseline = float(element.get("y", "0")) + down
    at = float(element.get("x", "0")) + right, baseline - size * 0.727 / 2
    room = text_room(
        at,
        words,
        size=size,
        bold=element.get("font-weight") == "700",
        anchor=element.get("text-anchor", "start"),
    )
    quantities = tuple(
        child.get("data-mm", "")
        for child in element.iter(f"{SVG}tspan")
        if child.get("class") == "q"
    )
    return Lettering(words, room, size, quantities)


def collisions(svg: Svg) -> list[tuple[str, str]]:
    """Pairs of texts that stand on one another."""
    lines = lettering(svg)
    return [
        (one.words, other.words)
        for index, one in enumerate(lines)
        for other in lines[index + 1 :]
        if one.room.grown(-0.15).meets(other.room.grown(-0.15))
    ]


def quantities(svg: Svg) -> list[str]:
    """Every quantity that the drawing carries, in mm, in the order drawn."""
    return [mm for line in lettering(svg) for mm in line.quantities]
