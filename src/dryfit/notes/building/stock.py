"""The builders of wood on hand, of what the yard sells, and of the shop's inventory."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from fractions import Fraction

from lark import Token, Tree

from dryfit.diagnostics import Hint
from dryfit.notes.building.counts import checked_count
from dryfit.notes.building.draft import (
    Draft,
    only,
    text_of,
    text_or_none,
    tokens,
    trees,
    union,
)
from dryfit.notes.building.size_checks import check_stock_sizes, check_written
from dryfit.notes.building.sums import number_of, said_size, size_word, sum_in, sums_in
from dryfit.notes.tree import (
    HaveLine,
    InventoryLine,
    Number,
    Operation,
    PriceWords,
    SizeWord,
    Sum,
    WaneyWords,
    ZoneWords,
)
from dryfit.quantities import LENGTH, UNITS, Quantity

Parsed = Tree[Token]

_EDGES = {"one edge": 1, "near edge": 1, "far edge": 1, "both edges": 2}
_AT_A_SIDE = frozenset(
    ["sapwood", "heartwood", "bark", "wane", "split", "check", "crack", "shake", "snipe", "rot"]
)
"""What begins at an end or an edge, so that one figure says how far it reaches."""

_ALONG_AN_EDGE = frozenset(["sapwood", "heartwood", "bark", "wane"])

_ALL_SIZES = 3


@dataclass(slots=True)
class _Told:
    """What a line has said so far: sizes and bad places, whose phrases may stand apart."""

    draft: Draft
    buy: bool
    unit: str | None
    sizes: list[SizeWord] = field(default_factory=list)
    other: list[tuple[int, Sum]] = field(default_factory=list)
    runs: list[Parsed] = field(default_factory=list)
    zones: list[ZoneWords] = field(default_factory=list)
    prices: list[PriceWords] = field(default_factory=list)
    of_zone: bool = False

    def sum(self, amount: Sum) -> Sum:
        """Return a sum with the line's own unit on its bare numbers."""
        return amount if self.unit is None else _in_unit(amount, self.unit)

    def word(self, word: SizeWord) -> SizeWord:
        """Return a size with the line's own unit."""
        return replace(word, amount=self.sum(word.amount))


def have_line(tree: Parsed, draft: Draft) -> HaveLine:
    """Return the statement of ``have 2 boards of ash, 1800 x 160 x 32`` and of a ``buy`` line."""
    nodes = tree.children
    buy = tree.data == "buy"
    own = trees(nodes, "ownunit")
    unit = text_of(tokens(own[0].children, "UNIT")[0]) if own else None
    told = _Told(draft, buy, unit)
    in_inches = (unit or draft.vocabulary.unit) == "in"
    for node in nodes:
        if isinstance(node, Tree):
            _tell(node, told)
    timber = only(trees(nodes, "oftimber"), "the timber", draft)
    state = only(tokens(nodes, "STATE"), "how the wood is planed", draft)
    grain = only(tokens(nodes, "SHEETGRAIN"), "whether it has a grain", draft)
    waney = only(trees(nodes, "barkedge"), "which edges are waney", draft)
    measures = only(trees(nodes, "measures"), "what it measures", draft)
    available = only(trees(nodes, "available"), "how many there are", draft)
    if check_written(told.runs, draft):
        check_stock_sizes(told.sizes, draft, in_inches=in_inches)
    if len(told.prices) > 1:
        draft.error("said-twice", "said twice: the price", told.prices[1].span)
    return HaveLine(
        checked_count(nodes, draft),
        text_of(tokens(nodes, "STOCK")[0]),
        text_of(tokens(timber.children, "PHRASE")[0]) if timber else None,
        tuple(told.sizes),
        text_or_none(state),
        _marks(tree, told),
        draft.line.text.strip(),
        draft.line.whole(),
        buy=buy,
        other=told.other[0] if told.other else None,
        waney=_waney(waney, draft) if waney else None,
        grain=None if grain is None else text_of(grain) == "grain",
        measures=told.sum(sum_in(measures, draft)) if measures else None,
        zones=tuple(told.zones),
        price=told.prices[0] if told.prices else None,
        at_most=checked_count(available.children, draft) if available else None,
        unit=unit,
    )


def inventory_line(tree: Parsed, draft: Draft) -> InventoryLine:
    """Return the statement of ``stock from "offcuts.dryfit"``."""
    text = tokens(tree.children, "TEXT")[0]
    written = text_of(text).strip()
    return InventoryLine(written.strip("\"'").strip(), draft.span(text), draft.line.whole())


def _marks(tree: Parsed, told: _Told) -> tuple[tuple[str, Sum], ...]:
    marks: list[tuple[str, Sum]] = []
    for mark in trees(tree.children, "mark"):
        word, amount = text_of(tokens(mark.children, "MARK")[0]), sum_in(mark, told.draft)
        if any(word == other for other, _ in marks):
            told.draft.error("said-twice", f"said twice: the {word}", told.draft.span(mark))
        if word != "moisture" and tokens(mark.children, "_PERCENT"):
            told.draft.error(
                "unknown-unit",
                f"the {word} of a board is a length, not so much in a hundred",
                told.draft.span(mark),
                Hint(f"write how far it is from flat or straight: `{word} {{4}}`"),
            )
        marks.append((word, amount if word == "moisture" else told.sum(amount)))
    return tuple(marks)


def _tell(node: Parsed, told: _Told) -> None:
    of_zone = node.data in ("zone", "zoneacross")
    if node.data == "stockdims":
        of_zone = told.of_zone and _is_more_of_a_zone(node)
        if of_zone:
            _more(node, "left end", told)
        elif _is_bare_price(node, told):
            number = trees(trees(node.children, "dim")[0].children, "number")[0]
            told.prices.append(_price(number, None, None, node, told.draft))
        else:
            _sizes(node, told)
    elif node.data == "dimset":
        told.sizes.append(told.word(said_size(node, told.draft)))
    elif node.data == "zone":
        _zone(node, told)
    elif node.data == "zoneacross":
        _more(node, text_of(tokens(node.children, "STOCKSIDE")[0]), told)
    elif node.data == "price":
        number = trees(node.children, "number")[0]
        money = text_or_none(next(iter(tokens(node.children, "CURRENCY")), None))
        per = text_or_none(next(iter(tokens(node.children, "PERUNIT")), None))
        told.prices.append(_price(number, per, money, node, told.draft))
    told.of_zone = of_zone


# --- sizes and prices


def _is_bare_price(node: Parsed, told: _Told) -> bool:
    """Return whether a number stands behind all sizes of what is bought."""
    dims = trees(node.children, "dim")
    alone = len(node.children) == len(dims) == 1 and len(dims[0].children) == 1
    return (
        told.buy
        and alone
        and len(told.sizes) == _ALL_SIZES
        and bool(trees(dims[0].children, "number"))
    )


def _sizes(node: Parsed, told: _Told) -> None:
    plain = True
    for dim in trees(node.children, "dim", "fromto"):
        if dim.data == "dim":
            told.sizes.append(told.word(size_word(dim, told.draft)))
            continue
        plain = False
        first, other = sums_in(dim, told.draft)
        word = tokens(dim.children, "DIMADJ", "CUTADJ")
        dimension = text_of(word[0]) if word else None
        told.other.append((len(told.sizes), told.sum(other)))
        told.sizes.append(SizeWord(told.sum(first), dimension, told.draft.span(dim)))
    if plain:
        told.runs.append(node)
    if len(told.other) > 1:
        told.draft.error(
            "slab-width",
            "only the width may be another at the other end",
            told.draft.span(node),
            Hint("write the smaller of both sizes"),
        )
        del told.other[1:]


def _price(
    number: Parsed, per: str | None, currency: str | None, node: Parsed, draft: Draft
) -> PriceWords:
    return PriceWords(number_of(number, draft).value, per, currency, draft.span(node))


def _waney(node: Parsed, draft: Draft) -> WaneyWords:
    side = text_or_none(next(iter(tokens(node.children, "STOCKSIDE")), None))
    if side is not None and side not in _EDGES:
        draft.error(
            "waney-at-an-end",
            "bark runs along the edges of a board, not across its ends",
            draft.span(node),
            Hint("write `waney both edges`, or `waney one edge`"),
        )
    return WaneyWords(_EDGES.get(side) if side else None, draft.span(node))


# --- bad places


def _zone(node: Parsed, told: _Told) -> None:
    why = text_of(tokens(node.children, "DEFECT")[0])
    side = text_or_none(next(iter(tokens(node.children, "STOCKSIDE")), None))
    amounts = _ranged([told.sum(amount) for amount in sums_in(node, told.draft)])
    span = told.draft.span(node)
    if not amounts or (len(amounts) == 1 and (side is None or why not in _AT_A_SIDE)):
        _where(why, node, told.draft)
        return
    told.zones.append(_placed(ZoneWords(why, None, None, span), amounts, side or "left end"))


def _ranged(amounts: list[Sum]) -> list[Sum]:
    """Return the two ends of ``300 - 380``, which is no sum here."""
    if len(amounts) == 1 and isinstance(amounts[0], Operation) and amounts[0].sign == "-":
        return [amounts[0].left, amounts[0].right]
    return amounts


def _more(node: Parsed, side: str, told: _Told) -> None:
    """Take up a phrase that goes on from a bad place: what it is across, or a further one."""
    draft, span = told.draft, told.draft.span(node)
    found = trees(node.children, "fromto")
    amounts = [told.sum(amount) for amount in sums_in(found[0] if found else node, draft)]
    if not told.of_zone or not told.zones:
        if not any(mistake.code == "zone-unclear" for mistake in draft.mistakes):
            draft.error(
                "zone-unclear",
                "what is wrong with the wood there?",
                span,
                Hint("say it before the figures: `knot`, `split`, `sapwood`, or `avoid`"),
            )
        return
    last = told.zones[-1]
    taken = last.across if _is_edge(side) else last.along
    if taken is None:
        told.zones[-1] = _placed(replace(last, span=union(last.span, span)), amounts, side)
    else:
        told.zones.append(_placed(ZoneWords(last.why, None, None, span), amounts, side))


def _placed(zone: ZoneWords, amounts: Sequence[Sum], side: str) -> ZoneWords:
    start, end = amounts if len(amounts) > 1 else (_nothing(amounts[0]), amounts[0])
    reach = (start, end, side)
    return replace(zone, across=reach) if _is_edge(side) else replace(zone, along=reach)


def _nothing(amount: Sum) -> Number:
    return Number(Fraction(0), Quantity(Fraction(0), LENGTH), amount.span)


def _is_edge(side: str) -> bool:
    return side.endswith(("edge", "edges"))


def _is_more_of_a_zone(node: Parsed) -> bool:
    found = trees(node.children, "fromto")
    alone = len(node.children) == len(found) == 1
    return alone and not tokens(found[0].children, "DIMADJ", "CUTADJ")


def _where(why: str, node: Parsed, draft: Draft) -> None:
    word = "avoid" if why == "avoid" else why
    hint = (
        f"write `{word} {{300}} to {{380}}`, counted from the left end; where it is not of the "
        "whole width, behind a comma `{0} to {40} from the edge`"
    )
    if why in _ALONG_AN_EDGE:
        hint = f"write `{word} {{20}} from the edge`, or `from the far edge`, `from both edges`"
    draft.error("zone-unclear", "from where to where does it reach?", draft.span(node), Hint(hint))


# --- a line's own unit


def _in_unit(amount: Sum, unit: str) -> Sum:
    """Return a sum with the unit on its bare numbers; beside ``*`` and ``/`` they are factors."""
    if isinstance(amount, Number) and amount.quantity is None:
        return replace(amount, quantity=Quantity(amount.value * UNITS[unit].size, LENGTH))
    if isinstance(amount, Operation) and amount.sign in "+-":
        left, right = _in_unit(amount.left, unit), _in_unit(amount.right, unit)
        return replace(amount, left=left, right=right)
    return amount
