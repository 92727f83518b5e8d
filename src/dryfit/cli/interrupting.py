"""What Ctrl-C does: the first one, while an order is searched, takes the best order so far.

Everywhere else, and a second time anywhere, it ends the program with status 130.
"""

from __future__ import annotations

import signal
import threading
from collections.abc import Callable, Iterator
from contextlib import AbstractContextManager, contextmanager
from types import FrameType
from typing import TYPE_CHECKING

from dryfit.cli.status import INTERRUPTED
from dryfit.progress import Progress

if TYPE_CHECKING:
    from dryfit.order import Glimpse

Handler = Callable[[int, FrameType | None], None] | signal.Handlers


class Search:
    """Looks on while orders are searched, and ends the search when it is told to.

    Once one was ended the later ones of the same run end as soon as they have an order.
    """

    def __init__(self, progress: Progress) -> None:
        self._progress = progress
        self._ended = False

    def __call__(self, glimpse: Glimpse) -> None:
        """Show the best so far; KeyboardInterrupt once the search is to end."""
        if self._ended:
            raise KeyboardInterrupt
        self._progress.update(lambda: words(glimpse))

    def listening(self) -> AbstractContextManager[None]:
        """Let the first interrupt inside end the search, and a second one the program.

        The first one is only noted, so that it cannot strike where something is half done.
        """
        return _handled_by(self._interrupted)

    def _interrupted(self, _number: int, _frame: FrameType | None) -> None:
        if self._ended:
            raise SystemExit(INTERRUPTED)
        self._ended = True


def undisturbed() -> AbstractContextManager[None]:
    """Do what takes a moment and must not be left half done: an interrupt inside comes too late."""
    return _handled_by(signal.SIG_IGN)


@contextmanager
def _handled_by(handler: Handler) -> Iterator[None]:
    """Have interrupts inside handled so.

    Does nothing where they are ignored or handled already, or in a thread.
    """
    usual = signal.getsignal(signal.SIGINT) is signal.default_int_handler
    if not usual or threading.current_thread() is not threading.main_thread():
        yield
        return
    signal.signal(signal.SIGINT, handler)
    try:
        yield
    finally:
        signal.signal(signal.SIGINT, signal.default_int_handler)


def words(glimpse: Glimpse) -> str:
    """Return the best so far in one line of less than 80 characters; the bound rounded down."""
    setup, changes, waiting = (
        f"{tenths / 10:.0f}" for tenths in (glimpse.setup, glimpse.changeover, glimpse.waiting)
    )
    return (
        f"set-up {setup} min (changes {changes}, at least {glimpse.bound // 10}), "
        f"waiting {waiting}; Ctrl-C takes it"
    )
