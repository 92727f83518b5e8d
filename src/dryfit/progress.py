"""What a command is doing, on a terminal, once it has taken over a second."""

from __future__ import annotations

import sys
import time
from types import TracebackType
from typing import Self

_PATIENCE_SECONDS = 1.0
_CLEAR_LINE = "\r\x1b[K"


class Progress:
    """Say what is going on in one line that is wiped away at the end.

    Nothing is shown in the first second, nor where standard error is no terminal.
    """

    def __init__(self) -> None:
        self._started = time.monotonic()
        self._terminal = sys.stderr.isatty()
        self._shown = False

    def __call__(self, words: str) -> None:
        """Note the stage that begins now."""
        if self._terminal and time.monotonic() - self._started > _PATIENCE_SECONDS:
            sys.stderr.write(f"{_CLEAR_LINE}{words} ...")
            sys.stderr.flush()
            self._shown = True

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
        """Leave the terminal clean."""
        self.clear()
