"""The parse table that is kept beside the grammar is the one that lark makes of it."""

import json

from dryfit.notes.reading import table
from dryfit.notes.reading.table import GRAMMAR, TABLE, Table, worked_out, written
from dryfit.resources import root

GRAMMAR_TEXT = (root("grammar") / GRAMMAR).read_text(encoding="utf-8")
KEPT = (root("grammar") / TABLE).read_text(encoding="utf-8")


def test_the_kept_table_belongs_to_the_grammar() -> None:
    fresh = written(GRAMMAR_TEXT, worked_out(GRAMMAR_TEXT))
    assert fresh == KEPT, "run: python -m dryfit.notes.reading.write_table"


def test_the_kept_table_is_read_as_lark_made_it() -> None:
    read, made = table.table(), worked_out(GRAMMAR_TEXT)
    assert read.states.states == made.states.states
    assert list(read.rules) == list(made.rules)
    assert [_options(read, at) for at in range(len(read.rules))] == [
        _options(made, at) for at in range(len(made.rules))
    ]


def test_a_changed_grammar_is_worked_out_anew() -> None:
    changed = GRAMMAR_TEXT.replace("| NOTE TEXT", "| NOTE NOTE TEXT")
    assert changed != GRAMMAR_TEXT
    head = json.loads(KEPT)["grammar"]
    assert json.loads(written(changed, worked_out(changed)))["grammar"] != head


def _options(made: Table, at: int) -> tuple[str | None, bool, bool]:
    rule = made.rules[at]
    return rule.alias, rule.options.expand1, rule.options.keep_all_tokens
