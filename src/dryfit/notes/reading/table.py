"""The parse table of the grammar: worked out by lark, and kept beside the grammar.

Working it out takes longer than reading a piece, so that the folder ``grammar/`` holds it ready as
``notes.table.json``.  It is used only if it was made from the very text of the grammar; after a
change of the grammar it is worked out at every start, until it is written anew by::

    python -m dryfit.notes.reading.write_table
"""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from hashlib import sha256
from typing import Any

from lark import Lark, Token
from lark.common import LexerConf
from lark.grammar import NonTerminal, Rule, RuleOptions, Symbol, Terminal
from lark.lexer import Lexer, LexerState
from lark.parsers.lalr_analysis import Action, IntParseTable, Reduce, Shift

from dryfit.resources import root

START = "line"
GRAMMAR, TABLE = "notes.lark", "notes.table.json"


@dataclass(frozen=True, slots=True)
class Table:
    """The rules of the grammar in its order, and lark's table of states."""

    rules: tuple[Rule, ...]
    states: IntParseTable


class NoLexer(Lexer):
    """Stands where lark asks for a lexer: tokens are fed one by one by `lexer.read_line`."""

    def __init__(self, lexer_conf: LexerConf) -> None:
        """Take what lark hands to every lexer."""

    def lex(self, lexer_state: LexerState, parser_state: object) -> Iterator[Token]:
        """Yield nothing."""
        del lexer_state, parser_state
        return iter(())


def table() -> Table:
    """Return the table of the grammar, from the file if that belongs to it."""
    grammar = (root("grammar") / GRAMMAR).read_text(encoding="utf-8")
    kept = root("grammar") / TABLE
    if kept.is_file():
        data = json.loads(kept.read_text(encoding="utf-8"))
        if data["grammar"] == _mark(grammar):
            return _from_data(data)
    return worked_out(grammar)


def worked_out(grammar: str) -> Table:
    """Return the table that lark makes of a grammar's text, its states numbered from the start."""
    lark = Lark(
        grammar,
        parser="lalr",
        lexer=NoLexer,
        start=START,
        keep_all_tokens=True,  # a phrase is placed by its first and its last token
        maybe_placeholders=False,
    )
    made = lark.parser.parser._parse_table  # noqa: SLF001
    return Table(tuple(lark.rules), _renumbered(made))


def written(grammar: str, made: Table) -> str:
    """Return a table as the text of its file, one state a line."""
    number = {rule: index for index, rule in enumerate(made.rules)}
    head = {
        "grammar": _mark(grammar),
        "start": made.states.start_states[START],
        "end": made.states.end_states[START],
        "rules": [_rule_data(rule) for rule in made.rules],
    }
    lines = [
        _dense({name: _number(move, number) for name, move in sorted(moves.items())})
        for _, moves in sorted(made.states.states.items())
    ]
    return _dense(head)[:-1] + ',"states":[\n' + ",\n".join(lines) + "\n]}\n"


def _dense(value: object) -> str:
    return json.dumps(value, separators=(",", ":"))


def _mark(grammar: str) -> str:
    return sha256(grammar.encode()).hexdigest()


def _renumbered(made: IntParseTable) -> IntParseTable:
    # Lark numbers states in the order of a set: here in the order in which they are reached.
    reached = {made.start_states[START]: 0}
    waiting = [made.start_states[START]]
    while waiting:
        moves = made.states[waiting.pop(0)]
        for _, (action, target) in sorted(moves.items(), key=lambda move: move[0]):
            if action is Shift and target not in reached:
                reached[target] = len(reached)
                waiting.append(target)
    states = {
        reached[state]: {
            name: (action, reached[target] if action is Shift else target)
            for name, (action, target) in moves.items()
        }
        for state, moves in made.states.items()
        if state in reached
    }
    start, end = reached[made.start_states[START]], reached[made.end_states[START]]
    return _int_table(states, start, end)


def _int_table(states: Mapping[int, Mapping[str, object]], start: int, end: int) -> IntParseTable:
    make: Any = IntParseTable  # lark leaves its constructor without types
    made: IntParseTable = make(states, {START: start}, {START: end})
    return made


def _number(move: tuple[Action, object], rules: Mapping[Rule, int]) -> int:
    action, target = move
    if isinstance(target, Rule):
        return -1 - rules[target]
    assert action is Shift
    assert isinstance(target, int)
    return target


def _rule_data(rule: Rule) -> list[object]:
    symbols = [[symbol.name, symbol.is_term] for symbol in rule.expansion]
    return [rule.origin.name, symbols, rule.alias, rule.options.expand1, rule.order]


def _from_data(data: Mapping[str, object]) -> Table:
    rules = tuple(_rule(row) for row in _list(data["rules"]))
    shifts = [(Shift, state) for state in range(len(_list(data["states"])))]
    reductions = [(Reduce, rule) for rule in rules]
    states = {
        index: {
            name: shifts[number] if number >= 0 else reductions[-1 - number]
            for name, number in moves.items()
        }
        for index, moves in enumerate(_list(data["states"]))
    }
    return Table(rules, _int_table(states, int(str(data["start"])), int(str(data["end"]))))


def _rule(row: Sequence[object]) -> Rule:
    origin, symbols, alias, expand, order = row
    expansion: list[Symbol] = [
        Terminal(name) if is_terminal else NonTerminal(name) for name, is_terminal in _list(symbols)
    ]
    options = RuleOptions(keep_all_tokens=True, expand1=bool(expand))
    spoken = None if alias is None else str(alias)
    return Rule(NonTerminal(str(origin)), expansion, int(str(order)), spoken, options)


def _list(value: object) -> list[Any]:
    assert isinstance(value, list)
    return value
