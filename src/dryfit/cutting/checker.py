"""An independent check of layouts: it replays the cuts, and shares no code with the search.

It reads the job and the layouts, nothing else.
"""

from collections import Counter
from collections.abc import Iterator, Sequence
from itertools import pairwise

from dryfit.cutting.problem import Area, Board, Job, Part
from dryfit.cutting.result import Cut, Layout, Leftover, Missing, Piece

Box = tuple[int, int, int, int]  # start, end, low, high


def violations(
    job: Job, layouts: Sequence[Layout], missing: Sequence[Missing] = ()
) -> tuple[str, ...]:
    """What is wrong with the layouts, in words; empty if nothing is.

    missing  parts that the layouts are said to lack
    """
    return (
        *_wrong_boards(job, layouts),
        *_wrong_numbers(job, layouts, missing),
        *(fault for layout in layouts for fault in _faults_of(job, layout)),
        *_torn_groups(job, layouts),
    )


def _wrong_boards(job: Job, layouts: Sequence[Layout]) -> Iterator[str]:
    counts = {board.id: board.count for board in job.boards}
    used = Counter((layout.board, layout.copy) for layout in layouts)
    for (name, copy), times in used.items():
        if not 1 <= copy <= counts.get(name, 0):
            yield f"there is no board {name} number {copy}"
        if times > 1:
            yield f"board {name} number {copy} is cut {times} times"


def _wrong_numbers(
    job: Job, layouts: Sequence[Layout], missing: Sequence[Missing]
) -> Iterator[str]:
    lacking: Counter[str] = Counter()
    for lack in missing:
        lacking[lack.part] += lack.copies
    seen = Counter((piece.part, piece.copy) for layout in layouts for piece in layout.pieces)
    quantities = {part.id: part.quantity for part in job.parts}
    for (name, copy), times in seen.items():
        if not 1 <= copy <= quantities.get(name, 0):
            yield f"nobody asked for {name} number {copy}"
        if times > 1:
            yield f"{name} number {copy} is cut {times} times"
    cut = Counter(name for name, _ in seen)
    for name in [*quantities, *(name for name in lacking if name not in quantities)]:
        if cut[name] + lacking[name] != quantities.get(name, 0):
            yield f"of {name}, {cut[name]} are cut and {lacking[name]} said to be missing"


def _faults_of(job: Job, layout: Layout) -> Iterator[str]:
    board = next((board for board in job.boards if board.id == layout.board), None)
    if board is None:
        return
    name = f"board {layout.board} number {layout.copy}"
    faults, fallen, wood_lost = _replayed(job, board, layout)
    yield from (f"{name}: {fault}" for fault in faults)
    said = Counter(_box(piece.area) for piece in layout.pieces)
    said.update(_box(leftover.area) for leftover in layout.leftovers)
    if not faults and said != Counter(fallen):
        yield f"{name}: the cuts do not give the pieces and leftovers"
    sizes = sum(times * _size(box) for box, times in said.items())
    if not faults and sizes + wood_lost != board.length * board.width:
        yield f"{name}: pieces, leftovers and kerfs are not the board"
    boxes = list(said.elements())
    for i, one in enumerate(boxes):
        if any(_meet(one, other) for other in boxes[:i]):
            yield f"{name}: two pieces overlap"
    for piece in layout.pieces:
        yield from (f"{name}: {fault}" for fault in _misfit(job, board, piece))
    for leftover in layout.leftovers:
        yield from (f"{name}: {fault}" for fault in _wrongly_left(job, board, leftover))


def _wrongly_left(job: Job, board: Board, leftover: Leftover) -> Iterator[str]:
    clear = leftover.clear
    if leftover.keep and (clear is None or not _large_enough(job, clear)):
        yield "a leftover is kept that is too small"
    if clear is None:
        return
    if any(_meet(_box(clear), _box(zone)) for zone in board.zones):
        yield "a leftover said to be clear is not"
    if not _inside(_box(clear), _box(leftover.area)):
        yield "clear wood lies outside its leftover"


def _large_enough(job: Job, area: Area) -> bool:
    rules = job.rules
    return area.end - area.start >= rules.keep_length and area.high - area.low >= rules.keep_width


def _replayed(job: Job, board: Board, layout: Layout) -> tuple[list[str], list[Box], int]:
    """Faults of the cuts, what has fallen when all are done, and the wood that the saw took."""
    faults: list[str] = []
    hand: dict[tuple[int | None, str], Box] = {(None, ""): (0, board.length, 0, board.width)}
    stages: dict[int, tuple[int, str]] = {}
    lost = 0
    for place, cut in enumerate(layout.cuts, 1):
        piece = hand.pop((cut.after, cut.side), None)
        if cut.number != place:
            faults.append(f"cut {place} has number {cut.number}")
        if piece is None:
            return [*faults, f"cut {place} takes a piece that is not there"], [], 0
        faults += [f"cut {place} {fault}" for fault in _cut_faults(job, cut, piece, stages)]
        first, rest, taken = _sawn(piece, cut)
        lost += taken
        if cut.stage > job.rules.stages and all(
            any(_inside(_box(one.area), box) for one in layout.pieces) for box in (first, rest)
        ):
            faults.append(f"cut {place} parts two pieces where it may only trim")
        for side, box in (("first", first), ("rest", rest)):
            if _size(box) > 0:
                hand[place, side] = box
        stages[place] = (cut.stage, cut.saw)
    return faults, list(hand.values()), lost


def _cut_faults(
    job: Job, cut: Cut, piece: Box, stages: dict[int, tuple[int, str]]
) -> Iterator[str]:
    start, end, low, high = piece
    rules = job.rules
    if _box(cut.piece) != piece:
        yield "is told for another piece"
    run = end - start if cut.saw == "crosscut" else high - low
    kerf = rules.crosscut_kerf if cut.saw == "crosscut" else rules.rip_kerf
    if not 0 <= cut.at < run:
        yield "does not go through the piece"
    trimming = cut.after is None and cut.stage == 0
    full = rules.end_trim - cut.at if trimming else kerf
    if cut.kerf != min(kerf, full, run - cut.at):
        yield "has a wrong kerf"
    if cut.saw == "rip" and end - start < rules.least_rip:
        yield "rips a piece that is too short"
    before, saw = stages.get(cut.after, (0, "")) if cut.after is not None else (0, "")
    stage = 0 if trimming else 1 if before == 0 else before + (saw != cut.saw)
    if trimming and (cut.saw != "crosscut" or rules.end_trim == 0):
        yield "is no trimming of the end"
    if cut.stage != stage:
        yield f"is of stage {stage}"
    if stage > rules.stages + 1:
        yield "is of one stage too many"


def _sawn(piece: Box, cut: Cut) -> tuple[Box, Box, int]:
    start, end, low, high = piece
    if cut.saw == "crosscut":
        at, beyond = start + cut.at, start + cut.at + cut.kerf
        return (start, at, low, high), (beyond, end, low, high), cut.kerf * (high - low)
    at, beyond = low + cut.at, low + cut.at + cut.kerf
    return (start, end, low, at), (start, end, beyond, high), cut.kerf * (end - start)


def _misfit(job: Job, board: Board, piece: Piece) -> Iterator[str]:
    part = next((part for part in job.parts if part.id == piece.part), None)
    if part is None:
        return
    name = f"{piece.part} number {piece.copy}"
    start, end, low, high = _box(piece.area)
    wanted = (part.width, part.length) if piece.turned else (part.length, part.width)
    if (end - start, high - low) != wanted:
        yield f"{name} is {end - start} by {high - low} instead of {wanted[0]} by {wanted[1]}"
    if piece.turned and board.grain and not part.turns:
        yield f"{name} lies across the grain"
    if part.material != board.material:
        yield f"{name} is of another material"
    if part.boards is not None and board.id not in part.boards:
        yield f"{name} comes out of a board that it may not come out of"
    if part.thickness > board.thickness:
        yield f"{name} is thicker than the board"
    trim = job.rules.end_trim
    if not _inside(_box(piece.area), (trim, board.length - trim, 0, board.width)):
        yield f"{name} lies in the trimmed ends or outside"
    if any(_meet(_box(piece.area), _box(zone)) for zone in board.zones):
        yield f"{name} lies in a zone"


def _torn_groups(job: Job, layouts: Sequence[Layout]) -> Iterator[str]:
    where = {
        (piece.part, piece.copy): (layout.board, layout.copy, piece)
        for layout in layouts
        for piece in layout.pieces
    }
    groups: dict[str, list[Part]] = {}
    for part in job.parts:
        if part.rule:
            groups.setdefault(part.group, []).append(part)
    for name, parts in groups.items():
        members = [
            where[part.id, copy]
            for part in parts
            for copy in range(1, part.quantity + 1)
            if (part.id, copy) in where
        ]
        if len({member[:2] for member in members}) > 1:
            yield f"group {name} comes out of several boards"
        elif parts[0].rule == "in sequence":
            for (*_, one), (*_, next_one) in pairwise(members):
                gap = next_one.area.start - one.area.end
                if gap != job.rules.crosscut_kerf or one.area.low != next_one.area.low:
                    yield f"{next_one.part} number {next_one.copy} does not follow in group {name}"
        asked = sum(part.quantity for part in parts)
        if 0 < len(members) < asked:
            yield f"group {name} is cut in part"


def _box(area: Area) -> Box:
    return area.start, area.end, area.low, area.high


def _size(box: Box) -> int:
    start, end, low, high = box
    return (end - start) * (high - low)


def _meet(one: Box, other: Box) -> bool:
    return one[0] < other[1] and other[0] < one[1] and one[2] < other[3] and other[2] < one[3]


def _inside(inner: Box, outer: Box) -> bool:
    return (
        outer[0] <= inner[0]
        and inner[1] <= outer[1]
        and outer[2] <= inner[2]
        and inner[3] <= outer[3]
    )
