"""The ``stock`` document of the contract (CONTRACTS, stock), keys in its order."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from fractions import Fraction

from dryfit.piece.declared import Avoid
from dryfit.quantities import Display
from dryfit.quantities.as_json import length_json
from dryfit.quantities.display import exact
from dryfit.shop.shop import Shop
from dryfit.stock.laid_out import (
    BoardLayout,
    Bought,
    Fallen,
    LaidOut,
    NamedBlank,
    Placed,
    Reach,
    SawCut,
    StockBoard,
)
from dryfit.stock.telling.in_words import bought_in_words, money, usable_thickness
from dryfit.stock.telling.left_over import left_over
from dryfit.stock.telling.said import spoken

FORMAT = "dryfit-stock/1"
Json = dict[str, object]
_SHARE_DIGITS = 4


def stock_document(
    piece: str | None,
    notes: str,
    laid: LaidOut | None,
    findings: Sequence[object],
    display: Display,
    shop: Shop | None,
) -> Json:
    """Return the document; what was not laid out is null or empty.

    Where the notes name no board of the parts' wood nothing can be enough: the verdict is null.
    """
    head: Json = {"format": FORMAT, "piece": piece, "notes": notes}
    if laid is None or shop is None:
        told: Json = {"verdict": None, "proof": None, "searched": 0}
        lists = ("boards", "blanks", "layouts", "missing", "buy", "left_over")
        return head | told | {name: [] for name in lists} | {"findings": list(findings)}
    layouts = {layout.board.label: layout for layout in laid.layouts}
    prices = _prices(laid)
    return head | {
        "verdict": laid.verdict if laid.boards and laid.blanks else None,
        "proof": "; ".join(laid.proofs) or None,
        "searched": laid.searched,
        "boards": [
            _board(board, layouts.get(board.label), prices, display, shop) for board in laid.boards
        ],
        "blanks": [_blank(blank, display) for blank in laid.blanks],
        "layouts": [_layout(layout, display) for layout in laid.layouts],
        "missing": [
            {"part": each.part, "copies": each.copies, "why": each.why} for each in laid.missing
        ],
        "buy": [_bought(each, display) for each in laid.buy],
        "left_over": list(left_over(laid, display)),
        "findings": list(findings),
    }


def _prices(laid: LaidOut) -> dict[str, Fraction]:
    """Return what one board of each bought line costs, by the place of the line."""
    return {each.line.place: each.price / each.count for each in laid.buy if each.price is not None}


def _board(
    board: StockBoard,
    layout: BoardLayout | None,
    prices: dict[str, Fraction],
    display: Display,
    shop: Shop,
) -> Json:
    long, wide, thick = board.sizes
    price = None if board.on_hand else prices.get(board.line.place)
    usable = usable_thickness(board, layout, display, shop)
    return {
        "id": board.label,
        "line": board.line.span.line,
        "kind": board.line.kind,
        "timber": board.line.timber,
        "length": length_json(long, display),
        "width": length_json(wide, display),
        "thickness": length_json(thick, display, fitted=True),
        "on_hand": board.on_hand,
        "price": money(price),
        "avoid": [_avoid(bad, board) for bad in board.line.avoid],
        "usable_thickness": {
            name: length_json(size, display, fitted=True) for name, size in usable.items()
        },
    }


def _avoid(bad: Avoid, board: StockBoard) -> Json:
    long, wide, _ = board.sizes
    return {
        "along": _reach(bad.along or (Fraction(0), long)),
        "across": _reach(bad.across or (Fraction(0), wide)),
        "why": bad.why,
    }


def _blank(blank: NamedBlank, display: Display) -> Json:
    made = Counter({blank.subject: len(blank.pieces)})
    sizes = zip(
        ("length", "width", "thickness"),
        (blank.length, blank.width, blank.thickness),
        blank.allowance,
        strict=True,
    )
    rows = [(name, length_json(size, display), lost) for name, size, lost in sizes]
    return {
        "name": blank.name,
        "makes": [{"part": part, "copies": count} for part, count in made.items() if count],
        **{name: size for name, size, _ in rows},
        "allowance": {name: length_json(lost, display, fitted=True) for name, _, lost in rows},
        "reason": blank.reason,
    }


def _layout(layout: BoardLayout, display: Display) -> Json:
    return {
        "board": layout.board.label,
        "yield": round(float(layout.used), _SHARE_DIGITS),
        "pieces": [_piece(placed) for placed in layout.placed],
        "cuts": [_cut(cut, display) for cut in layout.cuts],
        "leftovers": [_leftover(fallen) for fallen in layout.fallen],
    }


def _piece(placed: Placed) -> Json:
    return {
        "blank": placed.blank.name,
        "along": _reach(placed.along),
        "across": _reach(placed.across),
        # A strip that is resawn is one blank: its leaves lie in one place.
        "layer": 1,
    }


def _cut(cut: SawCut, display: Display) -> Json:
    return {
        "number": cut.number,
        "after": cut.after,
        "cut": cut.saw,
        "at": length_json(cut.at, display, fitted=True),
        "from": "fresh end" if cut.saw == "crosscut" else "fresh edge",
        "kerf": length_json(cut.kerf, display, fitted=True),
        "stage": cut.stage,
    }


def _leftover(fallen: Fallen) -> Json:
    return {
        "along": _reach(fallen.along),
        "across": _reach(fallen.across),
        "keep": fallen.keep,
    }


def _bought(bought: Bought, display: Display) -> Json:
    return {
        "line": bought.line.span.line,
        "what": spoken(bought_in_words(bought), display),
        "count": bought.count,
        "price": money(bought.price),
    }


def _reach(reach: Reach) -> list[str]:
    return [exact(at) for at in reach]
