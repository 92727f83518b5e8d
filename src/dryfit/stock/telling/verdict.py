"""The verdict on the wood in words: enough with which margin, or not, and how sure that is."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction

from dryfit.stock.laid_out import BoardLayout, FirstToBuy, LaidOut
from dryfit.stock.laying.reasons import listed
from dryfit.stock.telling.in_words import bark_in_words, bought_in_words, from_line, priced
from dryfit.stock.telling.said import Said, between, times
from dryfit.stock.telling.short import NOT_PROVED, capital, short_in_words, untold_in_words

TIGHT = Fraction(10)
"""Blanks that could not be so much longer or wider lie tight, mm (M28, common practice)."""


def verdict_in_words(laid: LaidOut, written: Mapping[str, str]) -> tuple[Said, ...]:
    """Return the verdict in one sentence, then what it rests on; `written` as `written_names`."""
    proofs = (f"{capital(proof)}{'' if proof.endswith('.') else '.'}" for proof in laid.proofs)
    return (_verdict(laid, written), *((proof,) for proof in proofs), *_besides(laid))


def boards_in_words(layouts: Sequence[BoardLayout]) -> str:
    """Return how many boards: ``1 board``, ``3 sheets``, ``2 boards and 1 slab``."""
    kinds = Counter(layout.board.line.kind for layout in layouts)
    return listed([f"{count} {kind}{'s' if count > 1 else ''}" for kind, count in kinds.items()])


def named_board(laid: LaidOut, label: str) -> str:
    """Return a board by its kind and letter: ``board A``, ``sheet C``."""
    kinds = [board.line.kind for board in laid.boards if board.label == label]
    return f"{kinds[0] if kinds else 'board'} {label}"


def _besides(laid: LaidOut) -> Iterator[Said]:
    """Yield how the parts are made otherwise than usual, and which were not laid out."""
    if laid.way:
        serves = laid.verdict == "enough"
        yield (f"{'So that the wood serves' if serves else 'As it is laid out here'}: {laid.way}.",)
    if is_tight(laid) and laid.first_to_buy is not None:
        yield _first_to_buy(laid.first_to_buy)
    untold = untold_in_words(laid)
    if untold and laid.blanks:
        yield (f"Not laid out: {untold}.",)
    placed = laid.placed
    nowhere = [blank.name for blank in laid.blanks if blank.name not in placed]
    if nowhere and any(each.at_yard for each in laid.buy):
        yield (f"Also with what is bought these lie on no board: {', '.join(nowhere)}.",)


def _first_to_buy(first: FirstToBuy) -> Said:
    """Return the board to buy first, and what it gives (M28)."""
    board = first.board
    what = f"Buy first, so that one more {first.blank.subject} blank can be had: "
    if board.at_yard:
        price = priced(board.price, (board,))
        place = f" ({from_line(board)}){f': {price}' if price else ''}."
        return (what, "1 of ", *bought_in_words(board), place)
    wood = f" of {board.line.timber}" if board.line.timber else ""
    least = between((times(board.line.sizes), *bark_in_words(board.line)), ", ")
    state = "" if board.line.rough or board.line.kind == "sheet" else "planed "
    return (what, f"a {state}{board.line.kind}{wood} of at least ", *least, ".")


def _verdict(laid: LaidOut, written: Mapping[str, str]) -> Said:
    if not laid.blanks:
        return (f"No verdict: {untold_in_words(laid)}.",)
    if laid.verdict == "enough":
        holds = "holds" if len(laid.layouts) == 1 else "hold"
        boards = f"{boards_in_words(laid.layouts)} {holds}"
        blanks = "the one blank" if len(laid.blanks) == 1 else f"all {len(laid.blanks)} blanks"
        tight = "Tight" if is_tight(laid) else "Room to spare"
        enough = "Enough wood for what is laid out" if laid.unlisted else "Enough wood"
        return (f"{enough}: {boards} {blanks}. {tight}: ", *_margin(laid), ".")
    return (f"{capital(short_in_words(laid, written))}. {capital(rests_on(laid))}.",)


def rests_on(laid: LaidOut) -> str:
    """Return how sure it is that there is not enough wood."""
    if laid.verdict == "not enough":
        return (
            f"no way of cutting{' short of resawing' if _could_be_resawn(laid) else ''} can do it"
        )
    return NOT_PROVED


def _could_be_resawn(laid: LaidOut) -> bool:
    """Return whether a board on hand is twice as thick as a blank that lies nowhere on hand.

    What is missing might be had by sawing such a board into leaves (TRADE A8).
    """
    thick = max((board.sizes[2] for board in laid.boards if board.on_hand), default=Fraction(0))
    there = {one.blank.name for each in laid.layouts if each.board.on_hand for one in each.placed}
    return any(
        2 * (blank.thickness - blank.allowance[2]) < thick
        for blank in laid.blanks
        if blank.name not in there and blank.leaves == 1
    )


def _margin(laid: LaidOut) -> Said:
    spare = "with a spare" if has_spare(laid) else "without a spare"
    if laid.spare_room is None:
        return (f"{spare}; how close the blanks lie was not worked out",)
    closest = f"where they lie closest, on {named_board(laid, laid.tightest)}"
    if laid.spare_room <= 0:
        return (f"{spare}, but no blank could be longer or wider {closest}",)
    return (f"{spare}; the blanks could be ", laid.spare_room, f" larger {closest}")


def is_tight(laid: LaidOut) -> bool:
    """Return whether the wood is enough without margin: under 10 mm, or no spare (M28)."""
    if laid.verdict != "enough":
        return False
    return not has_spare(laid) or (laid.spare_room is not None and laid.spare_room < TIGHT)


def has_spare(laid: LaidOut) -> bool:
    """Return whether a spare blank is laid out, or a board that could stand in stays whole."""
    spare = any(each.blank.what == "spare" for lay in laid.layouts for each in lay.placed)
    return spare or laid.spare_board is not None
