"""What is to be cut and what there is to cut it from: whole numbers and names, in frozen records.

Every size is a whole number of hundredths of a millimetre. Whoever calls rounds needs up and
stock down, so that what fits here fits in wood.
"""

from dataclasses import dataclass, field
from typing import Literal

Rule = Literal["", "same board", "in sequence"]


@dataclass(frozen=True, slots=True)
class Area:
    """A rectangle of a board: along it from its reference end, across it from its edge."""

    start: int
    end: int
    low: int
    high: int

    @property
    def length(self) -> int:
        """Its size along the board."""
        return self.end - self.start

    @property
    def width(self) -> int:
        """Its size across the board."""
        return self.high - self.low

    @property
    def size(self) -> int:
        """What it covers, in square hundredths of a millimetre."""
        return self.length * self.width


@dataclass(frozen=True, slots=True)
class Board:
    """A piece of stock: a board, an offcut, a sheet.

    zones     what no part may touch: a knot, a split, a waney edge
    grain     whether it has a grain; it then runs along the length. On a board without one any
              part may lie turned
    count     how many of them there are
    value     what it is worth; of two ways to cut, the one that takes less value is better
    price     of one, where it would have to be bought; None for what is at hand. What is bought
              is taken only where nothing else does, whatever its value
    last      to be kept as long as the others do
    offcut    to be used up where that leaves more of a larger board, if that alone did as well
    """

    id: str
    length: int
    width: int
    thickness: int
    material: str = ""
    zones: tuple[Area, ...] = ()
    grain: bool = True
    count: int = 1
    value: int = 0
    price: int | None = None
    last: bool = False
    offcut: bool = False


@dataclass(frozen=True, slots=True)
class Part:
    """A rough blank, `quantity` times. It comes out of any board that is at least as thick.

    turns  may lie across the grain of a board
    group  name of what belongs together; all parts of one group have the same rule
    boards names of the boards that it may come out of, where material and thickness do not tell
    losses names of boards that do not suit it, each with the value that is lost there on one copy
    rule   "same board": the whole group comes out of one board. "in sequence": the group is one
           run along one board, in the order in which its parts are given, with nothing but a
           saw cut between two neighbours; its parts have one width and do not turn
    """

    id: str
    length: int
    width: int
    thickness: int
    quantity: int = 1
    turns: bool = False
    material: str = ""
    group: str = ""
    rule: Rule = ""
    boards: frozenset[str] | None = None
    losses: tuple[tuple[str, int], ...] = ()


@dataclass(frozen=True, slots=True)
class Rules:
    """How the stock is cut.

    crosscut_kerf   what a cut across the board takes of the length
    rip_kerf        what a cut along the board takes of the width
    end_trim        at both ends of each board, of no use; the kerf of the trimming cut is in it
    least_rip       length of the shortest piece that may be ripped
    stages          turns of cutting direction from the whole board on, the first one counted.
                    One stage more may trim: such a cut leaves a part on one side at most
    keep_length, keep_width      the least leftover that is worth keeping
    sliver_length, sliver_width  clear wood between a zone and an edge, an end or another zone
                                 that is shorter or narrower is counted to the zone
    crosscut_cost, rip_cost, fence_cost  what a crosscut, a metre of a rip and each setting of the
                                 fence cost, in value. Of layouts on the same boards the cheapest
                                 to saw is looked for
    """

    crosscut_kerf: int
    rip_kerf: int
    end_trim: int = 0
    least_rip: int = 0
    stages: int = 3
    keep_length: int = 0
    keep_width: int = 0
    sliver_length: int = 0
    sliver_width: int = 0
    crosscut_cost: int = 0
    rip_cost: int = 0
    fence_cost: int = 0


@dataclass(frozen=True, slots=True)
class Job:
    """All that a layout is asked for. The order of parts and boards settles ties."""

    parts: tuple[Part, ...]
    boards: tuple[Board, ...]
    rules: Rules = field(default_factory=lambda: Rules(0, 0))


class Malformed(ValueError):  # noqa: N818 - it reads as what it says of the job
    """The job makes no sense, whatever the stock. `name` is the part or board at fault."""

    def __init__(self, message: str, name: str) -> None:
        super().__init__(message)
        self.name = name
