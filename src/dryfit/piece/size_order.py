"""Sizes in an unlikely order: both readings are told (TRADE K2, H37)."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.notes.tree import PartsLine
from dryfit.piece.declared import PART_DIMENSIONS, Amount
from dryfit.piece.sums import Sums

_ADJECTIVES = {"length": "long", "width": "wide", "thickness": "thick"}


def ask_about_order(
    line: PartsLine, amounts: Mapping[str, Amount | None], first: str, sums: Sums
) -> None:
    """Ask about a part thicker than wide, or with the length as its smallest size.

    Findings: thicker-than-wide, shortest-length.
    """
    sizes = {
        name: amount.known
        for name in PART_DIMENSIONS
        if (amount := amounts.get(name)) is not None and amount.known is not None
    }
    known = {name: size for name, size in sizes.items() if size is not None}
    width, thickness, length = (known.get(name) for name in ("width", "thickness", "length"))
    if sums.unit == "in" and first == "length" and _names_a_board(line):
        return
    if width is not None and thickness is not None and thickness > width:
        _ask(
            line,
            "thicker-than-wide",
            f"{line.name}: the thickness is greater than the width",
            (amounts.get("thickness"), known, first),
            sums,
        )
    elif (
        length is not None
        and len(known) == len(PART_DIMENSIONS)
        and length < min(width or 0, thickness or 0)
    ):
        _ask(
            line,
            "shortest-length",
            f"{line.name}: the length is its smallest size",
            (amounts.get("length"), known, first),
            sums,
        )


def _names_a_board(line: PartsLine) -> bool:
    """Return whether `nominal_sizes` asks about a line."""
    from dryfit.piece.nominal_sizes import names_a_board

    return names_a_board(line)


def _ask(
    line: PartsLine,
    code: str,
    message: str,
    found: tuple[Amount | None, Mapping[str, Fraction], str],
    sums: Sums,
) -> None:
    amount, known, first = found
    sums.findings.append(
        Diagnostic(
            code,
            Severity.QUESTION,
            message,
            amount.span if amount else line.span,
            rule="H37",
            figures={name: size for name, size in known.items() if name != "length"}
            if code == "thicker-than-wide"
            else dict(known),
            hints=(Hint(_readings(known, first, sums)),),
        )
    )


def _readings(known: Mapping[str, Fraction], first: str, sums: Sums) -> str:
    names = [name for name in PART_DIMENSIONS if name in known]
    turned = dict(zip(names, (known[name] for name in reversed(names)), strict=True))
    other = "length" if first == "thickness" else "thickness"
    return (
        f"it is read as {_said(known, sums)}; if {_said(turned, sums)} is meant, name the sizes or "
        f"write `{other} first` on the `units` line"
    )


def _said(sizes: Mapping[str, Fraction], sums: Sums) -> str:
    shown = sums.display.shown
    return ", ".join(
        f"{shown(sizes[name])} {_ADJECTIVES[name]}" for name in PART_DIMENSIONS if name in sizes
    )
