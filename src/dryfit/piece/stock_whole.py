"""All wood of the notes: what is on hand, and what the yard sells; loaded where there is some."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from dryfit.diagnostics import Diagnostic, Hint, Severity, Span
from dryfit.notes.tree import HaveLine
from dryfit.piece.declared import Have, Measured
from dryfit.piece.stock_checks import asked_of_stock, currency_of, inside
from dryfit.piece.stock_lines import stock_of
from dryfit.piece.sums import Sums


@dataclass(frozen=True, slots=True)
class StockList:
    """The lines of one text, with the sums of that text and the size that stands first in it.

    `inventory` is the name of its file where that is not the notes.
    """

    lines: Sequence[HaveLine]
    sums: Sums
    first: str
    inventory: str = ""


@dataclass(frozen=True, slots=True)
class Wood:
    """What is on hand and what can be bought, those of the notes before those of inventories."""

    stock: tuple[Have, ...] = ()
    yard: tuple[Have, ...] = ()


def declared_wood(lists: Sequence[StockList]) -> Wood:
    """Return all wood; findings gather in the sums of each list.

    Findings: those of `stock_of`, `asked_of_stock` and `currency_of`.
    """
    currency, uncounted, mixed = currency_of([line for each in lists for line in each.lines])
    if mixed is not None:
        lists[0].sums.findings.append(mixed)
    stock: list[Have] = []
    yard: list[Have] = []
    for each in lists:
        for line in each.lines:
            have = _with_findings(line, each)
            if have.price is not None:
                priced = replace(have.price, currency=currency)
                told = line.price is not None and line.price.span in uncounted
                have = replace(have, price=None if told else priced)
            (yard if line.buy else stock).append(have)
    return Wood(tuple(stock), tuple(yard))


def _with_findings(line: HaveLine, listed: StockList) -> Have:
    have = stock_of(line, listed.sums, listed.first)
    listed.sums.findings += asked_of_stock(line, have, listed.sums, listed.first)
    have = replace(have, avoid=inside(have.avoid, have), inventory=listed.inventory)
    if line.buy:
        at_most = have.at_most if have.at_most is not None else line.count
        return replace(have, count=1, at_most=at_most)
    return replace(have, price=None)


# --- sheets that were measured


def measured_sheets(stock: Iterable[Have]) -> Iterator[Measured]:
    """Yield, once for a sheet of that name and thickness, what the first such sheet measures."""
    told: set[tuple[str, Fraction]] = set()
    for have in stock:
        thickness = have.sizes[2]
        if have.measured is None or have.timber is None or thickness is None:
            continue
        if (have.timber, thickness) not in told:
            told.add((have.timber, thickness))
            yield Measured(
                "sheet", have.timber, None, thickness, (have.measured,), have.measured, have.span
            )


def as_measured(wood: Wood, measured: Sequence[Measured], sums: Sums) -> Wood:
    """Return the wood with each sheet as thick as its line or a ``measured`` line says.

    Findings (in `sums`): sheet-measured-twice.
    """
    taken: dict[tuple[str, Fraction | None], Measured] = {
        (each.name, each.planned): each
        for each in measured
        if each.kind == "sheet" and each.planned is not None
    }
    own = {have.span for have in wood.stock}
    if not taken:
        return wood
    return replace(wood, stock=tuple(_as_measured(have, taken, own, sums) for have in wood.stock))


def _as_measured(
    have: Have,
    taken: Mapping[tuple[str, Fraction | None], Measured],
    own: set[Span],
    sums: Sums,
) -> Have:
    found = taken.get((have.timber or "", have.sizes[2])) if have.kind == "sheet" else None
    if found is None or have.measured == found.taken:
        return have
    if have.measured is None:
        return have if found.span in own else replace(have, measured=found.taken)
    say = sums.display.with_unit
    told = say(found.taken, fitted=True)
    sums.findings.append(
        Diagnostic(
            "sheet-measured-twice",
            Severity.QUESTION,
            f"this sheet measures {say(have.measured, fitted=True)}, and line {found.span.line} "
            f"says {told}: the parts are planned {told} thick",
            have.span,
            figures={"here": have.measured, "there": found.taken},
            hints=(Hint("keep the figure of the sheet that the parts are made of"),),
        )
    )
    return have if found.span in own else replace(have, measured=found.taken)
