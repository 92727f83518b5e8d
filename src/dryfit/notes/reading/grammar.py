"""The grammar of a line as a parser that tells, at every word, what it can really take next."""

from __future__ import annotations

from functools import lru_cache
from typing import Any, cast

from lark import Token, Tree
from lark.lexer import LexerThread
from lark.parse_tree_builder import ParseTreeBuilder
from lark.parsers.lalr_analysis import Shift
from lark.parsers.lalr_parser_state import ParseConf, ParserState

from dryfit.notes.reading.table import START, table

END = "$END"


@lru_cache(maxsize=1)
def _conf() -> ParseConf[int]:
    made = table()
    builder: Any = ParseTreeBuilder  # lark leaves it without types
    return ParseConf(made.states, builder(made.rules, Tree).create_callback(), START)


class LineParse:
    """The parse of one line, fed token by token."""

    def __init__(self) -> None:
        """Begin at the start of a line."""
        # Tokens are fed one by one: there is no lexer that the state could ask.
        self._state: ParserState[int] = ParserState(_conf(), cast("LexerThread", None))

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
