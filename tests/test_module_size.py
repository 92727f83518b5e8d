"""Modules and functions are short enough to be read at one sitting, and named for one thing."""

import ast
from pathlib import Path

import pytest

PACKAGE = Path(__file__).resolve().parents[1] / "src" / "dryfit"
LINES_OF_A_MODULE = 400
LINES_OF_A_FUNCTION = 60
NAMES_THAT_SAY_NOTHING = {"common", "data", "handler", "helpers", "manager", "misc", "utils"}


def too_long(source: str) -> list[str]:
    """One sentence for the module if it is too long, and for each function that is."""
    length = len(source.splitlines())
    found = [f"the module has {length} lines"] if length > LINES_OF_A_MODULE else []
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef):
            lines = (node.end_lineno or node.lineno) - node.lineno + 1
            if lines > LINES_OF_A_FUNCTION:
                found.append(f"{node.name} has {lines} lines")
    return found


@pytest.mark.parametrize("path", sorted(PACKAGE.rglob("*.py")), ids=lambda path: path.stem)
def test_a_module_is_short_and_has_a_name(path: Path) -> None:
    assert too_long(path.read_text(encoding="utf-8")) == []
    assert NAMES_THAT_SAY_NOTHING.isdisjoint(path.relative_to(PACKAGE).with_suffix("").parts)


def test_a_long_function_and_a_long_module_are_found() -> None:
    function = "def long() -> None:\n" + "    pass\n" * LINES_OF_A_FUNCTION
    assert too_long(function) == ["long has 61 lines"]
    assert too_long("\n" * (LINES_OF_A_MODULE + 1)) == ["the module has 401 lines"]
    assert too_long("def short() -> None:\n    pass\n") == []
