"""What is done and what was spoiled, checked against the names of the piece."""

from __future__ import annotations

from collections.abc import Iterable
from difflib import get_close_matches

from dryfit.diagnostics import Diagnostic, Hint, Severity, Span
from dryfit.notes.names import canonical
from dryfit.notes.tree import DeedDone, DoneLine, SpoiledLine
from dryfit.piece.declared import DeclaredPart, Done, Spoiled, thing_of
from dryfit.piece.names import Names, full_name

ID_SIGN = " / "


def done_deeds(lines: Iterable[DoneLine], names: Names) -> tuple[Done, ...]:
    """Return the operations that are done; their ids are compared with the plan's later.

    Findings: done-without-operation, done-unknown, day-unclear.
    """
    found: list[Done] = []
    for line in lines:
        date, clock = line.moment or (None, None)
        if date is not None and not _is_date(date):
            _add(
                names,
                "day-unclear",
                f"`{date}` is not a day",
                line.span,
                "write it as year-month-day, such as `on 2026-12-05 at 14:10`",
            )
            continue
        found += (
            Done(deed.operation, deed.count, date, clock, deed.span)
            for deed in line.deeds
            if _names_something(deed, names)
        )
    return tuple(found)


def spoiled_copies(
    lines: Iterable[SpoiledLine], parts: Iterable[DeclaredPart], names: Names
) -> tuple[Spoiled, ...]:
    """Return how many copies of which parts must be made again.

    Findings: unknown-part, spoiled-more-than-there-are.
    """
    counts = {part.name: part.count for part in parts}
    found: list[Spoiled] = []
    for item in (item for line in lines for item in line.items):
        if not names.is_part(item.reference):
            continue
        name, count = full_name(item.reference), item.count or 1
        if count > counts.get(name, count):
            _add(
                names,
                "spoiled-more-than-there-are",
                f"{count} of {name} are spoiled, but the piece has {counts[name]}",
                item.span,
                "write how many must be made again",
            )
        else:
            found.append(Spoiled(name, count, item.span))
    return tuple(found)


def _names_something(deed: DeedDone, names: Names) -> bool:
    subject, sign, _ = deed.operation.partition(ID_SIGN)
    if not sign:
        _add(
            names,
            "done-without-operation",
            f"what was done to `{subject}`?",
            deed.span,
            "write the operation as the booklet names it, such as "
            f"`{_counted(deed.count, subject, names)} / thickness`",
        )
        return False
    known = {*names.parts, *names.stages, *names.unreadable}
    words = subject.split(" ")
    # "end frame 1" is one of several glue-ups, "upper frame > rail" a part inside a pattern.
    named = {canonical(subject), canonical(" ".join(words[:-1])), thing_of(subject)}
    if known & named or not known or _may_be_measured(subject, names):
        return True
    near = get_close_matches(subject, sorted(known), n=1)
    hint = f"did you mean `{near[0]}`?" if near else "look it up in the booklet"
    _add(names, "done-unknown", f"nothing here is called `{subject}`", deed.span, hint)
    return False


def _counted(count: int | None, subject: str, names: Names) -> str:
    """Return the subject as a line of what is done names it: ``2 of leg`` for ``2 legs``."""
    first, _, rest = subject.partition(" ")
    if count is None and first.isdigit() and canonical(rest) in names.parts:
        count, subject = int(first), rest
    name = canonical(subject) if canonical(subject) in names.parts else subject
    return name if count is None else f"{count} of {name}"


def _may_be_measured(subject: str, names: Names) -> bool:
    # "base length / measure": the subject is a measurement of a glue-up.
    return any(subject.startswith(f"{name} ") for name in (*names.stages, *names.parts))


def _is_date(text: str) -> bool:
    parts = text.split("-")
    if len(parts) != len(("year", "month", "day")) or not all(part.isdigit() for part in parts):
        return False
    year, month, day = (int(part) for part in parts)
    return year >= 2000 and 1 <= month <= 12 and 1 <= day <= 31


def _add(names: Names, code: str, message: str, span: Span, hint: str) -> None:
    names.findings.append(Diagnostic(code, Severity.ERROR, message, span, hints=(Hint(hint),)))
