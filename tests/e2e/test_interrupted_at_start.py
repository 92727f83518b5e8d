"""Ctrl-C while the program is still being loaded, and after all is printed: no traceback."""

from __future__ import annotations

import subprocess
import sys

import pytest

# The interrupt comes with the import of a module, as if the key were pressed at that moment.
PRESSED = """
import builtins, signal, sys
signal.signal(signal.SIGINT, signal.default_int_handler)
usual = builtins.__import__
def pressing(name, *others, **named):
    if name == {module!r}:
        signal.raise_signal(signal.SIGINT)
    return usual(name, *others, **named)
from dryfit.__main__ import run
builtins.__import__ = pressing
sys.argv = ["dryfit", "explain"]
status = run()
{after}
sys.exit(status)
"""


@pytest.mark.parametrize(
    "module", ["dryfit.cli.run", "dryfit.cli.arguments", "argparse", "dryfit.cli.status"]
)
def test_an_interrupt_while_it_is_loaded_ends_it_quietly(module: str) -> None:
    done = _run(PRESSED.format(module=module, after=""))
    assert (done.returncode, done.stdout, done.stderr) == (130, "", "")


def test_an_interrupt_when_all_is_printed_comes_too_late() -> None:
    done = _run(PRESSED.format(module=None, after="signal.raise_signal(signal.SIGINT)"))
    assert (done.returncode, done.stderr) == (0, "")
    assert done.stdout


def _run(program: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-c", program], capture_output=True, text=True, check=False
    )
