"""Ctrl-C on a terminal: the best order so far is printed; a second one ends all.

The search is made endless, so that the signal comes within it; the test waits for the line with the
best so far, and no time is asserted.
"""

from __future__ import annotations

import os
import signal
import subprocess
import sys
from pathlib import Path

import pytest

pty = pytest.importorskip("pty")  # only where there are pseudo-terminals

STOOL = Path(__file__).parents[2] / "examples" / "step_stool.dryfit"
# What runs in the background hears no interrupt, and hands that on to what it starts.
ENDLESS = """
import signal, sys
signal.signal(signal.SIGINT, signal.default_int_handler)
from dryfit.cli import main
from dryfit.planning import make_plan
make_plan.__kwdefaults__["effort"] = 10**9
sys.exit(main(sys.argv[1:]))
"""
HELD = f"""
import sys, time
from dryfit import workshop
def held(*_):
    sys.stderr.write("rehearsing, held")
    sys.stderr.flush()
    while True:
        time.sleep(1)
workshop.rehearse = held
{ENDLESS}
"""


class OnATerminal:
    """A program whose standard error is a terminal of its own."""

    def __init__(self, script: str, *arguments: str, cwd: Path) -> None:
        self._seen = b""
        self._terminal, other = pty.openpty()
        self.child = subprocess.Popen(
            [sys.executable, "-c", script, *arguments],
            cwd=cwd,
            stdin=subprocess.DEVNULL,
            stdout=subprocess.PIPE,
            stderr=other,
            env={**os.environ, "XDG_CONFIG_HOME": str(cwd)},
        )
        os.close(other)

    def until(self, words: str) -> None:
        """Read until the terminal shows the words."""
        while words.encode() not in self._seen:
            self._seen += os.read(self._terminal, 4096)

    def interrupt(self) -> None:
        self.child.send_signal(signal.SIGINT)

    def ended(self) -> tuple[int, str, str]:
        """Exit status, standard output, and what the terminal showed."""
        out = self.child.communicate()[0].decode()
        self.rest()
        os.close(self._terminal)
        return self.child.returncode, out, self._seen.decode()

    def rest(self) -> None:
        try:
            while more := os.read(self._terminal, 4096):
                self._seen += more
        except OSError:  # no one writes any more
            return


def test_the_first_interrupt_takes_the_best_order_so_far(tmp_path: Path) -> None:
    run = OnATerminal(ENDLESS, "steps", str(STOOL), cwd=tmp_path)
    run.until("Ctrl-C takes it")
    run.interrupt()
    status, out, terminal = run.ended()
    assert status == 0
    assert "seat / coat 2" in out
    assert "ended by hand" in " ".join(out.split())
    assert "notice[search-ended-early]" in terminal
    assert "Traceback" not in terminal


def test_the_second_interrupt_ends_with_130_and_leaves_nothing(tmp_path: Path) -> None:
    run = OnATerminal(HELD, "booklet", str(STOOL), "-o", str(tmp_path / "out"), cwd=tmp_path)
    run.until("Ctrl-C takes it")
    run.interrupt()
    run.until("rehearsing, held")
    run.interrupt()
    status, out, terminal = run.ended()
    assert (status, out) == (130, "")
    assert "Traceback" not in terminal
    assert list(tmp_path.iterdir()) == []
