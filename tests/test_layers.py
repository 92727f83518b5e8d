"""The rooms of src/dryfit import only rooms above them, and each library only where it belongs."""

import ast
import sys
import tomllib
from collections.abc import Iterator
from pathlib import Path, PurePosixPath

import pytest

ROOT = Path(__file__).resolve().parents[1]
PACKAGE = ROOT / "src" / "dryfit"

# What each room needs beyond `quantities` and `diagnostics`, in the order of the rooms. It may then
# import what those rooms need as well. `order` and `cutting` are usable alone; `rehearsal` must not
# see the code that made the plan it judges.
NEEDS: dict[str, tuple[str, ...]] = {
    "quantities": (),
    "diagnostics": (),
    "kinds": (),
    "geometry": (),
    "order": (),
    "cutting": (),
    "notes": (),
    "wood": (),
    "shop": (),
    "piece": ("notes",),
    "joinery": ("geometry", "wood", "shop"),
    "placing": ("piece", "joinery"),
    "patterns": ("notes",),
    "guide": ("notes", "patterns"),
    "stock": ("placing", "shop", "cutting"),
    "checks": ("placing", "stock"),
    "plan": ("geometry",),
    "operations": ("placing", "stock", "plan"),
    "planning": ("operations", "order", "plan"),
    "rehearsal": ("plan", "geometry", "shop"),
    "booklet": ("placing", "stock", "plan"),
}
# Folders of a room that import one way: each itself, those before it, and what lies beside them.
FOLDERS: dict[str, tuple[str, ...]] = {
    "stock": ("blanks", "laying", "telling"),
    "operations": (
        "boards",
        "gluing",
        "milling",
        "ways",
        "cuts",
        "lips",
        "stages",
        "fitting",
        "listing",
    ),
}
ALONE = ("order", "cutting")
GROUND = ("quantities", "diagnostics", "kinds")
ABOVE_THE_ROOMS = ("workshop", "rehearsing", "refusing", "cli", "editor", "__main__")

# Where a library may be imported: rooms or single modules.
LIBRARIES: dict[str, tuple[str, ...]] = {
    "jinja2": ("booklet",),
    "lark": ("notes", "editor/completion.py", "editor/document.py"),
    "lsprotocol": ("editor/server.py",),
    "markupsafe": ("booklet",),
    "networkx": ("order", "placing", "operations", "planning"),
    "pint": ("quantities",),
    "pygls": ("editor/server.py",),
    "weasyprint": ("booklet/pdf.py",),
}


def rooms_open_to(room: str) -> frozenset[str]:
    """The rooms that a module of `room` may import, its own among them."""
    if room in ALONE:
        return frozenset({room})
    ground = GROUND[: GROUND.index(room)] if room in GROUND else GROUND
    open_rooms = {room, *ground}
    waiting = list(NEEDS[room])
    while waiting:
        needed = waiting.pop()
        if needed not in open_rooms:
            open_rooms.add(needed)
            waiting.extend(NEEDS[needed])
    return frozenset(open_rooms)


def imported_names(source: str) -> Iterator[tuple[int, str]]:
    """Line and dotted name of every import, wherever it stands in the module."""
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.Import):
            for alias in node.names:
                yield node.lineno, alias.name
        elif isinstance(node, ast.ImportFrom):
            if node.level:
                yield node.lineno, "." * node.level + (node.module or "")
            elif node.module == "dryfit":
                for alias in node.names:
                    yield node.lineno, f"dryfit.{alias.name}"
            else:
                yield node.lineno, node.module or ""


def violations(module: str, source: str) -> list[str]:
    """One sentence for each import that the module, a path inside dryfit, may not have."""
    home = PurePosixPath(module).parts[0].removesuffix(".py")
    if "/" in module and home not in (*NEEDS, *ABOVE_THE_ROOMS):
        return [f"{module}: no room is called {home}"]
    found = []
    for line, name in imported_names(source):
        top, _, rest = name.partition(".")
        target = rest.partition(".")[0]
        if name.startswith("."):
            reason = "relative imports hide the room"
        elif top == "dryfit":
            reason = _wrong_room(home, target) or _wrong_folder(module, rest)
        else:
            reason = _wrong_library(module, home, top)
        if reason:
            found.append(f"{module}:{line}: {name}: {reason}")
    return found


def _wrong_room(home: str, target: str) -> str:
    if home in ABOVE_THE_ROOMS or (target in {"resources", "__version__"} and home not in ALONE):
        return ""
    if home not in NEEDS:
        return "this module stands below every room"
    return "" if target in rooms_open_to(home) else f"not open to {home}"


def _wrong_folder(module: str, imported: str) -> str:
    """Say why a folder of a room is not open; its `__init__` gives what all of it has."""
    home, *inner = PurePosixPath(module).parts[:-1] or ("",)
    room, _, within = imported.partition(".")
    folders = FOLDERS.get(home, ())
    folder = within.partition(".")[0]
    if room != home or folder not in folders or module == f"{home}/__init__.py":
        return ""
    open_folders = folders[: folders.index(inner[0]) + 1] if inner else ()
    return "" if folder in open_folders else f"not open to {'/'.join((home, *inner))}"


def _wrong_library(module: str, home: str, library: str) -> str:
    if library in sys.stdlib_module_names:
        return ""
    places = LIBRARIES.get(library, ())
    return "" if home in places or module in places else "not a library for this place"


MODULES = sorted(path.relative_to(PACKAGE).as_posix() for path in PACKAGE.rglob("*.py"))


@pytest.mark.parametrize("module", MODULES)
def test_a_module_imports_only_what_is_open_to_it(module: str) -> None:
    source = (PACKAGE / module).read_text(encoding="utf-8")
    assert violations(module, source) == []


@pytest.mark.parametrize(
    ("module", "planted"),
    [
        ("geometry/boxes.py", "from dryfit.placing.model import Model"),
        ("geometry/boxes.py", "def late():\n    import dryfit.placing"),
        ("quantities/lengths.py", "from dryfit.diagnostics import Span"),
        ("order/engine.py", "from dryfit.quantities import Length"),
        ("order/engine.py", "from dryfit.resources import root"),
        ("order/engine.py", "import pint"),
        ("cutting/search.py", "from dryfit.order import solve"),
        ("cutting/search.py", "import numpy"),
        ("rehearsal/run.py", "from dryfit.joinery import half_lap"),
        ("rehearsal/run.py", "from dryfit.operations import derive"),
        ("rehearsal/run.py", "from dryfit import planning"),
        ("plan/steps.py", "from dryfit.shop import Shop"),
        ("booklet/view.py", "from dryfit.operations import derive"),
        ("booklet/view.py", "from dryfit.cli import main"),
        ("booklet/view.py", "from ..operations import derive"),
        ("booklet/html.py", "import weasyprint"),
        ("piece/resolve.py", "from lark import Tree"),
        ("shop/read.py", "import numpy"),
        ("resources.py", "from dryfit.notes import parse"),
        ("stock/blanks/needs.py", "from dryfit.stock.laying.lay import lay"),
        ("stock/boards.py", "from dryfit.stock.blanks.blank import Blank"),
        ("attic/boxes.py", "import ast"),
    ],
)
def test_a_planted_import_is_found(module: str, planted: str) -> None:
    assert len(violations(module, planted)) == 1


@pytest.mark.parametrize(
    ("module", "innocent"),
    [
        ("placing/contacts.py", "from dryfit.notes.tree import Line"),
        ("planning/build.py", "import networkx\nfrom dryfit.order import sequence"),
        ("booklet/pdf.py", "def write():\n    import weasyprint"),
        ("booklet/html.py", "from dryfit import __version__\nfrom dryfit.resources import root"),
        ("stock/laying/lay.py", "from dryfit.stock.blanks.needs import needs_of"),
        ("workshop.py", "from dryfit.rehearsal import rehearse\nfrom dryfit import booklet"),
    ],
)
def test_an_innocent_import_passes(module: str, innocent: str) -> None:
    assert violations(module, innocent) == []


def test_the_libraries_are_the_declared_dependencies() -> None:
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    required = project["dependencies"] + project["optional-dependencies"]["editor"]
    declared = {requirement.partition(">=")[0] for requirement in required}
    assert declared == LIBRARIES.keys()
