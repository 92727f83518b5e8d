"""The job as the search sees it: numbered blanks and kinds of boards, and which fits which."""

from collections.abc import Iterator
from dataclasses import dataclass

from dryfit.cutting.clear import clear_rectangles
from dryfit.cutting.problem import Area, Board, Job, Malformed, Part

Sizes = tuple[tuple[int, int], ...]


@dataclass(frozen=True, slots=True)
class Blank:
    """What is put into a layout as one rectangle: a blank, or a run of blanks.

    members  (index of the part, copy from 1) along the run
    kind     equal for blanks that can stand in for one another
    """

    members: tuple[tuple[int, int], ...]
    length: int
    width: int
    kind: int
    shortest: int

    @property
    def run(self) -> bool:
        """Whether it is crosscut into several blanks."""
        return len(self.members) > 1


@dataclass(frozen=True, slots=True)
class Unit:
    """Blanks that come out of one board or not at all, and what is lost if they do not."""

    blanks: tuple[int, ...]
    weight: int
    kind: int


@dataclass(frozen=True, slots=True)
class Stock:
    """All boards of one id.

    worth  orders by price, then kept for last, then value, then size
    clear  square hundredths between the trimmed ends; zones are not taken off
    rooms  the largest clear rectangles
    """

    board: Board
    worth: int
    clear: int
    rooms: tuple[Area, ...]


@dataclass(frozen=True, slots=True)
class Instance:
    """A compiled job.

    fits    for each stock and each blank, the sizes (along, across) in which it may lie there;
            the blank is turned where they are not its own
    """

    job: Job
    blanks: tuple[Blank, ...]
    units: tuple[Unit, ...]
    stocks: tuple[Stock, ...]
    fits: tuple[tuple[Sizes, ...], ...]


def compiled(job: Job) -> Instance:
    """The job in numbers. `Malformed` if it contradicts itself."""
    _check(job)
    blanks: list[Blank] = []
    groups: dict[tuple[str, str], list[int]] = {}
    kinds: dict[tuple[object, ...], int] = {}
    for index, part in enumerate(job.parts):
        key = kind_of(part)
        joined = part.rule == "in sequence"
        for copy in range(1, part.quantity + 1):
            name = part.group if part.rule else f" {index} {copy}"
            if joined and (part.rule, name) in groups:
                place = groups[part.rule, name][0]
                blanks[place] = _longer(job, blanks[place], (index, copy))
                continue
            kind = kinds.setdefault((part.rule, name) if joined else key, len(kinds))
            blank = Blank(((index, copy),), part.length, part.width, kind, part.length)
            groups.setdefault((part.rule, name), []).append(len(blanks))
            blanks.append(blank)
    stocks = _stocks(job)
    fits = tuple(
        tuple(tuple(_lying(job, stock.board, stock.rooms, blank)) for blank in blanks)
        for stock in stocks
    )
    units = _units(blanks, groups, stocks, fits)
    return Instance(job, tuple(blanks), units, stocks, fits)


def kind_of(part: Part) -> tuple[object, ...]:
    """All that tells whether one part may stand in for another."""
    size = part.length, part.width, part.thickness
    return (*size, part.material, part.turns, part.boards)


def _check(job: Job) -> None:
    things: list[Part | Board] = [*job.parts, *job.boards]
    for thing in things:
        if min(thing.length, thing.width, thing.thickness) <= 0:
            raise Malformed(f"{thing.id} has no size", thing.id)
    for names in ([part.id for part in job.parts], [board.id for board in job.boards]):
        for name in names:
            if names.count(name) > 1:
                raise Malformed(f"two are called {name}", name)
    first: dict[str, Part] = {}
    for part in job.parts:
        if bool(part.group) != bool(part.rule):
            raise Malformed(f"{part.id} has a group without a rule or a rule without one", part.id)
        leader = first.setdefault(part.group, part) if part.group else part
        if (leader.rule, leader.material) != (part.rule, part.material):
            raise Malformed(f"{part.id} is not like the others of its group", part.id)
        if part.rule == "in sequence" and (part.width != leader.width or part.turns):
            raise Malformed(f"{part.id} cannot follow in one run", part.id)


def _longer(job: Job, run: Blank, member: tuple[int, int]) -> Blank:
    length = job.parts[member[0]].length
    return Blank(
        (*run.members, member),
        run.length + job.rules.crosscut_kerf + length,
        run.width,
        run.kind,
        min(run.shortest, length),
    )


def _stocks(job: Job) -> tuple[Stock, ...]:
    """Worth in one number, so that no sum of a lesser aim outweighs a greater one."""
    sizes = 1 + sum(board.length * board.width * board.count for board in job.boards)
    values = 1 + sum(board.value * board.count for board in job.boards)
    lasts = 1 + sum(board.count for board in job.boards if board.last)
    stocks = []
    for board in job.boards:
        price, bought = board.price or 0, board.price is not None
        rank = (price * (1 + sum(other.count for other in job.boards)) + bought) * lasts
        worth = ((rank + board.last) * values + board.value) * sizes + board.length * board.width
        trim = min(job.rules.end_trim, board.length)
        usable = Area(trim, max(trim, board.length - trim), 0, board.width)
        rooms = clear_rectangles(usable, board.zones) if usable.size else ()
        stocks.append(Stock(board, worth, usable.size, rooms))
    return tuple(stocks)


def _lying(
    job: Job, board: Board, rooms: tuple[Area, ...], blank: Blank
) -> Iterator[tuple[int, int]]:
    parts = [job.parts[index] for index, _ in blank.members]
    if any(part.thickness > board.thickness for part in parts):
        return
    if parts[0].material != board.material:
        return
    if any(part.boards is not None and board.id not in part.boards for part in parts):
        return
    own = (blank.length, blank.width)
    may_turn = (parts[0].turns or not board.grain) and parts[0].rule != "in sequence"
    for along, across in {own: None, own[::-1] if may_turn else own: None}:
        if any(along <= room.length and across <= room.width for room in rooms):
            yield along, across


def _units(
    blanks: list[Blank],
    groups: dict[tuple[str, str], list[int]],
    stocks: tuple[Stock, ...],
    fits: tuple[tuple[Sizes, ...], ...],
) -> tuple[Unit, ...]:
    """A blank weighs its face, the more the less of the stock it fits."""
    whole = 1 + sum(stock.clear * stock.board.count for stock in stocks)
    kinds: dict[tuple[int, ...], int] = {}
    units = []
    for members in groups.values():
        weight = 0
        for place in members:
            open_to = 1 + sum(
                stock.clear * stock.board.count
                for stock, sizes in zip(stocks, fits, strict=True)
                if sizes[place]
            )
            scarce = min(8 * whole, 2 * whole * whole // open_to) // (whole // 100 + 1)
            weight += blanks[place].length * blanks[place].width * (100 + scarce) // 100
        kind = kinds.setdefault(tuple(sorted(blanks[place].kind for place in members)), len(kinds))
        units.append(Unit(tuple(members), weight, kind))
    return tuple(units)
