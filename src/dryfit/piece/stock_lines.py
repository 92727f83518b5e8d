"""Lines of wood on hand and of what the yard sells, sums worked out."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction

from dryfit.diagnostics import Diagnostic, Hint, Severity, Span
from dryfit.notes.tree import HaveLine, Number, SizeWord, Sum
from dryfit.piece.declared import PART_DIMENSIONS, Avoid, Have, Price
from dryfit.piece.sheet_words import has_grain, is_sheet
from dryfit.piece.sums import Sums
from dryfit.piece.written_sizes import size_words

Sizes = tuple[Fraction | None, Fraction | None, Fraction | None]
_Reach = tuple[Fraction, Fraction]

_ZERO = Fraction(0)
_MOISTURE = "moisture"
_CUT_OF_SHEETS = ("board", "offcut", "strip")
"""What a piece of sheet goods is called too."""


def stock_of(line: HaveLine, sums: Sums, first: str) -> Have:
    """Return boards that are there, or that can be bought; findings gather in `sums`.

    `first` is the size that stands first in a bare triple.
    Findings: slab-width, waney-unclear, stock-word-unfit, zone-unclear, zone-on-several.
    """
    offcut = line.kind == "offcut"
    if line.kind in _CUT_OF_SHEETS and line.timber is not None and is_sheet(line.timber):
        line = replace(line, kind="sheet")
    words = size_words(line.sizes, first)
    length, width, thickness = (
        sums.size(words[dimension].amount) if dimension in words else None
        for dimension in PART_DIMENSIONS
    )
    other = _other_width(line, words, sums)
    marks = {word: sums.size(amount) or _ZERO for word, amount in line.marks if word != _MOISTURE}
    widest = None if width is None else max(width, other or width)
    _unfit(line, sums)
    return Have(
        line.count or 1,
        line.kind,
        line.timber,
        (length, width, thickness),
        line.state == "rough" or (line.state is None and line.waney is not None),
        line.text,
        line.span,
        cup=marks.get("cup", _ZERO),
        bow=marks.get("bow", _ZERO),
        twist=marks.get("twist", _ZERO),
        moisture=_moisture_of(line),
        hit_and_miss=line.state == "hit and miss",
        other_width=other,
        waney=_waney(line, sums),
        grain=_has_grain(line),
        grain_said=line.grain is not None or line.kind != "sheet",
        measured=sums.size(line.measures) if line.measures is not None else None,
        avoid=tuple(_zones(line, length, widest, sums)),
        price=_price(line),
        at_most=line.at_most,
        offcut=offcut,
        state_said=line.state is not None or line.kind == "sheet",
    )


def _other_width(line: HaveLine, words: dict[str, SizeWord], sums: Sums) -> Fraction | None:
    """Return how wide the other end is, where the line says so."""
    if line.other is None:
        return None
    at, amount = line.other
    if words.get("width") is not line.sizes[at]:
        _tell(
            sums,
            "slab-width",
            Severity.ERROR,
            "only the width may be another at the other end",
            line.sizes[at].span,
            "write the smaller of both sizes",
        )
        return None
    return sums.size(amount)


def _moisture_of(line: HaveLine) -> Fraction | None:
    """Return the percent of moisture that a line is marked with, or None."""
    return next(
        (
            amount.value
            for word, amount in line.marks
            if word == _MOISTURE and isinstance(amount, Number)
        ),
        None,
    )


def _waney(line: HaveLine, sums: Sums) -> int:
    if line.waney is None:
        return 0
    if line.waney.edges is None:
        _tell(
            sums,
            "waney-unclear",
            Severity.QUESTION,
            "one waney edge, or two? both are taken to be sawn off",
            line.waney.span,
            "write `waney both edges` or `waney one edge`",
        )
        return 2
    return line.waney.edges


def _unfit(line: HaveLine, sums: Sums) -> None:
    """Ask about words that can be said of sheets alone, or of boards alone."""
    for span, message in _unfitting(line):
        hint = "leave it out: it changes nothing"
        _tell(sums, "stock-word-unfit", Severity.QUESTION, message, span, hint)


def _unfitting(line: HaveLine) -> Iterator[tuple[Span, str]]:
    sheet = line.kind == "sheet"
    if sheet and line.waney is not None:
        yield line.waney.span, "a sheet has no bark"
    if sheet and line.state is not None:
        yield line.span, f"sheets are not {line.state}"
    if not sheet and line.grain is not None:
        yield line.span, f"a {line.kind} has a grain, along its length"
    if not sheet and line.measures is not None:
        yield line.measures.span, f"the thickness of a {line.kind} is what it measures"


def _has_grain(line: HaveLine) -> bool:
    if line.kind != "sheet":
        return True
    return has_grain(line.timber) if line.grain is None else line.grain


def _price(line: HaveLine) -> Price | None:
    price = line.price
    return None if price is None or price.per is None else Price(price.amount, price.per)


# --- bad places


def _zones(
    line: HaveLine, length: Fraction | None, width: Fraction | None, sums: Sums
) -> Iterator[Avoid]:
    """Yield the bad places of a board; what counts from the other side needs its size."""
    count = line.count or 1
    if line.zones and count > 1:
        _tell(
            sums,
            "zone-on-several",
            Severity.QUESTION,
            f"which of the {count}? all are taken to have it",
            line.zones[0].span,
            f"write the {line.kind} that has it on a line of its own",
        )
    for zone in line.zones:
        along = _reaches(zone.along, length, sums)
        across = _reaches(zone.across, width, sums)
        if along is None or across is None:
            continue
        for one in along:
            for other in across:
                yield Avoid(one, other, zone.why, zone.span)


def _reaches(
    reach: tuple[Sum, Sum, str] | None, whole: Fraction | None, sums: Sums
) -> Sequence[_Reach | None] | None:
    """Return the reaches from the left end or the near edge; None where one is unknown."""
    if reach is None:
        return (None,)
    start, end, side = reach
    ends = [sums.length(start), sums.length(end)]
    if ends[0] is None or ends[1] is None:
        return None
    low, high = sorted(each for each in ends if each is not None)
    if low == high:
        _tell(
            sums,
            "zone-unclear",
            Severity.ERROR,
            "this begins and ends at the same place",
            end.span,
            sums.display.examples("write from where to where it reaches, such as `{300} to {380}`"),
        )
        return None
    near, far = (low, high), None if whole is None else (whole - high, whole - low)
    if side in ("right end", "far edge", "one edge"):
        return None if far is None else (far,)
    if side in ("both ends", "both edges"):
        return (near,) if far is None else (near, far)
    return (near,)


def _tell(sums: Sums, code: str, severity: Severity, message: str, span: Span, hint: str) -> None:
    sums.findings.append(Diagnostic(code, severity, message, span, hints=(Hint(hint),)))
