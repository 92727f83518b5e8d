"""The grammar of a line as a parser that tells, at every word, what it can really take next."""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache
from typing import Any

from lark import Lark, Token, Tree
from lark.common import LexerConf
from lark.lexer import Lexer, LexerState, LexerThread
from lark.parsers.lalr_analysis import Shift
from lark.parsers.lalr_parser_state import ParserState

from dryfit.resources import root

END = "$END"


class _NoLexer(Lexer):
    """Stands where lark asks for a lexer: tokens are fed one by one by `lexer.read_line`."""

    def __init__(self, lexer_conf: LexerConf) -> None:
        """Take what lark hands to every lexer."""

    def lex(self, lexer_state: LexerState, parser_state: Any) -> Iterator[Token]:  # noqa: ANN401
        """Yield nothing."""
        del lexer_state, parser_state
        return iter(())


@lru_cache(maxsize=1)
def _lark() -> Lark:
    return Lark.open(
        str(root("grammar") / "notes.lark"),
        parser="lalr",
        lexer=_NoLexer,
        start="line",
        keep_all_tokens=True,  # a phrase is placed by its first and its last token
        maybe_placeholders=False,
    )


class LineParse:
    """The parse of one line, fed token by token."""

    def __init__(self) -> None:
        """Begin at the start of a line."""
        parser = _lark().parse_interactive("")
        self._state: ParserState[int] = parser.parser_state
        self._thread: LexerThread = parser.lexer_thread

    def takes(self) -> frozenset[str]:
        """Return the terminals that the parser can take now, `END` among them.

        An LALR table promises more than it keeps: states are merged, so that a reduction may lead
        to where the promised terminal cannot be shifted.  The reductions are played through.
        """
        stack = tuple(self._state.state_stack)
        known = _taken.get(stack)
        if known is None:
            states = self._state.parse_conf.states
            known = frozenset(
                terminal
                for terminal in states[stack[-1]]
                if _is_terminal(terminal) and self._can_take(stack, terminal)
            )
            _taken[stack] = known
        return known

    def feed(self, token: Token) -> None:
        """Take a token whose type is in `takes`."""
        self._state.feed_token(token)

    def finish(self) -> Tree[Token]:
        """Return the tree of the line; `END` must be in `takes`."""
        tree: Tree[Token] = self._state.feed_token(Token(END, ""), is_end=True)
        return tree

    def _can_take(self, before: tuple[int, ...], terminal: str) -> bool:
        stack = list(before)
        conf = self._state.parse_conf
        while True:
            move = conf.states[stack[-1]].get(terminal)
            if move is None:
                return False
            action, target = move
            if action is Shift:
                return True
            if target.expansion:
                del stack[-len(target.expansion) :]
            _, state = conf.states[stack[-1]][target.origin.name]
            stack.append(state)
            if terminal == END and state == conf.end_state:
                return True


# Stacks repeat from line to line, since every list in the grammar leans to the left.
_taken: dict[tuple[int, ...], frozenset[str]] = {}


def _is_terminal(name: str) -> bool:
    return name == END or name.lstrip("_").isupper()
