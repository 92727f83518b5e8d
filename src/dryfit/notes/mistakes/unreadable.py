"""The mistake on a line that could not be read to its end."""

from __future__ import annotations

from dryfit.notes.mistake import Mistake
from dryfit.notes.mistakes import (
    at_the_end,
    at_the_start,
    in_names,
    in_numbers,
    in_signs,
    in_words,
)
from dryfit.notes.mistakes.stumble import Stumble
from dryfit.notes.reading.lexer import Failure
from dryfit.notes.reading.vocabulary import Vocabulary

# The first case that knows what is wrong speaks: what was written comes first, then what nearly
# fits, then what is missing.
_CASES = (
    *in_numbers.CASES,
    *in_signs.CASES,
    *at_the_end.CASES,
    *at_the_start.CASES,
    *in_names.NEAR_CASES,
    *in_words.NEAR_CASES,
    *in_words.CASES,
    *in_names.CASES,
    at_the_end.rest_of_line,
    *in_words.LAST_CASES,
)


def unreadable(failure: Failure, vocabulary: Vocabulary) -> Mistake:
    """Return the mistake at the place where the line stops making sense."""
    stumble = Stumble.of(failure, vocabulary)
    for case in _CASES:
        mistake = case(stumble)
        if mistake:
            return mistake
    raise AssertionError(f"no case for line {failure.line.line}")
