"""`dryfit explain` alone: every code that has a page, with the first sentence of it."""

from __future__ import annotations

import re

from dryfit.diagnostics.explain import known_codes, page
from dryfit.guide.page import INDENT, filled

_SENTENCE_END = re.compile(r"(?<=[.:])\s")


def codes_text() -> str:
    """Return the list of codes as plain text, ending in a newline."""
    known = [shown for code in known_codes() if (shown := page(code))]
    return "".join(_entry(shown.code, shown.means) + "\n" for shown in known)


def _entry(code: str, means: str) -> str:
    first = _SENTENCE_END.split(" ".join(means.split()), maxsplit=1)[0]
    return f"{code}\n{filled(first.rstrip('.:') + '.', first=INDENT, rest=INDENT)}"
