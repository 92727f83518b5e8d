"""A command loads only what it needs: `check` must answer at once."""

import subprocess
import sys
from functools import cache
from pathlib import Path

import pytest

HEAVY = {"jinja2", "networkx", "pint", "weasyprint"}
STOOL = Path(__file__).parents[2] / "examples" / "step_stool.dryfit"
OF_OTHER_COMMANDS = ("dryfit.booklet", "dryfit.editor", "dryfit.guide", "dryfit.planning", "pygls")


@cache
def _loaded_after(code: str) -> frozenset[str]:
    listing = f"import sys\n{code}\nprint(*sys.modules)"
    done = subprocess.run(
        [sys.executable, "-c", listing], capture_output=True, text=True, check=True
    )
    return frozenset(done.stdout.split())


def test_the_command_line_loads_no_heavy_library() -> None:
    assert HEAVY.isdisjoint(_loaded_after("import dryfit.cli"))


@pytest.mark.parametrize("library", sorted(HEAVY))
def test_a_loaded_library_would_be_seen(library: str) -> None:
    assert library in _loaded_after(f"import dryfit.cli, {', '.join(sorted(HEAVY))}")


@pytest.mark.parametrize("room", OF_OTHER_COMMANDS)
def test_the_command_line_loads_no_room_that_check_has_no_need_of(room: str) -> None:
    loaded = _loaded_after(f"import dryfit.cli\ndryfit.cli.main(['check', {str(STOOL)!r}])")
    assert "dryfit.checks" in loaded
    assert not any(name == room or name.startswith(f"{room}.") for name in loaded)
