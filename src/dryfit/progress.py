"""What a command is doing, on a terminal, once it has taken over a second; what took how long.

No output depends on the clock that is read here: it is told on standard error only.
"""

from __future__ import annotations

import sys
import time
from collections.abc import Callable, Sequence
from itertools import pairwise
from types import TracebackType
from typing import Self

_PATIENCE_SECONDS = 1.0
_STEADY_SECONDS = 0.2
_CLEAR_LINE = "\r\x1b[K"


class Progress:
    """Say what is going on in one line that is wiped away at the end.

    Nothing is shown in the first second, nor where standard error is no terminal.  `timed` adds
    at the end how long each stage took, wherever standard error goes.
    """

    def __init__(self, *, timed: bool = False) -> None:
        self._started = time.monotonic()
        self._terminal = sys.stderr.isatty()
        self._shown = False
        self._written = self._started
        self._timed = timed
        self._begun: list[tuple[str, float]] = []

    def __call__(self, words: str) -> None:
        """Note the stage that begins now."""
        now = time.monotonic()
        self._begun.append((words, now))
        if self._terminal and now - self._started > _PATIENCE_SECONDS:
            self._write(f"{words} ...", now)

    def update(self, words: Callable[[], str]) -> None:
        """Tell how far the stage is; called as often as one likes, the line is kept readable."""
        now = time.monotonic()
        patient = now - self._started > _PATIENCE_SECONDS
        if (
            self._terminal
            and patient
            and (not self._shown or now - self._written > _STEADY_SECONDS)
        ):
            self._write(words(), now)

    def _write(self, line: str, now: float) -> None:
        sys.stderr.write(f"{_CLEAR_LINE}{line}")
        sys.stderr.flush()
        self._shown, self._written = True, now

    def clear(self) -> None:
        """Wipe the line."""
        if self._shown:
            sys.stderr.write(_CLEAR_LINE)
            sys.stderr.flush()
            self._shown = False

    def __enter__(self) -> Self:
        """Begin counting."""
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        """Leave the terminal clean, and tell the times where that is wanted."""
        self.clear()
        if self._timed and error is None:
            sys.stderr.write(times_table(self._begun, time.monotonic()))


def times_table(begun: Sequence[tuple[str, float]], ended: float) -> str:
    """Return a line for each stage: seconds, its share of all, and its words; then the sum.

    `begun` says when each stage began, in seconds of any clock; `ended` when the last was done.
    """
    if not begun:
        return ""
    moments = [moment for _, moment in begun] + [ended]
    spent = [after - before for before, after in pairwise(moments)]
    whole = sum(spent)
    rows = [
        f"{seconds:8.2f} s {100 * seconds / (whole or 1):3.0f} %  {words}\n"
        for (words, _), seconds in zip(begun, spent, strict=True)
    ]
    return "".join((*rows, f"{whole:8.2f} s        in all\n"))
