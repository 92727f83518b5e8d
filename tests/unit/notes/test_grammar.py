"""The parser tells what it can take, and takes it; lark's own answer is the reference."""

import subprocess
import sys
from pathlib import Path

import pytest
from lark import Lark

from dryfit.diagnostics import Source
from dryfit.notes import names_by_line
from dryfit.notes.reading.grammar import END, LineParse
from dryfit.notes.reading.lexer import Reading, read_line
from dryfit.notes.reading.lines import sense_lines
from dryfit.notes.reading.table import GRAMMAR, START, NoLexer
from dryfit.patterns import shipped
from dryfit.resources import root

LARK = Lark(
    (root("grammar") / GRAMMAR).read_text(encoding="utf-8"),
    parser="lalr",
    lexer=NoLexer,
    start=START,
    keep_all_tokens=True,
)
EXAMPLES = sorted((Path(__file__).parents[3] / "examples").glob("*.dryfit"))


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.stem)
def test_what_is_promised_is_what_the_parser_really_takes(path: Path) -> None:
    lines = tuple(sense_lines(Source(path.name, path.read_text(encoding="utf-8"))))
    false_promises = 0
    for line, words in zip(lines, names_by_line(lines, shipped()), strict=True):
        reading = read_line(line, words)
        assert isinstance(reading, Reading), line.text
        parse, reference = LineParse(), LARK.parse_interactive("")
        for token in reading.tokens:
            promised = {name for name in reference.choices() if name.lstrip("_$").isupper()}  # type: ignore[no-untyped-call]
            assert parse.takes() == reference.accepts()  # type: ignore[no-untyped-call]
            false_promises += len(promised - parse.takes())
            parse.feed(token)
            reference.feed_token(token)
        assert END in parse.takes()
    # The table alone would promise more, which is why the reductions are played through.
    assert false_promises > 0


def test_the_room_loads_no_heavy_library() -> None:
    code = "import sys, dryfit.notes; print(*sorted(sys.modules))"
    run = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    loaded = {name.partition(".")[0] for name in run.stdout.split()}
    assert "lark" in loaded
    assert loaded.isdisjoint({"jinja2", "networkx", "numpy", "pint", "weasyprint"})
