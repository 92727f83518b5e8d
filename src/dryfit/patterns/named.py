"""Which of the shipped patterns a text may name: reading all of them would slow every check."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator

from dryfit.notes.names import canonical, singular

_WORD = re.compile(r"[^\W\d_]+")
_REMARK = re.compile(r"#.*|^\s*note\b.*", re.IGNORECASE | re.MULTILINE)
_USED = re.compile(r"\bas\s+(?:an?\s+|the\s+)?([^,:\n]+)", re.IGNORECASE)
_HEADING = re.compile(r"^\s*pattern\s+(.+?)\s*(?:\bwith\b|:|$)", re.IGNORECASE | re.MULTILINE)
_NO_PATTERN = ("drawn",)
"""`cut as drawn` names none."""


def named_in(text: str, shipped: Iterable[str], own: Iterable[str]) -> frozenset[str]:
    """Return those of the `shipped` names that the text may mean, rather too many than too few.

    `own` are the names of the maker's own patterns.  Where something is made as what nobody knows,
    all are returned: the finding then tells the nearest name.
    """
    names = frozenset(shipped)
    text = _REMARK.sub("", text)
    known = {*names, *own, *(canonical(each) for each in _HEADING.findall(text)), *_NO_PATTERN}
    if not all(_is_known(phrase, known) for phrase in _used(text)):
        return names
    words = {singular(word) for word in _WORD.findall(text)}
    return frozenset(name for name in names if words.issuperset(name.split()))


def _used(text: str) -> Iterator[str]:
    return (canonical(phrase) for phrase in _USED.findall(text))


def _is_known(phrase: str, known: Iterable[str]) -> bool:
    return any(phrase == name or phrase.startswith(f"{name} ") for name in known)
