"""Sentences of operations taken apart, so that one deed on several parts is said once.

An operation says ``Rip both aprons to width``.  Where posts and slats are ripped in the same step
the booklet says ``Rip each to width`` and lists the parts, each with its box to tick.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass

from dryfit.booklet.bench import Bench
from dryfit.booklet.wording import deed, subject
from dryfit.placing.model import Part
from dryfit.plan.operation import Operation

_COUNTING = ("the", "both", "all", r"\d+", "blank", "blanks", "strip", "strips")
_SOME_OF = re.compile(r"(?<!\S)\d+ of $")
_APART = frozenset({"glue up", "measure", "make", "fit"})
"""Kinds whose sentences are about one thing only, and are printed as they are."""

_OF_HAND = re.compile(r"^ of hand [AB]\b")


@dataclass(frozen=True, slots=True)
class Sentence:
    """What an operation says, around the words for its parts: `thing` is None if not found."""

    before: str
    thing: str | None
    after: str

    def whole(self) -> str:
        """Return the sentence for this operation alone: ``Rip the leg blank to width``."""
        thing = "" if self.thing is None else self.thing
        return f"{self.before}{re.sub(r'^the 1 ', 'the ', thing)}{self.after}"

    def shared(self) -> str:
        """Return the sentence for several parts that are listed below it."""
        # The list of the parts has the hand of each.
        return f"{self.before}each{_OF_HAND.sub('', self.after)}"

    def listed(self) -> str:
        """Return the parts as a list names them: ``2 aprons``, ``1 leg blank``, ``seat``."""
        thing = self.thing or ""
        for said, short in (("the ", ""), ("both ", "2 "), ("all ", "")):
            if thing.startswith(said):
                return short + thing.removeprefix(said)
        return thing


def sentence(operation: Operation, bench: Bench) -> Sentence:
    """Return an operation's sentence with the words for its parts found in it."""
    if operation.kind in _APART:
        return Sentence(bench.without_article(operation.sentence), None, "")
    said = bench.without_article(operation.sentence)
    name = subject(operation)
    part = bench.part(name)
    named = set(name.split()) | set(part.written.lower().split() if part is not None else ())
    words = "|".join(
        (*_COUNTING, *(f"{re.escape(word)}s?" for word in sorted(named, key=_longest)))
    )
    runs = re.finditer(rf"(?<!\S)(?:{words})(?: (?:{words}))*(?![^\s,.:;])", said)
    known = named | {f"{word}s" for word in named}
    naming = [run for run in runs if known & set(run.group().split())]
    if not naming:
        return Sentence(said, None, "")
    found = max(naming, key=lambda run: (len(run.group()), -run.start()))
    start, end = found.span()
    thing = _counted(operation, part, found.group())
    some = _SOME_OF.search(said[:start])
    if some is not None:
        # `3 of the 4 boards` has its count already, and says how many there are in all.
        start, count = some.start(), len({name for work in operation.work for name in work.copies})
        thing = f"{count} of {found.group()}" if count else f"{some.group()}{found.group()}"
    return Sentence(said[:start], thing, said[end:])


def _counted(operation: Operation, part: Part | None, words: str) -> str:
    """Return the words, or the number of copies where the words say another: ``2 posts``."""
    names = {name for work in operation.work for name in work.copies}
    if part is None or not names or operation.board_cuts:
        return words
    if len(names) < len(part.copies):
        return f"{len(names)} {part.written.lower() if len(names) > 1 else part.name}"
    one = words == f"the {part.name}" and len(names) > 1
    every = "both" if len(names) == 2 else f"all {len(names)}"
    return f"{every} {part.written.lower()}" if one else words


def _longest(word: str) -> tuple[int, str]:
    return -len(word), word


@dataclass(frozen=True, slots=True)
class Said:
    """An operation with its sentence taken apart, and the word for it in a heading."""

    operation: Operation
    sentence: Sentence

    @property
    def heading(self) -> str:
        """Return what the operation is called: ``face``, ``rough length``."""
        return deed(self.operation)

    @property
    def frame(self) -> tuple[str, str]:
        """Return the words around the parts: equal frames can be said once."""
        return self.sentence.before, self.sentence.after


Row = tuple[Said, ...]
"""What is done to one part in turn: one box, or two that are headed face and edge."""


@dataclass(frozen=True, slots=True)
class Deeds:
    """Rows of parts of which the same is said: the first row has all the columns."""

    rows: tuple[Row, ...]

    @property
    def columns(self) -> Row:
        """Return one of each column: its heading and its sentence."""
        return self.rows[0]

    @property
    def single(self) -> bool:
        """Whether it is one operation only, whose own sentence is printed."""
        return len(self.rows) == 1 and len(self.columns) == 1

    def every(self) -> tuple[Operation, ...]:
        """Return the operations in order."""
        return tuple(said.operation for row in self.rows for said in row)

    def under(self, column: Said) -> tuple[Operation, ...]:
        """Return the operations of one column."""
        boxes = (said for row in self.rows for said in row)
        return tuple(said.operation for said in boxes if said.frame == column.frame)


def together(operations: Iterable[Operation], bench: Bench) -> tuple[Deeds, ...]:
    """Return the operations of a step, those that say the same of different parts as one."""
    rows: list[list[Said]] = []
    for operation in operations:
        said = Said(operation, sentence(operation, bench))
        if rows and _goes_on(rows[-1], said):
            rows[-1].append(said)
        else:
            rows.append([said])
    return _joined(rows)


def _goes_on(row: list[Said], said: Said) -> bool:
    """Whether the operation is a second box of the row: another deed on the same part."""
    first = row[0]
    sawn = bool(first.operation.board_cuts and said.operation.board_cuts)
    return (
        len(row) == 1
        and first.sentence.thing is not None
        and said.sentence.thing is not None
        and subject(first.operation) == subject(said.operation)
        and (sawn or first.frame != said.frame)
        and first.heading != said.heading
    )


def _joined(rows: list[list[Said]]) -> tuple[Deeds, ...]:
    """Join rows that add no sentence to those of the row which begins the block."""
    found: list[list[Row]] = []
    for row in rows:
        known = {said.frame for said in found[-1][0]} if found else set()
        if all(said.sentence.thing and said.frame in known for said in row):
            found[-1].append(tuple(row))
        else:
            found.append([tuple(row)])
    return tuple(block for group in found for block in _worth_columns(group))


def _worth_columns(rows: list[Row]) -> tuple[Deeds, ...]:
    """Return one block, or each box on its own where a single part has two deeds."""
    if len(rows) == 1:
        return tuple(Deeds(((said,),)) for said in rows[0])
    return (Deeds(tuple(rows)),)
