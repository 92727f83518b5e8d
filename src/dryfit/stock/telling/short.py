"""What wood is missing, in the one wording of terminal, findings and booklet."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from dryfit.stock.laid_out import SPARE, Lacking, LaidOut
from dryfit.stock.laying.reasons import listed

NOT_PROVED = "no layout was found, and no proof that there is none"


def short_in_words(
    laid: LaidOut, written: Mapping[str, str], missing: Iterable[Lacking] | None = None
) -> str:
    """Return that wood is missing, and for what; nothing where it is enough.

    It is a clause: ``not enough wood, for certain: 3 slats are missing``.
    `written` are the names of several copies; `missing` what to name, all without it.
    """
    if laid.verdict == "enough":
        return ""
    found = ", for certain" if laid.verdict == "not enough" else " as far as was searched"
    rows = tuple(laid.missing if missing is None else missing)
    if not rows:
        return f"not enough wood{found}"
    what = listed([lacked(row, written) for row in rows])
    are = "is" if len(rows) == rows[0].copies == 1 else "are"
    return f"not enough wood{found}: {what} {are} missing"


def untold_in_words(laid: LaidOut) -> str:
    """Return that no line tells of the wood of some parts; nothing where lines tell of all."""
    if not laid.unlisted and laid.blanks:
        return ""
    return f"no line tells of the wood for {listed(laid.unlisted) or 'the parts'}"


def capital(words: str) -> str:
    """Return the words with their first letter large."""
    return words[:1].upper() + words[1:]


def counted(name: str, copies: int, written: Mapping[str, str]) -> str:
    """Return copies of a part or staves with their count: ``apron``, ``3 slats``."""
    return name if copies == 1 else f"{copies} {written.get(name, f'{name}s')}"


def lacked(row: Lacking, written: Mapping[str, str]) -> str:
    """Return what has no wood, with its count: ``3 slats``, ``1 spare leg``."""
    if not row.why.startswith(SPARE):
        return counted(row.part, row.copies, written)
    name = row.part if row.copies == 1 else written.get(row.part, f"{row.part}s")
    return f"{row.copies} spare {name}"


def missing_in_words(row: Lacking, written: Mapping[str, str]) -> str:
    """Return what has no wood, and why not: ``3 slats: no board is long enough``."""
    why = row.why.removeprefix(SPARE).removeprefix(f"{row.part}: ")
    return f"{lacked(row, written)}{f': {why}' if why else ''}"
