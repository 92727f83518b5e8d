"""One shop file as a layer: its values read and checked, each problem with its place."""

from __future__ import annotations

import re
import tomllib
from dataclasses import dataclass, field
from functools import cached_property
from typing import Any, Final

from dryfit.diagnostics import Diagnostic, Findings, Hint, Severity, Source, Span
from dryfit.shop.places import Path, Places
from dryfit.shop.schema import SHOP, Named, Node, Table, Value
from dryfit.shop.values import WrongValueError

Tree = dict[str, Any]
"""Values as read by the schema, by key; an entry that the file removes is `REMOVED`."""


class Removed:
    """An entry that the file takes away by `false`."""


REMOVED: Final = Removed()


@dataclass
class Layer:
    """A shop file being read: the values that stand, and the findings so far.

    `known` is the layer below, whose names are the ones that machines and work may have; None
    for the shipped file itself.
    """

    source: Source
    known: Tree | None
    tree: Tree = field(default_factory=dict)
    findings: list[Diagnostic] = field(default_factory=list)

    @cached_property
    def places(self) -> Places:
        """Where keys and values stand; worked out only when there is something to report."""
        return Places(self.source)

    def report(self, code: str, message: str, span: Span, *hints: str) -> None:
        """Add an error."""
        self.findings.append(
            Diagnostic(
                code, Severity.ERROR, message, span, hints=tuple(Hint(text) for text in hints)
            )
        )

    def report_key(self, code: str, message: str, path: Path, *hints: str) -> None:
        """Add an error at a key."""
        self.report(code, message, self.places.key(path), *hints)

    def report_value(self, code: str, message: str, path: Path, *hints: str) -> None:
        """Add an error at a value."""
        self.report(code, message, self.places.value(path), *hints)


def read_layer(source: Source, known: Tree | None) -> tuple[Tree | None, Layer]:
    """Return the checked values of a shop file, None when it is no TOML, and the layer itself."""
    layer = Layer(source, known)
    try:
        raw = tomllib.loads(source.text)
    except tomllib.TOMLDecodeError as problem:
        _report_broken(layer, str(problem))
        return None, layer
    except RecursionError:
        layer.report("shop-broken", "not TOML: brackets are nested too deep", Span(source, 1, 1, 1))
        return None, layer
    layer.tree = _table(layer, SHOP, raw, known, ())
    return layer.tree, layer


def overlay(below: Tree, above: Tree) -> Tree:
    """Return the values of `above` where it has any, else those of `below`; order as below."""
    result = dict(below)
    for key, value in above.items():
        if isinstance(value, Removed):
            result.pop(key, None)
        elif isinstance(value, dict):
            result[key] = overlay(result.get(key, {}), value)
        else:
            result[key] = value
    return result


def findings_of(layer: Layer) -> Findings:
    """Return the findings in the order of every report."""
    return tuple(sorted(layer.findings, key=Diagnostic.sort_key))


def _node(layer: Layer, node: Node, raw: object, known: Tree | None, path: Path) -> object:
    """Return the value, or None after it was reported."""
    if isinstance(node, Value):
        return _value(layer, node, raw, path)
    if not isinstance(raw, dict):
        table = ".".join(key if key.isidentifier() else f'"{key}"' for key in path)
        layer.report_value(
            "shop-wrong-value",
            f"`{path[-1]}`: a table belongs here",
            path,
            f"write its values on lines of their own, under `[{table}]`",
        )
        return None
    if isinstance(node, Table):
        return _table(layer, node, raw, known, path)
    return _named(layer, node, raw, known, path)


def _value(layer: Layer, node: Value, raw: object, path: Path) -> object:
    try:
        return node.read(raw)
    except WrongValueError as problem:
        layer.report_value(problem.code, f"`{path[-1]}`: {problem}", path, problem.hint)
        return None


def _table(layer: Layer, table: Table, raw: Tree, known: Tree | None, path: Path) -> Tree:
    result: Tree = {}
    for key, entry in raw.items():
        node = table.keys.get(key)
        if node is None:
            _report_unknown(layer, "key", key, tuple(table.keys), (*path, key))
            continue
        value = _node(layer, node, entry, _below(known, key), (*path, key))
        if value is not None:
            stored_as = node.stored_as if isinstance(node, Value) else None
            result[stored_as or key] = value
    return result


def _named(layer: Layer, named: Named, raw: Tree, known: Tree | None, path: Path) -> Tree:
    result: Tree = {}
    for name, entry in raw.items():
        inner = (*path, name)
        below = _below(known, name)
        new = layer.known is not None and (known is None or name not in known)
        if new and (not named.open or entry is False):
            _report_unknown(layer, named.what, name, tuple(known or ()), inner)
        elif entry is False and named.removable:
            result[name] = REMOVED
        else:
            value = _node(layer, named.entry, entry, below, inner)
            if new:
                _report_lacking(layer, named, entry, inner)
            if value is not None and not (new and _lacking(named.entry, value)):
                result[name] = value
    return result


def _report_lacking(layer: Layer, named: Named, raw: object, path: Path) -> None:
    lacking = _lacking(named.entry, raw)
    if lacking:
        layer.report_key(
            "shop-incomplete",
            f"the {named.what} `{path[-1]}` is new and lacks {', '.join(lacking)}",
            path,
            f"give a new {named.what} all of its values",
        )


def _lacking(node: Node, raw: object) -> list[str]:
    """Return the keys, in words, that a new entry must have and does not have."""
    if not isinstance(node, Table) or not isinstance(raw, dict):
        return []
    lacking = [
        " or ".join(f"`{key}`" for key in keys)
        for keys in node.needed
        if not any(key in raw for key in keys)
    ]
    for key, inner in node.keys.items():
        lacking += _lacking(inner, raw.get(key))
    return lacking


def _below(known: Tree | None, key: str) -> Tree | None:
    value = known.get(key) if known else None
    return value if isinstance(value, dict) else None


def _report_unknown(layer: Layer, what: str, name: str, names: tuple[str, ...], path: Path) -> None:
    layer.report_key(
        f"shop-unknown-{'key' if what == 'key' else 'name'}",
        f"no {what} is called `{name}`",
        path,
        nearest(name, names),
    )


def nearest(name: str, names: tuple[str, ...]) -> str:
    """Return a hint: the nearest of the names, or all of them."""
    import difflib  # only a file with a mistake needs it

    near = difflib.get_close_matches(name.lower(), names, n=1)
    if near:
        return f"write `{near[0]}`"
    return f"known are {', '.join(names)}" if names else "leave it out"


_POSITION = re.compile(r" \(at (?:line (\d+), column (\d+)|end of document)\)$")


def _report_broken(layer: Layer, problem: str) -> None:
    lines = layer.source.lines()
    match = _POSITION.search(problem)
    if match and match[1]:
        line, column = int(match[1]), int(match[2])
    else:
        line, column = len(lines), len(lines[-1]) + 1
    message = _POSITION.sub("", problem)
    layer.report(
        "shop-broken",
        f"not TOML: {message[:1].lower()}{message[1:]}",
        Span(layer.source, line, column, max(column, min(column + 1, len(lines[line - 1]) + 1))),
        "every line is a `[table]`, a `key = value` or a `# remark`; texts stand in quotes",
    )
