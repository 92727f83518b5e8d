"""All wood of the notes: what is on hand, and what the yard sells; loaded where there is some."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from collections.abc import Set as AbstractSet
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import partial

from dryfit.diagnostics import Diagnostic, Hint, Severity
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


Made = AbstractSet[tuple[str | None, Fraction | None]]
"""Timber and thickness, in mm, of all parts."""


def as_measured(wood: Wood, measured: Sequence[Measured], made: Made, sums: Sums) -> Wood:
    """Return the wood with each sheet as thick as its line or a ``measured`` line says.

    A sheet to buy measures as those of its name that are on hand.  What is `made` of a sheet that
    measures otherwise than the first of its name is written with its own thickness.
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
    stock: list[Have] = []
    for have in wood.stock:
        found = _found(have, taken)
        if found is None or found.taken == have.measured:
            stock.append(have)
        elif found.span not in own:
            if have.measured is not None:
                sums.findings.append(
                    _measured_twice(have, have.measured, found, sums, others=False)
                )
            stock.append(replace(have, measured=found.taken))
        else:
            thick = have.sizes[2] if have.measured is None else have.measured
            if thick != found.taken and (have.timber, thick) not in made:
                sums.findings.append(_measured_twice(have, have.measured, found, sums, others=True))
            stock.append(have)
    return Wood(tuple(stock), tuple(_to_buy(have, _found(have, taken)) for have in wood.yard))


def _found(have: Have, taken: Mapping[tuple[str, Fraction | None], Measured]) -> Measured | None:
    return taken.get((have.timber or "", have.sizes[2])) if have.kind == "sheet" else None


def _to_buy(have: Have, found: Measured | None) -> Have:
    if found is None or have.measured is not None:
        return have
    return replace(have, measured=found.taken, measure_said=False)


def _measured_twice(
    have: Have, measured: Fraction | None, found: Measured, sums: Sums, *, others: bool
) -> Diagnostic:
    say = partial(sums.display.with_unit, fitted=True)
    told = say(found.taken)
    left = ", and none comes out of this one" if others else ""
    bare = sums.display.shown(found.taken, fitted=True)
    if measured is None:
        here, figures = "is not measured", {"there": found.taken}
        hint = f"measure it; where it is the same, add `measures {bare}`"
    else:
        here, figures = f"measures {say(measured)}", {"here": measured, "there": found.taken}
        own = sums.display.shown(measured, fitted=True)
        hint = (
            "keep the figure of the sheet that the parts are made of; parts of this one have "
            f"`{own} thick` in their lines"
        )
    return Diagnostic(
        "sheet-measured-twice",
        Severity.QUESTION,
        f"this sheet {here}, and line {found.span.line} says {told}: "
        f"the parts are planned {told} thick{left}",
        have.span,
        figures=figures,
        hints=(Hint(hint),),
    )
