"""What no honest line reaches: lengths, brackets and sums beyond which a line is not read."""

from __future__ import annotations

import re
from itertools import pairwise

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.notes.reading.lines import SenseLine

LONGEST_LINE = 1000
LONGEST_NAME = 60
LONGEST_STATEMENT = 3000
DEEPEST_BRACKET = 25
MOST_SIGNS = 50
DEEPEST_PATTERN = 5
"""How many patterns may stand inside one another."""

# What is written behind these is no sum, however many strokes are in it.
_FREE_TEXT = re.compile(r"\s*(?:piece|note|done)\b", re.IGNORECASE)


def beyond_limits(line: SenseLine) -> Diagnostic | None:
    """Return the finding for a line that is not read because it is out of all measure, or None."""
    text = line.text
    starts = [stretch.start for stretch in line.stretches] + [len(text)]
    longest = max(end - start for start, end in pairwise(starts))
    if longest > LONGEST_LINE or len(text) > LONGEST_STATEMENT:
        return _beyond(
            line, "line-too-long", f"a line can have {LONGEST_LINE} characters", "break it in two"
        )
    if _FREE_TEXT.match(text):
        return None
    if text.count("(") > DEEPEST_BRACKET and _deepest(text) > DEEPEST_BRACKET:
        message = f"brackets can be {DEEPEST_BRACKET} deep"
        return _beyond(line, "too-many-brackets", message, "give a part of the sum a name")
    if sum(text.count(sign) for sign in "+-*/") > MOST_SIGNS:
        message = f"a line can have {MOST_SIGNS} signs of a sum"
        return _beyond(line, "sum-too-long", message, "give a part of the sum a name")
    return None


def _beyond(line: SenseLine, code: str, message: str, advice: str) -> Diagnostic:
    whole = line.whole()
    return Diagnostic(code, Severity.ERROR, f"{message} at most", whole, hints=(Hint(advice),))


def _deepest(text: str) -> int:
    deepest = depth = 0
    for sign in text:
        depth += {"(": 1, ")": -1}.get(sign, 0)
        deepest = max(deepest, depth)
    return deepest
