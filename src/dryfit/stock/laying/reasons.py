"""Why the wood on hand is not enough, in words with figures (TRADE H42, A1.5, A5)."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from dryfit.cutting import Proof
from dryfit.placing.model import Model
from dryfit.shop.shop import Shop
from dryfit.stock.blanks.blank import Blank
from dryfit.stock.blanks.rough_sizes import rough_sizes
from dryfit.stock.board_edges import bad_places, usable_face
from dryfit.stock.boards import flat, reserve, serves
from dryfit.stock.laid_out import StockBoard
from dryfit.stock.laying.job import Split, key
from dryfit.stock.laying.outcome import Outcome
from dryfit.stock.saws import exact

_TURNED = (
    "; turned, it fits: where its grain may run either way, write `no grain` on the line of the "
    "sheet"
)
NO_ROOM = "no room is left on the boards on hand"
NOT_SEEN = "no room was found on the boards on hand"


@dataclass(frozen=True, slots=True)
class Reasons:
    """`alone` says, by the key of a blank, why no board gives even one; `proofs` all together."""

    alone: dict[str, str]
    proofs: tuple[str, ...]


def reasons_of(
    outcome: Outcome,
    proved: Outcome,
    boards: Sequence[StockBoard],
    model: Model,
    shop: Shop,
) -> Reasons:
    """Return why blanks find no place among the boards on hand, and what is `proved` of all ways.

    What is said of a part alone is said as it is made; that none is proved of it is no reason.
    """
    teller = Teller(boards, model, shop)
    hopeless = {
        name
        for split, answer in proved.pairs
        for proof in answer.proofs
        if proof.bound == "part"
        for name in (split.blank(part).part.name for part in proof.parts)
    } | {blank.part.name for blank in proved.none}
    alone = {
        key(blank): teller.too_thick(blank) for blank in outcome.none if blank.part.name in hopeless
    }
    for split, answer in outcome.pairs:
        for proof in answer.proofs:
            blank = split.blank(proof.parts[0])
            if proof.bound == "part" and blank.part.name in hopeless:
                alone |= dict.fromkeys(proof.parts, teller.too_large(proof, split))
    together = [
        teller.too_many(proof, split)
        for split, answer in proved.pairs
        for proof in answer.proofs
        if proof.bound != "part"
    ]
    return Reasons(alone, (*dict.fromkeys(alone.values()), *together))


@dataclass(frozen=True, slots=True)
class Teller:
    """Says it, with names and in the maker's unit."""

    boards: Sequence[StockBoard]
    model: Model
    shop: Shop

    def too_thick(self, blank: Blank) -> str:
        """Say that no board is thick enough for a blank, or flat enough."""
        say = self.model.display.with_unit
        there = [board for board in self.boards if serves(board.line, blank.part)]
        if not there:
            wood = blank.part.timber or "wood"
            return f"{blank.subject}: there is no {'sheet' if blank.sheet else 'board'} of {wood}"
        if blank.sheet:
            near = min(there, key=lambda one: abs(one.sizes[2] - blank.to_thickness))
            return (
                f"{blank.subject}: no sheet is {say(blank.to_thickness, fitted=True)} thick; what "
                f"comes nearest is {say(near.sizes[2], fitted=True)}"
            )
        none = Fraction(0)
        best = max(there, key=lambda one: flat(one.line, none, none, self.shop))
        needed = blank.trued_thickness + reserve(best.line, self.shop)
        left = flat(best.line, none, none, self.shop)
        if left < needed:
            return (
                f"{blank.subject}: it takes {say(needed)} once both faces are true, and the "
                f"thickest {_of(blank)} board gives {say(left)}"
            )
        best = max(there, key=lambda one: flat(one.line, blank.length, blank.width, self.shop))
        left = flat(best.line, blank.length, blank.width, self.shop)
        return (
            f"{blank.subject}: boards are thick enough, but too warped: flat over "
            f"{say(blank.length)} by {say(blank.width)}, board {best.label} gives {say(left)}, and "
            f"it takes {say(blank.trued_thickness + reserve(best.line, self.shop))}"
        )

    def too_large(self, proof: Proof, split: Split) -> str:
        """Say by which size a blank is larger than what the board that comes nearest gives."""
        say, blank = self.model.display.with_unit, split.blank(proof.parts[0])
        run = len(proof.parts) > 1 or (blank.rule == "in sequence" and blank.count > 1)
        near = None if run else self._nearest(blank)
        names = f"{_names(proof, split)}, in one run, are"
        who = names if run else f"{blank.subject}: a blank is"
        if near is None:
            which, needed, there = proof.size == "length", exact(proof.needed), exact(proof.there)
            gives = (
                "the longest clear length of a board is"
                if which
                else "where a board is clear for long enough, it is at most"
            )
        else:
            which, needed, there, board = near
            gives = f"board {board.label}, which comes nearest, gives"
        size, between = ("long", " between its trimmed ends") if which else ("wide", "")
        turned = "" if run or not self._fits_turned(blank) else _TURNED
        return (
            f"{who} {say(needed)} {size}, and {gives} {say(there)}"
            f"{'' if blank.sheet else between}: {say(needed - there)} too little{turned}"
        )

    def _fits_turned(self, blank: Blank) -> bool:
        """Return whether a sheet is large enough for the blank across its grain."""
        for board in self.boards:
            rough = rough_sizes(blank, board.line, self.shop)
            if rough is not None and blank.sheet and board.line.grain:
                long, wide = usable_face(board.line, self.shop)
                if rough.length <= wide and rough.width <= long:
                    return True
        return False

    def _nearest(self, blank: Blank) -> tuple[bool, Fraction, Fraction, StockBoard] | None:
        """Return of the board that lacks least whether it is its length, needed and there."""
        found: list[tuple[Fraction, bool, Fraction, Fraction, StockBoard]] = []
        for board in self.boards:
            rough = rough_sizes(blank, board.line, self.shop)
            if rough is None:
                continue
            if bad_places(board):
                return None
            long, wide = usable_face(board.line, self.shop)
            needed = rough.length, rough.width
            if blank.sheet and not board.line.grain and (needed[0] > long) != (needed[1] > wide):
                needed = (needed[1], needed[0])
            lacks = max(Fraction(0), needed[0] - long), max(Fraction(0), needed[1] - wide)
            length = lacks[0] >= lacks[1]
            sizes = (needed[0], long) if length else (needed[1], wide)
            found.append((lacks[0] + lacks[1], length, *sizes, board))
        return min(found, key=lambda one: one[0])[1:] if found else None

    def too_many(self, proof: Proof, split: Split) -> str:
        """Say that blanks take more together than the boards have."""
        say = self.model.display.with_unit
        lines = [alike[0] for _, alike in split.boards]
        who = _names(proof, split)
        if proof.bound == "area":
            wide = max(board.sizes[1] for board in lines)
            needed, there = (Fraction(size, 10**4) / wide for size in (proof.needed, proof.there))
            return (
                f"{who} take at least {say(needed)} of a board {say(wide)} wide "
                f"with the saw cuts beside them, and there are {say(there)}: "
                f"{say(needed - there)} too little"
            )
        names = [board.label for _, alike in split.boards for board in alike]
        kind = "sheet" if split.blanks[0].sheet else "board"
        if len(names) == 1:
            return f"{who} cannot all come out of {kind} {names[0]}, whichever way it is cut"
        return (
            f"{who} cannot all come out of {kind}s {listed(names)}, whichever way they are shared "
            f"out and cut: one {kind} always has to give more than it has"
        )


def _names(proof: Proof, split: Split) -> str:
    """Return what cannot all be had, as copies of parts; the staves of a panel without a number."""
    copies: dict[str, int] = {}
    written: dict[str, str] = {}
    staves: dict[str, None] = {}
    for name in proof.parts:
        blank = split.blank(name)
        part = blank.part.name
        if blank.staves:
            staves[part] = None
        else:
            written[part] = blank.part.written
            copies[part] = copies.get(part, 0) + blank.count * blank.each
    return listed(
        [
            *(
                f"1 {name}" if count == 1 else f"{count} {written[name]}"
                for name, count in copies.items()
            ),
            *(f"the staves of {name}" for name in staves),
        ]
    )


def listed(words: Sequence[str]) -> str:
    """Return ``a``, ``a and b`` or ``a, b and c``; nothing of nothing."""
    return " and ".join(filter(None, (", ".join(words[:-1]), *words[-1:])))


def _of(blank: Blank) -> str:
    return blank.part.timber or "such"
