"""The builders of what is said of moisture: of the wood, of the shop, of the place to be."""

from __future__ import annotations

from fractions import Fraction

from lark import Token, Tree

from dryfit.diagnostics import Hint
from dryfit.notes.building.draft import Draft, only, spelled, text_of, tokens, trees
from dryfit.notes.tree import MoistLine, ShopAirLine, StandsAtLine

Parsed = Tree[Token]

_WOOD = (Fraction(4), Fraction(30))
"""Percent of moisture that wood can hold in a shop: above 30 % it is green (Wood Handbook)."""
_AIR = (Fraction(1), Fraction(99))
_CELSIUS = (Fraction(-20), Fraction(60))
"""The tables of moisture in wood that the formula is held against go from -1 to 60 C."""


def moist_line(tree: Parsed, draft: Draft) -> MoistLine:
    """Return the statement of ``wood at 9 %``."""
    percent = _within(_numbers(tree)[0], _WOOD, "the moisture of wood", "%", draft)
    return MoistLine(percent, draft.line.whole())


def shop_air_line(tree: Parsed, draft: Draft) -> ShopAirLine:
    """Return the statement of ``shop at 18 C, 60 % humidity``."""
    celsius = _celsius(tree, draft)
    humid = only(trees(tree.children, "humidity"), "the humidity", draft)
    if humid is None:
        draft.error(
            "humidity-missing",
            "how damp the shop is tells what its wood holds, and the line does not say",
            draft.line.whole(),
            Hint("write it behind: `shop at 18 C, 60 % humidity`"),
        )
        return ShopAirLine(celsius, Fraction(50), draft.line.whole())
    humidity = _within(_numbers(humid)[0], _AIR, "the humidity of air", "%", draft)
    return ShopAirLine(celsius, humidity, draft.line.whole())


def stands_at_line(tree: Parsed, draft: Draft) -> StandsAtLine:
    """Return the statement of ``stands at 40 to 65 % humidity``."""
    air = tokens(tree.children, "AIR")
    kind = text_of(air[0]) if air else "humidity"
    numbers = _numbers(tree)
    limits, what = (
        (_WOOD, "the moisture of wood") if kind == "moisture" else (_AIR, "the humidity of air")
    )
    values = sorted(_within(number, limits, what, "%", draft) for number in numbers)
    return StandsAtLine(_celsius(tree, draft), values[0], values[-1], kind, draft.line.whole())


def _numbers(tree: Parsed) -> list[Token]:
    return [tokens(each.children, "INT", "NUMBER", "MEASURE")[0] for each in _of(tree)]


def _of(tree: Parsed) -> list[Parsed]:
    return trees(tree.children, "number")


def _celsius(tree: Parsed, draft: Draft) -> Fraction | None:
    said = only(trees(tree.children, "temperature"), "the temperature", draft)
    if said is None:
        return None
    number = _numbers(said)[0]
    degrees = spelled(number).value or Fraction(0)
    fahrenheit = text_of(tokens(said.children, "SCALE")[0]) == "F"
    celsius = (degrees - 32) * Fraction(5, 9) if fahrenheit else degrees
    low, high = _CELSIUS
    if not low <= celsius <= high:
        _out_of_range(number, "the temperature", "-20 and 60 C", draft)
        return None
    return celsius


def _within(
    number: Token, limits: tuple[Fraction, Fraction], what: str, unit: str, draft: Draft
) -> Fraction:
    value = spelled(number).value or Fraction(0)
    low, high = limits
    if not low <= value <= high:
        _out_of_range(number, what, f"{low} and {high} {unit}", draft)
    return min(max(value, low), high)


def _out_of_range(number: Token, what: str, limits: str, draft: Draft) -> None:
    draft.error(
        "air-out-of-range",
        f"{what} lies between {limits}, and `{draft.span(number).text()}` does not",
        draft.span(number),
        Hint("see what the meter or the weather station shows"),
    )
