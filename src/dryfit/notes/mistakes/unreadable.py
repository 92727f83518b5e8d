"""What may be wrong with a line that could not be read to its end."""

from __future__ import annotations

from collections.abc import Iterator

from dryfit.notes.mistake import Mistake
from dryfit.notes.mistakes import (
    at_the_end,
    at_the_start,
    habits,
    in_air,
    in_cuts,
    in_lips,
    in_lists,
    in_names,
    in_numbers,
    in_patterns,
    in_places,
    in_relations,
    in_signs,
    in_site,
    in_stock,
    in_words,
    in_work,
    said_otherwise,
)
from dryfit.notes.mistakes.stumble import Stumble
from dryfit.notes.reading.lexer import Failure
from dryfit.notes.reading.vocabulary import Vocabulary

# What was written wrong comes first, then what nearly fits, then what is missing.
_CASES = (
    *in_numbers.CASES,
    at_the_start.marked_as_list,
    *in_site.START_CASES,
    at_the_start.value_without_equals,
    habits.comma_between_places,
    *in_air.CASES,
    *in_stock.CASES,
    *in_lips.CASES,
    *said_otherwise.CASES,
    *in_places.CASES,
    *in_relations.CASES,
    *in_cuts.CASES,
    *in_work.CASES,
    *in_patterns.CASES,
    *in_lists.CASES,
    *in_names.SORT_CASES,
    *in_words.SIGN_CASES,
    at_the_start.trade_word_as_value,
    in_signs.bracket,
    at_the_end.unfinished,
    in_signs.stray_sign,
    *at_the_start.CASES,
    *in_words.BEFORE_NEAR_CASES,
    *habits.CASES,
    *in_words.NEAR_CASES,
    *in_site.CASES,
    *in_words.CASES,
    *in_names.CASES,
    at_the_end.rest_of_line,
    *in_words.LAST_CASES,
)


def mistakes(failure: Failure, vocabulary: Vocabulary) -> Iterator[Mistake]:
    """Yield what may be wrong at the place where the line stops making sense, likeliest first."""
    stumble = Stumble(failure, vocabulary)
    for case in _CASES:
        mistake = case(stumble)
        if mistake:
            yield mistake
