"""A command loads only what it needs: `check` must answer at once."""

import subprocess
import sys

import pytest

HEAVY = {"jinja2", "networkx", "pint", "weasyprint"}


def _loaded_after(code: str) -> set[str]:
    listing = f"import sys\n{code}\nprint(*sys.modules)"
    done = subprocess.run(
        [sys.executable, "-c", listing], capture_output=True, text=True, check=True
    )
    return set(done.stdout.split())


def test_the_command_line_loads_no_heavy_library() -> None:
    assert HEAVY.isdisjoint(_loaded_after("import dryfit.cli"))


@pytest.mark.parametrize("library", sorted(HEAVY))
def test_a_loaded_library_would_be_seen(library: str) -> None:
    assert library in _loaded_after(f"import dryfit.cli, {library}")
