"""The shop's inventory: files of ``have`` and ``buy`` lines beside the notes."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path, PurePosixPath, PureWindowsPath

from dryfit.diagnostics import Diagnostic, Findings, Hint, Severity
from dryfit.notes import parse, source_of
from dryfit.notes.tree import HaveLine, InventoryLine, NoteLine, Notes, UnitsLine

_READ = (HaveLine, UnitsLine, NoteLine)
_OF_PIECES = frozenset({"overall-missing"})
"""What is missing in a file that describes no piece."""
_MOST_BYTES = 4_000_000
"""More than any notes can have: what lies beyond is told as too long."""


def inventories(notes: Notes, folder: Path) -> tuple[tuple[Notes, ...], Findings]:
    """Return the inventories that the notes name, in their order, and what is wrong with them.

    They lie in `folder`, that of the notes, or below.  A file that cannot be read is left out, and
    so is a line that is none of stock.
    Findings: inventory-missing, inventory-outside, inventory-twice, inventory-line, those of texts
    and lines.
    """
    read: dict[Path, Notes] = {}
    findings: list[Diagnostic] = []
    for line in (each for each in notes.statements if isinstance(each, InventoryLine)):
        path = _path(line, folder)
        if isinstance(path, Diagnostic):
            findings.append(path)
        elif path.resolve() in read:
            findings.append(
                _warning(
                    line,
                    "inventory-twice",
                    f"`{line.path}` is named twice: its wood is counted once",
                    "keep one of the lines",
                )
            )
        else:
            found, in_file = _read(line, path)
            findings += in_file
            if found is not None:
                read[path.resolve()] = found
    return tuple(read.values()), tuple(findings)


def _path(line: InventoryLine, folder: Path) -> Path | Diagnostic:
    """Return where the file is, or why it is not read."""
    written, windows = PurePosixPath(line.path), PureWindowsPath(line.path)
    parts = {*written.parts, *windows.parts}
    absolute = written.is_absolute() or windows.is_absolute() or bool(windows.drive)
    if not line.path or absolute or ".." in parts or parts & {"~"}:
        return _outside(line)
    path = folder / line.path
    if not path.is_file():
        what = "is no file" if path.exists() else "is not there"
        return _warning(
            line,
            "inventory-missing",
            f"`{line.path}` {what}: its wood is not counted",
            "write the name of a file beside the notes, or in a folder there",
        )
    if not path.resolve().is_relative_to(folder.resolve()):
        return _outside(line)
    return path


def _outside(line: InventoryLine) -> Diagnostic:
    return _warning(
        line,
        "inventory-outside",
        "an inventory lies beside the notes, or in a folder there: this one is not read",
        "write the name alone, such as `stock from offcuts.dryfit`",
    )


def _read(line: InventoryLine, path: Path) -> tuple[Notes | None, Findings]:
    try:
        with path.open("rb") as file:
            data = file.read(_MOST_BYTES)
    except OSError as error:
        why = error.strerror or str(error)
        return None, (
            _warning(
                line,
                "inventory-missing",
                f"`{line.path}` cannot be read ({why}): its wood is not counted",
                "look whether you may read it",
            ),
        )
    source = source_of(str(path), data)
    if isinstance(source, Diagnostic):
        return None, (source,)
    notes, in_notes = parse(source)
    findings = tuple(each for each in in_notes if each.code not in _OF_PIECES)
    return notes, (*findings, *_others(notes))


def _others(notes: Notes) -> Iterator[Diagnostic]:
    """Yield what an inventory does not hold."""
    for line in notes.statements:
        if isinstance(line, _READ):
            continue
        yield Diagnostic(
            "inventory-line",
            Severity.WARNING,
            "an inventory lists wood: this line is not read",
            line.span,
            hints=(Hint("keep `units`, `have` and `buy` lines in it, and `#` remarks"),),
        )


def _warning(line: InventoryLine, code: str, message: str, hint: str) -> Diagnostic:
    return Diagnostic(code, Severity.WARNING, message, line.path_span, hints=(Hint(hint),))
