"""What is only seen in the notes as a whole: names twice, lines missing or doubled (TRADE H38)."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from collections.abc import Set as AbstractSet

from dryfit.diagnostics import Diagnostic, Hint, Note, Severity
from dryfit.kinds.joints import is_beside
from dryfit.notes.tree import (
    GlueLine,
    Join,
    JointLine,
    JointSpec,
    MoistLine,
    OverallLine,
    PartsLine,
    PieceLine,
    ShopAirLine,
    StandsAtLine,
    Statement,
    TimberLine,
    UnitsLine,
    ValueLine,
)
from dryfit.quantities import Display

_ONCE: dict[type[Statement], str] = {
    PieceLine: "piece",
    UnitsLine: "units",
    OverallLine: "overall",
    TimberLine: "timber",
    MoistLine: "wood at",
    ShopAirLine: "shop at",
    StandsAtLine: "stands at",
}
_TWICE: dict[type[Statement], str] = {
    PieceLine: "piece-twice",
    UnitsLine: "units-twice",
    OverallLine: "overall-twice",
    TimberLine: "timber-twice",
    MoistLine: "air-twice",
    ShopAirLine: "air-twice",
    StandsAtLine: "air-twice",
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


def overall_missing(statements: Sequence[Statement]) -> Iterator[Diagnostic]:
    """Yield an error when there are parts but no overall size; at the piece's or first part's."""
    parts = [statement for statement in statements if isinstance(statement, PartsLine)]
    if not parts or any(isinstance(statement, OverallLine) for statement in statements):
        return
    titles = [statement for statement in statements if isinstance(statement, PieceLine)]
    units = [statement.unit for statement in statements if isinstance(statement, UnitsLine)]
    display = Display.of_unit(units[0]) if units else Display()
    yield Diagnostic(
        "overall-missing",
        Severity.ERROR,
        "the overall size of the piece is missing",
        (titles or parts)[0].span,
        hints=(
            Hint(
                display.examples("add a line such as `overall {420} wide, {300} deep, {240} high`")
            ),
        ),
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
            if isinstance(clause, JointSpec) and not _has_place(clause, statement):
                yield Diagnostic(
                    "joint-without-host",
                    Severity.ERROR,
                    f"{clause.kind}: into what?",
                    clause.span,
                    hints=(Hint(f"name the part it goes into: `{clause.span.text()} into ...`"),),
                )


def _has_place(spec: JointSpec, line: PartsLine) -> bool:
    """Return whether a joint needs no host: of boards side by side, or screws in a rabbet."""
    laid = any(isinstance(each, Join) and each.rabbeted for each in line.clauses)
    return is_beside(spec.kind) or (laid and spec.kind == "screws")


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
    return Diagnostic(
        _TWICE[type(statement)],
        Severity.ERROR,
        f"there is already a line `{_ONCE[type(statement)]}` on line {first.span.line}",
        statement.span,
        notes=(Note("first written here", first.span),),
        hints=(Hint("keep one of the two"),),
    )
