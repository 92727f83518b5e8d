"""What the builders share: the line, the places in it, and the problems found while building."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from typing import TypeVar

from lark import Token, Tree

from dryfit.diagnostics import Hint, Span
from dryfit.notes.mistake import Mistake, Repair
from dryfit.notes.reading.lines import SenseLine
from dryfit.notes.reading.numbers import Spelled
from dryfit.notes.reading.vocabulary import Vocabulary

Node = Tree[Token] | Token
NodeT = TypeVar("NodeT", Tree[Token], Token)


@dataclass(frozen=True, slots=True)
class Draft:
    """One line under construction, with the mistakes found on it so far."""

    line: SenseLine
    vocabulary: Vocabulary
    mistakes: list[Mistake] = field(default_factory=list)

    def span(self, node: Node) -> Span:
        """Return the place of a node of the parse tree."""
        return self.line.span(*ends(node))

    def over(self, first: Node, last: Node) -> Span:
        """Return the place from the one node to the other."""
        return self.line.span(ends(first)[0], ends(last)[1])

    def error(self, code: str, message: str, span: Span, *advice: Hint | Repair) -> None:
        """Add an error on this line."""
        self.mistakes.append(Mistake(code, message, span, advice))


def ends(node: Node) -> tuple[int, int]:
    """Return where the node begins and ends in the text of its line."""
    first = last = node
    while isinstance(first, Tree):
        first = first.children[0]
    while isinstance(last, Tree):
        last = last.children[-1]
    assert first.start_pos is not None
    assert last.end_pos is not None
    return first.start_pos, last.end_pos


def trees(nodes: Iterable[Node], *names: str) -> list[Tree[Token]]:
    """Return the trees among the nodes that bear one of the names, in order."""
    return [node for node in nodes if isinstance(node, Tree) and node.data in names]


def tokens(nodes: Iterable[Node], *types: str) -> list[Token]:
    """Return the tokens among the nodes of one of the types, in order."""
    return [node for node in nodes if isinstance(node, Token) and node.type in types]


def only(nodes: Sequence[NodeT], what: str, draft: Draft) -> NodeT | None:
    """Return the one node, or None; what the line says a second time is an error."""
    if len(nodes) > 1:
        draft.error("said-twice", f"said twice: {what}", draft.span(nodes[1]))
    return nodes[0] if nodes else None


def text_of(token: Token) -> str:
    """Return the meaning of a word's token."""
    return str(token.value)


def text_or_none(token: Token | None) -> str | None:
    """Return the meaning of a word's token, or None where there is none."""
    return None if token is None else text_of(token)


def spelled(token: Token) -> Spelled:
    """Return the number of a number's token."""
    value = token.value
    assert isinstance(value, Spelled)
    return value


def union(first: Span, second: Span) -> Span:
    """Return the place that covers both; of two lines the earlier place alone."""
    if first.line != second.line:
        return min(first, second)
    return Span(
        first.source,
        first.line,
        min(first.column, second.column),
        max(first.end_column, second.end_column),
    )
