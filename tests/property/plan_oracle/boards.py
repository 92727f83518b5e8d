"""Blanks come out of boards: the cuts of each layout are replayed from the stock document alone.

A cut says after which other it is made, not in which of its two sides: that it is one in which no
blank is sawn through is found by trying both.
"""

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import combinations

from tests.property.plan_oracle.reading import Json, length

Range = tuple[Fraction, Fraction]
Rect = tuple[Range, Range]
EDGE = Fraction(3)
"""A rough edge that nothing rips off any more, mm (TRADE A2.6)."""


@dataclass(frozen=True, slots=True)
class Left:
    """A piece of a board that no cut has parted yet, and the cut that it came from."""

    rect: Rect
    after: int | None


def board_faults(stock: Json, parts: Json) -> list[str]:
    """Everything that is wrong with how boards are cut, as sentences."""
    boards = {row["id"]: row for row in stock["boards"]}
    blanks = {row["name"]: row for row in stock["blanks"]}
    rows = {row["name"]: row for row in parts["parts"]}
    found = list(_counted(stock, blanks, rows))
    for layout in stock["layouts"]:
        board = boards[layout["board"]]
        faults = (*_placed(board, layout, blanks, rows), *_replayed(board, layout))
        found += [f"board {layout['board']}: {fault}" for fault in faults]
    return found


def _whole(board: Json) -> Rect:
    return (Fraction(0), length(board["length"])), (Fraction(0), length(board["width"]))


def _rect(row: Json) -> Rect:
    return _range(row["along"]), _range(row["across"])


def _range(pair: list[str]) -> Range:
    low, high = (length(each) for each in pair)
    return low, high


def _counted(stock: Json, blanks: dict[str, Json], rows: dict[str, Json]) -> Iterator[str]:
    """Every copy, or stave of one, comes out of one blank, or is said to be missing."""
    names = [piece["blank"] for layout in stock["layouts"] for piece in layout["pieces"]]
    for name, count in Counter(names).items():
        if count > 1:
            yield f"{name} lies in {count} places"
    made: Counter[str] = Counter()
    for name in names:
        for each in blanks[name]["makes"]:
            made[_part(each["part"])] += each["copies"]
    missing = {each["part"] for each in stock["missing"]}
    for name in made | dict.fromkeys(missing, 0):
        row = rows[name]
        staves = row["made_of"]["staves"] if row["made_of"] else 1
        wanted = len(row["copies"]) * staves
        if made[name] > wanted or (made[name] == wanted) == (name in missing):
            yield f"{name}: {made[name]} of {wanted} come out of boards"


def _part(subject: str) -> str:
    return subject.removesuffix(" stave")


def _placed(
    board: Json, layout: Json, blanks: dict[str, Json], rows: dict[str, Json]
) -> Iterator[str]:
    whole = _whole(board)
    rects = [(piece, _rect(piece)) for piece in layout["pieces"]]
    for piece, rect in rects:
        name, blank = piece["blank"], blanks[piece["blank"]]
        if not all(w[0] <= r[0] < r[1] <= w[1] for w, r in zip(whole, rect, strict=True)):
            yield f"{name} does not lie in it"
        if not _is_as_large(board, blank, rect):
            yield f"{name} has another size than its place"
        for zone in board["avoid"]:
            if _meet(rect, _rect(zone)):
                yield f"{name} holds a {zone['why']}"
        for made in blank["makes"]:
            yield from _of_its_wood(board, rows[_part(made["part"])], made["part"], blank)
    for (one, rect), (other, where) in combinations(rects, 2):
        if _meet(rect, where):
            yield f"{one['blank']} and {other['blank']} lie in one place"


def _is_as_large(board: Json, blank: Json, rect: Rect) -> bool:
    along, across = (limits[1] - limits[0] for limits in rect)
    want = length(blank["length"]), length(blank["width"])
    if board["kind"] == "sheet":
        return (along, across) in {want, want[::-1]}
    return along == want[0] and want[1] <= across <= want[1] + EDGE


def _of_its_wood(board: Json, part: Json, subject: str, blank: Json) -> Iterator[str]:
    if (part["stock"] == "sheet") != (board["kind"] == "sheet"):
        yield f"{subject} is {part['stock']} and comes out of a {board['kind']}"
    if None not in (part["timber"], board["timber"]) and part["timber"] != board["timber"]:
        yield f"{subject} is {part['timber']} and comes out of {board['timber']}"
    if length(blank["length"]) < length(part["length"]):
        yield f"{subject} is longer than its blank"
    if subject == part["name"] and length(blank["width"]) < length(part["width"]):
        yield f"{subject} is wider than its blank"


def _meet(one: Rect, other: Rect) -> bool:
    return all(max(a[0], b[0]) < min(a[1], b[1]) for a, b in zip(one, other, strict=True))


def _replayed(board: Json, layout: Json) -> Iterator[str]:
    cuts = layout["cuts"]
    if len({cut["number"] for cut in cuts}) < len(cuts):
        yield "two cuts have one number"
    blanks = {_rect(piece) for piece in layout["pieces"]}
    whole = [Left(_whole(board), None)]
    ends = _ends(whole, cuts, blanks, freed=True) or _ends(whole, cuts, blanks, freed=False)
    if ends is None:
        yield "no replay of its cuts leaves every blank whole"
        return
    left = {each.rect for each in ends}
    for rect in blanks - left:
        yield f"a blank at {float(rect[0][0]):g}, {float(rect[1][0]):g} is not cut all round"
    # What falls is told as it lies, and so is not what is left of it piece by piece.
    waste = sum((_area(_rect(each)) for each in layout["leftovers"]), Fraction(0))
    if waste != sum((_area(rect) for rect in left - blanks), Fraction(0)):
        yield "what falls is not all that is no blank and no kerf"


def _area(rect: Rect) -> Fraction:
    (a, b), (c, d) = rect
    return (b - a) * (d - c)


def _ends(
    pieces: list[Left], cuts: list[Json], blanks: set[Rect], *, freed: bool
) -> list[Left] | None:
    """What is left when all cuts are made, or None where a blank cannot but be sawn through.

    Where they shall be `freed`, every blank is cut all round.
    """
    if not cuts:
        all_round = blanks <= {each.rect for each in pieces}
        return pieces if all_round or not freed else None
    cut, later = cuts[0], cuts[1:]
    for piece in pieces:
        if piece.after != cut["after"]:
            continue
        sides = _sides(piece, cut, blanks)
        if sides is not None:
            rest = [each for each in pieces if each is not piece]
            found = _ends([*rest, *sides], later, blanks, freed=freed)
            if found is not None:
                return found
    return None


def _sides(piece: Left, cut: Json, blanks: set[Rect]) -> list[Left] | None:
    """Both sides of a cut, or None where it lies beside the piece or in a blank."""
    way = 0 if cut["cut"] == "crosscut" else 1
    low, high = piece.rect[way]
    saw = low + length(cut["at"]), min(low + length(cut["at"]) + length(cut["kerf"]), high)
    if not low < saw[0] < high:
        return None
    if any(
        _meet(rect, piece.rect) and max(rect[way][0], saw[0]) < min(rect[way][1], saw[1])
        for rect in blanks
    ):
        return None
    found = []
    for limits in ((low, saw[0]), (saw[1], high)):
        if limits[0] < limits[1]:
            rect = (limits, piece.rect[1]) if way == 0 else (piece.rect[0], limits)
            found.append(Left(rect, cut["number"]))
    return found
