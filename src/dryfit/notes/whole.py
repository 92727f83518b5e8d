"""What can only be seen in the notes as a whole: names twice, lines that are missing or doubled."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from collections.abc import Set as AbstractSet

from dryfit.diagnostics import Diagnostic, Hint, Note, Severity
from dryfit.notes.reading.near import distance, nearest
from dryfit.notes.reading.words import PHRASES
from dryfit.notes.tree import (
    GlueLine,
    JointLine,
    JointSpec,
    OpeningLine,
    OverallLine,
    PartsLine,
    PieceLine,
    Statement,
    TimberLine,
    UnitsLine,
    ValueLine,
)

_ONCE = {PieceLine: "piece", UnitsLine: "units", OverallLine: "overall", TimberLine: "timber"}
_SHORTEST_NEAR = 5
_OF_A_PART = ("length", "width", "thickness")
_OF_THE_WHOLE = ("width", "depth", "height")
_SIZE_WORDS = {
    word: value
    for word, meanings in PHRASES.items()
    for kind, value in meanings
    if kind in ("DIM", "DIMADJ")
}


def without_doubles(
    statements: Sequence[Statement],
) -> tuple[tuple[Statement, ...], list[Diagnostic]]:
    """Return the statements whose name or kind did not occur before, and findings on the rest."""
    kept: list[Statement] = []
    findings: list[Diagnostic] = []
    names: dict[str, PartsLine | GlueLine | ValueLine] = {}
    once: dict[type[Statement], Statement] = {}
    for statement in statements:
        finding = None
        if isinstance(statement, PartsLine | GlueLine | ValueLine):
            first = names.setdefault(statement.name, statement)
            finding = None if first is statement else _name_twice(statement, first)
        elif type(statement) in _ONCE:
            earlier = once.setdefault(type(statement), statement)
            finding = None if earlier is statement else _line_twice(statement, earlier)
        if finding:
            findings.append(finding)
        else:
            kept.append(statement)
    return tuple(kept), findings


def near_values(statements: Iterable[Statement]) -> Iterator[Diagnostic]:
    """Yield a question for each value whose name is one letter from an earlier one's."""
    earlier: list[ValueLine] = []
    for statement in statements:
        if not isinstance(statement, ValueLine):
            continue
        for other in earlier:
            if _nearly_same(statement.name, other.name):
                yield Diagnostic(
                    "near-values",
                    Severity.QUESTION,
                    f"is `{statement.name}` the same as `{other.name}` on line {other.span.line}?",
                    statement.name_span,
                    notes=(Note("the other value", other.name_span),),
                    hints=(Hint("give one of them a name that is easier to tell apart"),),
                )
                break
        earlier.append(statement)


def misleading_values(statements: Iterable[Statement]) -> Iterator[Diagnostic]:
    """Yield a warning for each value whose name reads as something else.

    ``post thick`` reads as the thickness of the posts, ``mesured ply`` was to be a measurement.
    """
    known = list(statements)
    parts = {each.name for each in known if isinstance(each, PartsLine)}
    spaces = {each.name for each in known if isinstance(each, OpeningLine)}
    for value in known:
        if not isinstance(value, ValueLine):
            continue
        first, _, last = value.name.rpartition(" ")
        size = _SIZE_WORDS.get(last)
        if (size in _OF_A_PART and first in parts) or (size in _OF_THE_WHOLE and first in spaces):
            yield Diagnostic(
                "value-like-a-size",
                Severity.WARNING,
                f"`{value.name_span.text()}` reads as the {size} of `{first}`",
                value.name_span,
                hints=(Hint(f"give the value another name; the part's own is `{first}.{size}`"),),
            )
        opener, blank, _ = value.name.partition(" ")
        if blank and nearest(opener, ("measured",)):
            yield Diagnostic(
                "measured-mistyped",
                Severity.WARNING,
                f"this makes a value called `{value.name_span.text()}`: was it measured?",
                value.name_span,
                hints=(Hint("a measurement begins with `measured`"),),
            )


def overall_missing(statements: Sequence[Statement]) -> Iterator[Diagnostic]:
    """Yield an error when there are parts but no overall size; at the piece's or first part's."""
    parts = [statement for statement in statements if isinstance(statement, PartsLine)]
    if not parts or any(isinstance(statement, OverallLine) for statement in statements):
        return
    titles = [statement for statement in statements if isinstance(statement, PieceLine)]
    yield Diagnostic(
        "overall-missing",
        Severity.ERROR,
        "the overall size of the piece is missing",
        (titles or parts)[0].span,
        hints=(Hint("add a line such as `overall 420 wide, 300 deep, 240 high`"),),
    )


def joints_without_host(
    statements: Sequence[Statement], named_unread: AbstractSet[str]
) -> Iterator[Diagnostic]:
    """Yield an error for a joint on a part's line when no line says what it goes into.

    Of parts that are named on a line which could not be read, nothing is said.
    """
    joined = named_unread | {
        guest.name
        for statement in statements
        if isinstance(statement, JointLine)
        for guest in statement.guests
    }
    for statement in statements:
        if not isinstance(statement, PartsLine) or statement.name in joined:
            continue
        for clause in statement.clauses:
            if isinstance(clause, JointSpec):
                yield Diagnostic(
                    "joint-without-host",
                    Severity.ERROR,
                    f"{clause.kind}: into what?",
                    clause.span,
                    hints=(Hint(f"name the part it goes into: `{clause.span.text()} into ...`"),),
                )


def _name_twice(
    statement: PartsLine | GlueLine | ValueLine, first: PartsLine | GlueLine | ValueLine
) -> Diagnostic:
    written = statement.name_span.text()
    before = first.name_span.text()
    same = "" if written == before else f": `{before}` and `{written}` count as the same name"
    return Diagnostic(
        "name-twice",
        Severity.ERROR,
        f"`{written}` is already on line {first.span.line}{same}",
        statement.name_span,
        notes=(Note("first written here", first.name_span),),
        hints=(Hint(_another_name(statement, first)),),
    )


def _another_name(
    statement: PartsLine | GlueLine | ValueLine, first: PartsLine | GlueLine | ValueLine
) -> str:
    if {type(statement), type(first)} == {GlueLine, PartsLine}:
        return (
            "a glue-up joins several parts and has a name of its own, such as `glue up base: ...`; "
            "a panel of staves is glued by its own line, with `glued from`, and needs no glue-up"
        )
    return "give one of them another name, or put both on one line"


def _line_twice(statement: Statement, first: Statement) -> Diagnostic:
    word = _ONCE[type(statement)]
    return Diagnostic(
        f"{word}-twice",
        Severity.ERROR,
        f"there is already a line `{word}` on line {first.span.line}",
        statement.span,
        notes=(Note("first written here", first.span),),
        hints=(Hint("keep one of the two"),),
    )


def _nearly_same(first: str, second: str) -> bool:
    if min(len(first), len(second)) < _SHORTEST_NEAR or distance(first, second, 1) > 1:
        return False
    # "gap a" and "gap b" are told apart by a word of one letter, and on purpose.
    words = zip(first.split(" "), second.split(" "), strict=False)
    return all(one == other or min(len(one), len(other)) > 1 for one, other in words)
