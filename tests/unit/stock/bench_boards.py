"""The boards of the boot bench as TRADE I1 cuts them: a layout made by hand, nothing searched.

TRADE I1: A is crosscut to 985 and 805 and each piece ripped to 3 x 50, B and C give aprons, slats
and staves.  Crosscuts take 3.2 mm there, rips 3 mm on the band saw; 25 mm come off each raw end.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Literal

from dryfit.diagnostics import Source, Span
from dryfit.piece.declared import Avoid, Have, Price
from dryfit.stock.laid_out import (
    BoardLayout,
    Bought,
    Fallen,
    Lacking,
    LaidOut,
    NamedBlank,
    Placed,
    Reach,
    SawCut,
    StockBoard,
)

Side = Literal["", "first", "rest"]
KERF = {"crosscut": Fraction(16, 5), "rip": Fraction(3)}
_NOTES = """piece Boot bench
units mm
have 1 board of ash, 2400 x 160 x 34, rough, cup 4
have 1 board of ash, 2500 x 190 x 27, rough
have 1 board of ash, 2500 x 210 x 27, rough, avoid 2300 to 2380 (knot)
have 1 board of ash, 1200 x 150 x 27, rough
buy board of ash, 2400 x 180 x 27, rough, 48 each
"""
SOURCE = Source("hall_bench.dryfit", _NOTES)
"""Called as the notes of the hand-made bench in booklet/fixtures.py."""


@dataclass(frozen=True, slots=True)
class Node:
    """One cut: what falls at the reference end or edge, and what is left beyond it."""

    saw: Literal["crosscut", "rip"]
    at: Fraction
    stage: int
    first: Tree
    rest: Tree


Tree = Node | NamedBlank | str
"""A string says what falls: ``waste`` or ``keep``."""


def line(number: int, long: int, wide: int, thick: int, *, cup: int = 0) -> Have:
    text = SOURCE.lines()[number - 1]
    span = Span(SOURCE, number, 1, len(text) + 1)
    sizes = (Fraction(long), Fraction(wide), Fraction(thick))
    return Have(1, "board", "ash", sizes, rough=True, text=text, span=span, cup=Fraction(cup))


def blank(
    kind: str, number: int, letter: str, pieces: tuple[str, ...], sizes: tuple[str, str, str],
    allowance: tuple[str, str, str], reason: str = "",
) -> NamedBlank:  # fmt: skip
    long, wide, thick = (Fraction(size) for size in sizes)
    lost = (Fraction(allowance[0]), Fraction(allowance[1]), Fraction(allowance[2]))
    part = kind.removesuffix(" stave")
    return NamedBlank(
        f"{kind} blank {number}", letter, kind, part, pieces, long, wide, thick, lost, reason
    )


def layout(board: StockBoard, tree: Tree) -> BoardLayout:
    """Return the cuts of a tree, numbered as they are come by, and where all lies."""
    placed: list[Placed] = []
    cuts: list[SawCut] = []
    fallen: list[Fallen] = []

    def names(node: Tree) -> tuple[str, ...]:
        if isinstance(node, Node):
            return names(node.first) + names(node.rest)
        return (node.name,) if isinstance(node, NamedBlank) else ()

    def lay(node: Tree, along: Reach, across: Reach, after: int | None, side: Side) -> None:
        if isinstance(node, NamedBlank):
            placed.append(Placed(node, along, across))
            return
        if not isinstance(node, Node):
            end = min(along[1], board.sizes[0] - 25)
            clear = ((along[0], end), across) if node == "keep" else None
            fallen.append(Fallen(along, across, clear, keep=node == "keep"))
            return
        number, kerf = len(cuts) + 1, KERF[node.saw]
        cuts.append(
            SawCut(number, after, side, node.saw, node.at, kerf, node.stage, along, across,
                   names(node.first), names(node.rest))
        )  # fmt: skip
        reach = along if node.saw == "crosscut" else across
        at = reach[0] + node.at
        halves = ((reach[0], at), (at + kerf, reach[1]))
        sides: tuple[tuple[Reach, Tree, Side], ...] = (
            (halves[0], node.first, "first"),
            (halves[1], node.rest, "rest"),
        )
        for half, child, where in sides:
            if node.saw == "crosscut":
                lay(child, half, across, number, where)
            else:
                lay(child, along, half, number, where)

    long, wide, _ = board.sizes
    lay(tree, (Fraction(0), long), (Fraction(0), wide), None, "")
    return BoardLayout(board, tuple(placed), tuple(cuts), tuple(fallen))


def rips(*blanks: NamedBlank, rest: Tree = "waste", stage: int = 2) -> Tree:
    tree: Tree = rest
    for each in reversed(blanks):
        tree = Node("rip", each.width, stage, each, tree)
    return tree


def crosscut(at: str, first: Tree, rest: Tree, stage: int = 1) -> Node:
    return Node("crosscut", Fraction(at), stage, first, rest)


A = StockBoard("A", line(3, 2400, 160, 34, cup=4))
B = StockBoard("B", line(4, 2500, 190, 27))
C = StockBoard(
    "C",
    replace(
        line(5, 2500, 210, 27),
        avoid=(Avoid((Fraction(2300), Fraction(2380)), None, "knot", line(5, 1, 1, 1).span),),
    ),
)
D = StockBoard("D", line(6, 1200, 150, 27))

_GANG = ("123.2", "5", "4")
POST = [
    blank("post", 1, "a", ("front left post", "front right post"), ("985", "50", "34"), _GANG,
          "ganged: planer snipe 60 each end"),
    blank("post", 2, "b", ("back left post", "back right post"), ("985", "50", "34"), _GANG,
          "ganged: planer snipe 60 each end"),
]  # fmt: skip
TEST = replace(
    blank("post", 3, "c", (), ("985", "50", "34"), ("0", "5", "4"), ""), what="test piece"
)
RAIL = [
    blank("end rail", 1, "d", ("top left end rail", "top right end rail"), ("805", "50", "34"),
          _GANG, "ganged: planer snipe 60 each end"),
    blank("end rail", 2, "e", ("bottom left end rail", "bottom right end rail"),
          ("805", "50", "34"), _GANG, "ganged: planer snipe 60 each end"),
]  # fmt: skip
SPARE = replace(blank("end rail", 3, "f", (), ("805", "50", "34"), ("0", "5", "4")), what="spare")
_SNIPE = "planer snipe 60 each end"
APRON = [
    blank("apron", n, letter, (f"{where} apron",), ("1060", "105", "27"), ("140", "5", "5"), _SNIPE)
    for n, letter, where in ((1, "g", "front"), (2, "h", "back"))
]
SLAT = [
    blank(
        "slat", n, "ijklm"[n - 1], (f"slat {n}",), ("1060", "45", "27"), ("120", "5", "9"), _SNIPE
    )
    for n in range(1, 6)
]
STAVE = [
    blank("top stave", n, "nopq"[n - 1], (f"top stave {n}",), ("1120", "193/2", "27"),
          ("120", "5", "7"), _SNIPE)
    for n in range(1, 5)
]  # fmt: skip
END = "21.8"
"""With the saw cut 25 mm: what comes off a raw end."""

LAYOUTS = (
    layout(
        A,
        crosscut(END, "waste",
                 crosscut("985", rips(*POST, TEST),
                          crosscut("805", rips(*RAIL, SPARE), "keep")), stage=0),
    ),
    layout(
        B,
        crosscut(END, "waste",
                 crosscut("1060", rips(APRON[0], SLAT[0]),
                          crosscut("1060", rips(APRON[1], SLAT[1]), "waste")), stage=0),
    ),
    layout(
        C,
        crosscut(END, "waste",
                 crosscut("1120", rips(*STAVE[:2]),
                          crosscut("1120", rips(*STAVE[2:]), "waste")), stage=0),
    ),
    layout(
        D,
        crosscut(END, "waste", crosscut("1060", rips(*SLAT[2:]), "waste"), stage=0),
    ),
)  # fmt: skip

BLANKS = (*POST, TEST, *RAIL, SPARE, *APRON, *SLAT, *STAVE)

ENOUGH = LaidOut(
    verdict="enough",
    proofs=(),
    boards=(A, B, C, D),
    blanks=BLANKS,
    layouts=LAYOUTS,
    missing=(),
    buy=(),
    searched=1600,
    spare_room=Fraction(4),
    tightest="A",
)

YARD = Have(
    1, "board", "ash", (Fraction(2400), Fraction(180), Fraction(27)), rough=True,
    text=SOURCE.lines()[6], span=Span(SOURCE, 7, 1, len(SOURCE.lines()[6]) + 1),
    price=Price(Fraction(48), "piece"),
)  # fmt: skip
_E = StockBoard("E", YARD, on_hand=False)

NOT_ENOUGH = replace(
    ENOUGH,
    verdict="not enough",
    proofs=("the slats need 0.14 square metres of ash 27 thick more than there is",),
    boards=(A, B, C, _E),
    layouts=(
        *LAYOUTS[:3],
        layout(_E, crosscut(END, "waste", crosscut("1060", rips(*SLAT[2:], rest="waste"), "keep"),
                            stage=0)),
    ),
    missing=(Lacking("slat", 3, "no board of ash 27 thick has 1060 x 45 left"),),
    buy=(Bought(YARD, 1, Fraction(48)),),
    spare_room=None,
)  # fmt: skip
