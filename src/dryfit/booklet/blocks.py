"""The boxes of a step: what is done, how it is held, and a row with a box for each part."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from dryfit.booklet.bench import Bench, CopyRow
from dryfit.booklet.deeds import Deeds, Said, together
from dryfit.booklet.gaps import spacing
from dryfit.booklet.holding import Holding, holding, pass_lines
from dryfit.booklet.text import Piece, Text, capital, closed, listed, sentence
from dryfit.booklet.wording import joints, minutes, subject
from dryfit.placing.model import Model, Part
from dryfit.placing.strips import milled_parts
from dryfit.plan.operation import Detail, Operation

LAY_OUT = "lay out"
"""The deed at which the copies are lettered, so that each is named in full."""

_WHOLE = frozenset({"sand", "level", "ease edges", "coat"})
"""Kinds that are done to an assembly as a whole: its parts need no list."""

_TARGETS = {
    "length": ("length", "stop"),
    "width": ("width", "fence"),
    "thickness": ("thickness", "thickness"),
    "flatten": ("thickness", "thickness"),
}
"""By kind of operation: the size that it brings a part to, and the axis that would give it."""


@dataclass(frozen=True, slots=True)
class MeasureView:
    """A number to take from the piece: its name, the nominal figure, and who waits for it.

    `formula` says where to take it, and is empty where the sentence has said so; `taken` is the
    figure once the notes give it, else there is a line to write it on.
    """

    name: str
    formula: str
    nominal: Text
    sets: str
    taken: Text = ()


@dataclass(frozen=True, slots=True)
class Box:
    """One operation to tick: `heading` tells it from the other box of its row."""

    id: str
    heading: str
    minutes: str


@dataclass(frozen=True, slots=True)
class Row:
    """One part with its boxes; `lines` say what holds for this part only.

    `rough` is the size to which its blanks are cut from the boards, or empty; `cuts` are those of
    boards, each with a box of its own.
    """

    thing: str
    rough: Text
    copies: tuple[CopyRow, ...]
    hand: str | None
    lines: tuple[Text, ...]
    cuts: tuple[Text, ...]
    boxes: tuple[Box, ...]


@dataclass(frozen=True, slots=True)
class Block:
    """What one sentence says of one part or of several, one `columns` entry a box of each row.

    `cuts` are those of boards that are told for all; `boards` are those that are cut, each by its
    letter and as it is called.
    """

    single: bool
    columns: tuple[tuple[str, Text], ...]
    holding: Holding | None
    passes: tuple[Text, ...]
    details: tuple[Text, ...]
    cuts: tuple[Text, ...]
    boards: tuple[tuple[str, str], ...]
    rows: tuple[Row, ...]
    masks: tuple[str, ...]
    measure: MeasureView | None
    checks: tuple[str, ...]


def blocks(operations: Iterable[Operation], bench: Bench) -> tuple[Block, ...]:
    """Return the blocks of a step in the order of its operations."""
    return tuple(_block(deeds, bench) for deeds in together(operations, bench))


def _block(deeds: Deeds, bench: Bench) -> Block:
    every = deeds.every()
    details = _by_detail(every)
    told = _shared(details, deeds, bench)
    glued = any(operation.glue_up is not None for operation in every)
    held = [(capital(column.heading), deeds.under(column)) for column in deeds.columns]
    return Block(
        single=deeds.single,
        columns=_columns(deeds),
        holding=None if glued else holding(held, bench),
        passes=pass_lines(every, bench),
        details=(*told, *_spacing(every[0], bench)),
        cuts=_cuts_of_boards(every, bench) if len(every) == 1 else (),
        boards=_boards(every, bench),
        rows=tuple(_row(row, details, every, bench) for row in deeds.rows),
        masks=tuple(dict.fromkeys(line for op in every for line in _masks(op, bench.model))),
        measure=_measure(every[0], bench),
        checks=tuple(dict.fromkeys(op.check for op in every if op.check is not None)),
    )


def _columns(deeds: Deeds) -> tuple[tuple[str, Text], ...]:
    """Return the heading and the sentence of each column; what both say is said once."""
    columns = {
        said: heading
        for heading, said in (_column(each, single=deeds.single) for each in deeds.columns)
    }
    return tuple((heading, said) for said, heading in columns.items())


def _column(column: Said, *, single: bool) -> tuple[str, Text]:
    words = column.sentence.whole() if single else column.sentence.shared()
    return capital(column.heading), (closed(words),)


_Details = dict[Detail, tuple[Operation, ...]]


def _by_detail(operations: Sequence[Operation]) -> _Details:
    """Return each further sentence with the operations that say it."""
    found: dict[Detail, list[Operation]] = {}
    for operation in operations:
        for detail in operation.details:
            found.setdefault(detail, []).append(operation)
    return {detail: tuple(row) for detail, row in found.items()}


def _shared(details: _Details, deeds: Deeds, bench: Bench) -> tuple[Text, ...]:
    """Return what is said of several parts, once; of some only, with their letters."""
    rows: list[Text] = []
    every = deeds.every()
    for detail, operations in details.items():
        if len(operations) == len(every):
            rows.append(sentence(bench.say.detail(detail)))
        elif not any(_all_in(row, operations) for row in deeds.rows):
            letters = (bench.labels.part(subject(op)) or subject(op) for op in operations)
            whom = f"{listed(dict.fromkeys(letters))}: "
            rows.append(sentence((whom, *bench.say.detail(detail))))
    return tuple(rows)


def _all_in(row: Sequence[Said], operations: Iterable[Operation]) -> bool:
    """Return whether the operations are all those of one row, so that it alone is told."""
    return {operation.id for operation in operations} <= {said.operation.id for said in row}


def _cuts_of_boards(operations: Iterable[Operation], bench: Bench) -> tuple[Text, ...]:
    return tuple(sentence(bench.say.detail(line)) for op in operations for line in op.cut_lines)


def _spacing(operation: Operation, bench: Bench) -> tuple[Text, ...]:
    """Return the gap at which loose parts are laid in a row, for the step that lays them."""
    part = bench.part(operation.part) if operation.kind == "fit" and operation.part else None
    words = spacing(part, bench.say) if part is not None else ()
    return (words,) if words else ()


def _row(
    row: Sequence[Said],
    details: _Details,
    every: Sequence[Operation],
    bench: Bench,
) -> Row:
    first = row[0]
    copies, hand = _copies(first.operation, bench)
    lines: list[Text] = [
        sentence(bench.say.detail(detail))
        for detail, saying in details.items()
        if len(saying) < len(every) and _all_in(row, saying)
    ]
    if first.operation.rough is not None and _has_no_wood(first.operation, bench):
        lines.append(("There is no wood for this yet: what to buy stands under Wood.",))
    target = _target(first.operation, bench)
    rough = first.operation.rough
    return Row(
        thing=capital(first.sentence.listed() or subject(first.operation)),
        rough=() if rough is None else bench.rough(rough),
        copies=copies,
        hand=hand,
        lines=(*lines, target) if target else tuple(lines),
        cuts=_cuts_of_boards((said.operation for said in row), bench) if len(every) > 1 else (),
        boxes=tuple(
            Box(said.operation.id, said.heading, minutes(said.operation.tenths)) for said in row
        ),
    )


def _boards(operations: Iterable[Operation], bench: Bench) -> tuple[tuple[str, str], ...]:
    """Return the boards that are cut: each letter with what the board is called."""
    sheets = {board.label for board in bench.plan.boards if board.sheet}
    cut = {each.board for operation in operations for each in operation.board_cuts}
    return tuple(
        (label, f"{'sheet' if label in sheets else 'board'} {label}")
        for label in sorted(cut, key=lambda label: (len(label), label))
    )


def _copies(operation: Operation, bench: Bench) -> tuple[tuple[CopyRow, ...], str | None]:
    """Return the copies worked on, in short where they are all of a part, and their one hand."""
    if operation.glue_up is not None:
        return (), None
    if operation.board_cuts:
        # What comes off a board is told cut by cut, by the letters of the blanks.
        label = bench.labels.part(subject(operation))
        return ((CopyRow(label, operation.part, "", None),) if label else ()), None
    names = tuple(dict.fromkeys(name for work in operation.work for name in work.copies))
    part = bench.part(operation.work[0].part) if operation.work else None
    if part is None:
        known = operation.kind in _WHOLE
        return () if known else bench.by_part(names, named=True), None
    rows = bench.rows(names)
    hands = {row.hand for row in rows}
    hand = next(iter(hands)) if len(hands) == 1 else None
    if operation.kind == LAY_OUT or len(names) < len(part.copies):
        return rows, hand
    return bench.by_part(names, named=False), hand


def _has_no_wood(operation: Operation, bench: Bench) -> bool:
    names = {name for work in operation.work for name in work.copies}
    return not names.isdisjoint(bench.plan.lacking)


def _target(operation: Operation, bench: Bench) -> Text:
    """Return the size to reach where no setting gives it: by hand, or to a knife line.

    Of a lipped part that is the size of its core.
    """
    if operation.kind not in _TARGETS:
        return ()
    size, axis = _TARGETS[operation.kind]
    milled = milled_parts(bench.model.parts, bench.shop.allowances)
    part = next((each for each in milled if each.name == subject(operation)), None)
    if part is None or any(setting.axis == axis for setting in operation.settings):
        return ()
    lengths = {"length": part.length, "width": part.width, "thickness": part.thickness}
    return (f"To {size} ", bench.say.size_with_unit(lengths[size]), ".")


def _measure(operation: Operation, bench: Bench) -> MeasureView | None:
    point = operation.measure
    if point is None:
        return None
    waiting = [
        f"{name} (step {bench.plan.step_of(name).number})"
        for name in point.sets
        if any(op.id == name for step in bench.plan.steps for op in step.operations)
    ]
    nominal: list[Piece] = ["on paper ", bench.say.size_with_unit(point.nominal)]
    taken = () if point.taken is None else (bench.say.setting_with_unit(point.taken),)
    said = point.formula in operation.sentence or point.formula == point.name
    formula = "" if said else point.formula
    return MeasureView(point.name, formula, tuple(nominal), listed(waiting), taken)


def _masks(operation: Operation, model: Model) -> tuple[str, ...]:
    """Return which glue faces stay bare when the subject is coated before it is glued.

    Joints of one kind between the same two parts are counted, not named one by one.
    """
    if operation.kind != "coat":
        return ()
    coated = subject(operation)
    known = {joint.id: joint for joint in model.joints}
    names = (name for row in model.coatings if row.subject == coated for name in row.masks)
    masked = (known[name] for name in dict.fromkeys(names) if name in known)
    counted = Counter(
        (joint.kind, model.part_of(joint.guest), model.part_of(joint.host)) for joint in masked
    )
    return tuple(
        f"{joints(kind, count)}, {_of(guest)} and {_of(host)}"
        for (kind, guest, host), count in counted.items()
    )


def _of(part: Part) -> str:
    return part.written if len(part.copies) > 1 else part.name
