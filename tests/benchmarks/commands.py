"""How long the commands take from a cold start, as multiples of starting Python alone.

Run by hand: ``python tests/benchmarks/commands.py``.  The commands take turns, so that a busy
machine is busy for all of them; the figures are processor seconds of the child process, the median
of the rounds, and the ratio to a bare start of the interpreter.
"""

from __future__ import annotations

import os
import subprocess
import sys
import tempfile
from pathlib import Path
from statistics import median

EXAMPLES = Path(__file__).parents[2] / "examples"
ROUNDS = 5


def main() -> None:
    """Print one row for each command."""
    with tempfile.TemporaryDirectory() as folder:
        commands = _commands(Path(folder))
        seconds: dict[str, list[float]] = {name: [] for name in commands}
        for _ in range(ROUNDS):
            for name, command in commands.items():
                seconds[name].append(_processor_seconds(command))
    start = median(seconds["python alone"])
    for name, taken in seconds.items():
        print(f"{name:32} {median(taken):6.2f} s  {median(taken) / start:6.1f} x")  # noqa: T201


def _commands(folder: Path) -> dict[str, list[str]]:
    dryfit = [sys.executable, "-m", "dryfit"]
    commands = {"python alone": [sys.executable, "-c", "pass"]}
    for example in sorted(EXAMPLES.glob("*.dryfit")):
        name = str(example)
        commands[f"check {example.stem}"] = [*dryfit, "check", name]
        commands[f"steps {example.stem}"] = [*dryfit, "steps", name]
        booklet = [*dryfit, "booklet", name, "-o", str(folder)]
        commands[f"booklet {example.stem}, HTML"] = [*booklet, "--no-pdf"]
        commands[f"booklet {example.stem}, both"] = booklet
    return commands


def _processor_seconds(command: list[str]) -> float:
    before = os.times()
    subprocess.run(command, check=True, capture_output=True)
    after = os.times()
    return (after.children_user - before.children_user) + (
        after.children_system - before.children_system
    )


if __name__ == "__main__":
    main()
