"""Plain text to be read on a terminal."""

from __future__ import annotations

import textwrap

WIDTH = 80
INDENT = "    "


def filled(text: str, *, first: str = "", rest: str = "") -> str:
    """Return one paragraph filled to `WIDTH`; `first` and `rest` go before its lines."""
    return textwrap.fill(
        text,
        WIDTH,
        initial_indent=first,
        subsequent_indent=rest,
        break_long_words=False,
        break_on_hyphens=False,
    )


def section(heading: str, *bodies: str) -> str:
    """Return the bodies under their heading."""
    return "\n".join((heading, *bodies))
