"""The codes that the program can emit, read from its source.

A code is what is given for the parameter or field `code` of a function, method or dataclass of
src.  It is followed through names, conditions, tables, returned tuples and f-strings to the texts
that it can be; what cannot be followed is told, so that no code slips through.
"""

import ast
import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import product
from pathlib import Path

SRC = Path(__file__).resolve().parents[3] / "src" / "dryfit"
_WORD_CODE = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")


class UnfollowedError(Exception):
    """The code of a finding is worked out in a way that is not followed here."""


Scope = ast.FunctionDef | None


@dataclass(frozen=True)
class Module:
    """A module with what it defines: for each callable, the position of `code` or None."""

    path: str
    tree: ast.Module
    callables: Mapping[str, int | None]


def emitted_codes(folder: Path = SRC) -> dict[str, str]:
    """Each code with the first place that emits it, ``room/module.py:line``."""
    modules = [_module(path, folder) for path in sorted(folder.rglob("*.py"))]
    modules = [module for module in modules if not _shows_pages(module)]
    everywhere = {
        name: at
        for module in modules
        for name, at in module.callables.items()
        if at is not None and not name.startswith("_")
    }
    codes: dict[str, str] = {}
    for module in modules:
        known = {**everywhere, **module.callables}
        for line, code in _codes_of(module, known):
            codes.setdefault(code, f"{module.path}:{line}")
    return codes


def _module(path: Path, folder: Path) -> Module:
    tree = ast.parse(path.read_text(encoding="utf-8"))
    callables: dict[str, int | None] = {}
    for node in ast.walk(tree):
        if isinstance(node, ast.ClassDef):
            fields = [
                row.target.id
                for row in node.body
                if isinstance(row, ast.AnnAssign) and isinstance(row.target, ast.Name)
            ]
            makers = [
                row
                for row in node.body
                if isinstance(row, ast.FunctionDef) and row.name == "__init__"
            ]
            names = _parameters(makers[0]) if makers else fields
            callables[node.name] = names.index("code") if "code" in names else None
        elif isinstance(node, ast.FunctionDef) and node.name != "__init__":
            names = _parameters(node)
            callables[node.name] = names.index("code") if "code" in names else None
    return Module(path.relative_to(folder).as_posix(), tree, callables)


def _shows_pages(module: Module) -> bool:
    """Whether the module explains codes, which are then the user's own words."""
    return module.path == "diagnostics/explain.py" or any(
        isinstance(node, ast.ImportFrom) and node.module == "dryfit.diagnostics.explain"
        for node in ast.walk(module.tree)
    )


def _parameters(function: ast.FunctionDef) -> list[str]:
    arguments = function.args
    names = [each.arg for each in (*arguments.posonlyargs, *arguments.args, *arguments.kwonlyargs)]
    return names[1:] if names[:1] in (["self"], ["cls"]) else names


def _codes_of(module: Module, known: Mapping[str, int | None]) -> Iterator[tuple[int, str]]:
    for scope, node in _with_scope(module.tree, None):
        for given in _given_as_code(node, known):
            if _is_passed_on(given, scope):
                continue
            try:
                texts = _texts(given, scope, module)
            except UnfollowedError as error:
                raise UnfollowedError(f"{module.path}:{given.lineno}: {error}") from None
            for text in texts:
                place = f"{module.path}:{given.lineno}"
                assert _WORD_CODE.fullmatch(text), f"{place}: `{text}` is no code"
                yield given.lineno, text


def _with_scope(node: ast.AST, scope: Scope) -> Iterator[tuple[Scope, ast.AST]]:
    """Every node below, with the function that it stands in."""
    for child in ast.iter_child_nodes(node):
        yield scope, child
        yield from _with_scope(child, child if isinstance(child, ast.FunctionDef) else scope)


def _given_as_code(node: ast.AST, known: Mapping[str, int | None]) -> Iterator[ast.expr]:
    """What a call gives for `code`, or what a function takes when nothing is given."""
    if isinstance(node, ast.FunctionDef):
        arguments = node.args
        placed = (*arguments.posonlyargs, *arguments.args)[::-1]
        defaults = [
            *zip(placed, arguments.defaults[::-1], strict=False),
            *zip(arguments.kwonlyargs, arguments.kw_defaults, strict=True),
        ]
        yield from (default for each, default in defaults if each.arg == "code" and default)
    elif isinstance(node, ast.Call) and not _of_argparse(node.func):
        name = getattr(node.func, "attr", getattr(node.func, "id", ""))
        at = known.get(name)
        yield from (keyword.value for keyword in node.keywords if keyword.arg == "code")
        if at is not None:
            yield from node.args[at : at + 1]


def _of_argparse(function: ast.expr) -> bool:
    """Whether it is a deed of the parser of the command line, whose errors have no codes."""
    return isinstance(function, ast.Attribute) and ast.unparse(function.value) == "parser"


def _is_passed_on(given: ast.expr, scope: Scope) -> bool:
    """Whether this is the `code` of the function itself, of another finding, or none at all."""
    if isinstance(given, ast.Attribute):
        return given.attr == "code"
    if isinstance(given, ast.Constant) and given.value is None:
        return True
    is_parameter = scope is not None and "code" in _parameters(scope)
    return is_parameter and isinstance(given, ast.Name) and given.id == "code"


def _texts(expression: ast.expr, scope: Scope, module: Module) -> set[str]:
    """The texts that an expression can be."""
    match expression:
        case ast.Constant(value=str(text)):
            return {text}
        case ast.IfExp(body=body, orelse=orelse):
            return _texts(body, scope, module) | _texts(orelse, scope, module)
        case ast.JoinedStr(values=values):
            rows = [sorted(_texts(value, scope, module)) for value in values]
            return {"".join(row) for row in product(*rows)}
        case ast.FormattedValue(value=value) | ast.Subscript(value=value):
            return _texts(value, scope, module)
        case ast.Dict(values=values):
            return set().union(*(_texts(value, scope, module) for value in values))
        case ast.Name(id=name):
            found = [_texts(each, where, module) for each, where in _bound(name, scope, module)]
            if found:
                return set().union(*found)
    raise UnfollowedError(f"cannot tell what `{ast.unparse(expression)}` can be")


def _bound(name: str, scope: Scope, module: Module) -> Iterator[tuple[ast.expr, Scope]]:
    """What the name can stand for in the function, else at the top of the module."""
    inner = list(_bindings(name, scope, module)) if scope else []
    yield from inner or _bindings(name, None, module)


def _bindings(name: str, scope: Scope, module: Module) -> Iterator[tuple[ast.expr, Scope]]:
    for node in ast.walk(scope or module.tree):
        match node:
            case ast.AnnAssign(target=ast.Name(id=found), value=ast.expr() as value):
                if found == name:
                    yield value, scope
            case ast.Assign(targets=targets, value=value):
                for target in targets:
                    if isinstance(target, ast.Name) and target.id == name:
                        yield value, scope
                    for at in _positions(name, target):
                        yield from _items(value, at, scope, module)
            case ast.For(target=target, iter=rows):
                for at in _positions(name, target):
                    yield from _items(rows, at, scope, module)


def _positions(name: str, target: ast.expr) -> Iterator[int]:
    if isinstance(target, ast.Tuple):
        for at, each in enumerate(target.elts):
            if isinstance(each, ast.Name) and each.id == name:
                yield at


def _items(
    value: ast.expr, at: int, scope: Scope, module: Module
) -> Iterator[tuple[ast.expr, Scope]]:
    """The item at the position of a tuple, of each row of a table or of what is returned."""
    match value:
        case ast.Tuple(elts=rows) if rows and all(isinstance(row, ast.Tuple) for row in rows):
            inner: list[ast.expr] = rows
        case ast.Tuple(elts=elements):
            yield elements[at], scope
            return
        case ast.IfExp(body=body, orelse=orelse):
            inner = [body, orelse]
        case ast.Dict(values=rows):
            inner = rows
        case ast.Call(func=ast.Attribute(attr="fromkeys"), args=[_, each]):
            inner = [each]
        case ast.Name(id=table) | ast.Subscript(value=ast.Name(id=table)):
            inner = [row for row, _ in _bindings(table, None, module)]
        case ast.Call(func=ast.Name(id=called)):
            for row, function in _returned(called, module):
                yield from _items(row, at, function, module)
            return
        case _:
            raise UnfollowedError(f"cannot tell what `{ast.unparse(value)}` can be")
    for each in inner:
        yield from _items(each, at, scope, module)


def _returned(called: str, module: Module) -> Iterator[tuple[ast.expr, ast.FunctionDef]]:
    """What the functions of that name in the module return."""
    for scope, node in _with_scope(module.tree, None):
        if isinstance(node, ast.Return) and node.value and scope and scope.name == called:
            yield node.value, scope
