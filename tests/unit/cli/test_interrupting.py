"""What an interrupt does, without any clock: the signal is raised by the test itself."""

from __future__ import annotations

import signal
import threading
from collections.abc import Iterator

import pytest

from dryfit.cli import main, on_notes
from dryfit.cli.interrupting import Search, undisturbed, words
from dryfit.order import Glimpse
from dryfit.progress import Progress

GLIMPSE = Glimpse(changeover=1410, setup=1875, waiting=9611, bound=1365)
pytestmark = pytest.mark.skipif(
    threading.current_thread() is not threading.main_thread(), reason="signals are for the main one"
)


@pytest.fixture(autouse=True)
def _interrupts_are_heard() -> Iterator[None]:
    """As in a terminal: what runs in the background hears none."""
    usual = signal.signal(signal.SIGINT, signal.default_int_handler)
    yield
    signal.signal(signal.SIGINT, usual)


def test_the_first_interrupt_ends_the_search_at_its_next_glimpse() -> None:
    search = Search(Progress())
    with search.listening():
        search(GLIMPSE)
        signal.raise_signal(signal.SIGINT)
        for _ in range(2):  # and every later search of the same run
            with pytest.raises(KeyboardInterrupt):
                search(GLIMPSE)
    assert signal.getsignal(signal.SIGINT) is signal.default_int_handler


def test_the_second_interrupt_ends_the_program() -> None:
    search = Search(Progress())
    with search.listening():
        signal.raise_signal(signal.SIGINT)
        with pytest.raises(SystemExit) as ended:
            signal.raise_signal(signal.SIGINT)
    assert ended.value.code == 130
    assert signal.getsignal(signal.SIGINT) is signal.default_int_handler


def test_an_interrupt_that_is_ignored_stays_ignored() -> None:
    usual = signal.signal(signal.SIGINT, signal.SIG_IGN)
    try:
        search = Search(Progress())
        with search.listening(), undisturbed():
            signal.raise_signal(signal.SIGINT)
            search(GLIMPSE)
        assert signal.getsignal(signal.SIGINT) is signal.SIG_IGN
    finally:
        signal.signal(signal.SIGINT, usual)


def test_an_interrupt_while_files_are_written_comes_too_late() -> None:
    with undisturbed():
        signal.raise_signal(signal.SIGINT)
    assert signal.getsignal(signal.SIGINT) is signal.default_int_handler


def test_an_interrupt_elsewhere_ends_the_program(monkeypatch: pytest.MonkeyPatch) -> None:
    def interrupted(_: object) -> int:
        raise KeyboardInterrupt

    monkeypatch.setattr(on_notes, "read_notes", interrupted)
    assert main(["check", "piece.dryfit"]) == 130


def test_the_best_so_far_is_told_in_one_line() -> None:
    said = "set-up 188 min (changes 141, at least 136), waiting 961; Ctrl-C takes it"
    assert words(GLIMPSE) == said
    assert len(said) < 80
