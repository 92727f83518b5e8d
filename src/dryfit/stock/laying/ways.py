"""How the parts of one wood are made: each as one of the ways for the whole piece makes it."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass

from dryfit.piece.declared import Have
from dryfit.placing.model import Part
from dryfit.stock.blanks.blank import Blank
from dryfit.stock.blanks.needs import GIVEN_UP, SHORT, TRUE, WIDE_SHORT, Needs
from dryfit.stock.boards import unplaned
from dryfit.stock.laid_out import BoardLayout

Wood = tuple[str | None, bool]
"""The timber, None where a board or a part may be of any; whether it is sheet goods."""


@dataclass(frozen=True, slots=True)
class Made:
    """A part with the blanks that it is made from; `why` says in what it is not made as usual.

    `part` is that of the piece made this way; None for strips of which the edges of a part are.
    """

    name: str
    part: Part | None
    blanks: tuple[Blank, ...]
    why: str


@dataclass(frozen=True, slots=True)
class Option:
    """All parts of one wood, each made in one way; `why` says in what that is not the usual one."""

    made: tuple[Made, ...]
    why: str

    @property
    def unusual(self) -> int:
        """How many of the parts are not made as usual."""
        return sum(bool(each.why) for each in self.made)

    @property
    def gives_up(self) -> bool:
        """Whether it gives up what the notes want of the boards that a part comes out of."""
        return any(why in each.why for each in self.made for why in GIVEN_UP)

    @property
    def blanks(self) -> tuple[Blank, ...]:
        """All blanks, in the order of the parts."""
        return tuple(blank for each in self.made for blank in each.blanks)


def woods(needs: Needs, lines: Sequence[Have]) -> list[Wood]:
    """Return all woods that the parts take, in the order of the notes."""
    return list(dict.fromkeys(_wood(blank, lines) for blank in needs.blanks))


def options(wood: Wood, ways: Sequence[Needs], lines: Sequence[Have]) -> list[Option]:
    """Return the ways to make the parts of a wood, the usual one first; none of them twice."""
    found: dict[tuple[Blank, ...], Option] = {}
    known: dict[tuple[Blank, ...], Made] = {}
    for way in ways:
        parts = {part.name: part for part in way.model.parts}
        made = tuple(
            known.setdefault(blanks, Made(name, parts.get(name), blanks, way.why))
            for name, blanks in _by_part(wood, way, lines)
        )
        blanks = tuple(blank for each in made for blank in each.blanks)
        found.setdefault(blanks, Option(made, way.why))
    return list(found.values())


def mixed(made: Sequence[Made]) -> Option:
    """Return the parts, each made in a way of its own, and in words which these are."""
    return Option(tuple(made), _in_words(made))


def _in_words(made: Sequence[Made]) -> str:
    """Return what is done otherwise than usual, with the parts of which that is true."""
    parts: dict[str, list[str]] = {}
    for each in made:
        for why in filter(None, each.why.split("; ")):
            parts.setdefault(SHORT if why == WIDE_SHORT else why, []).append(each.name)
    return "; ".join(f"{why} ({', '.join(names)})" for why, names in parts.items())


def as_laid(why: str, layouts: Sequence[BoardLayout]) -> str:
    """Return the words for a way, of planed boards only for parts that lie on such a board."""
    on_planed = {
        one.blank.part
        for layout in layouts
        if not unplaned(layout.board.line) and layout.board.line.kind != "sheet"
        for one in layout.placed
    }
    return "; ".join(filter(None, (_where_true(each, on_planed) for each in why.split("; "))))


def _where_true(why: str, on_planed: Collection[str]) -> str:
    """Return one of the words for a way, with its parts where not all are made so."""
    if not why.startswith(TRUE):
        return why
    named = why.removeprefix(TRUE).removeprefix(" (").removesuffix(")")
    if not named:
        return why if on_planed else ""
    names = [name for name in named.split(", ") if name in on_planed]
    return f"{TRUE} ({', '.join(names)})" if names else ""


def _by_part(
    wood: Wood, way: Needs, lines: Sequence[Have]
) -> Iterator[tuple[str, tuple[Blank, ...]]]:
    parts: dict[str, list[Blank]] = {}
    for blank in way.blanks:
        if not blank.if_room and _wood(blank, lines) == wood:
            parts.setdefault(blank.part.name, []).append(blank)
    for name, blanks in parts.items():
        yield name, tuple(blanks)


def _wood(blank: Blank, lines: Sequence[Have]) -> Wood:
    """Return the wood of a blank; where a line does not tell its own, all woods are one."""
    timber = None if any(line.timber is None for line in lines) else blank.part.timber
    return timber, blank.sheet
