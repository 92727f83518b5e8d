"""Lists of parts: a comma where `and` is read, and a part that nothing says how it is met."""

from __future__ import annotations

from dryfit.diagnostics import Hint
from dryfit.notes.mistake import Mistake, Repair
from dryfit.notes.mistakes.stumble import Stumble
from dryfit.notes.names import canonical

_BEHIND_A_NAME = ("", ",", ";", "and")


def comma_in_hosts(stumble: Stumble) -> Mistake | None:
    """``inside stiles, top rail and bottom rail``: hosts are joined by `and`."""
    name = _part_taken_for_a_measure(stumble)
    if name is None or "PREP" not in {token.type for token in stumble.failure.tokens}:
        return None
    start, end = name
    before = stumble.text[:start].rstrip()
    if not before.endswith(","):
        return None
    comma = len(before) - 1
    if _preposition_is_far(stumble, comma):
        return None
    last = _end_of_list(stumble, end)
    listed = stumble.text[comma:last].replace(",", " and")
    return Mistake(
        "comma-in-hosts",
        f"`{stumble.text[start:end]}` is a part, and parts that one meets are joined by `and`",
        stumble.span(start, end),
        (Repair("write `and` instead of the comma", stumble.span(comma, last), listed),),
        guess=True,
    )


def preposition_left_out(stumble: Stumble) -> Mistake | None:
    """``tenon 16 long 8 thick end stretchers``: into what is meant, but `into` is missing."""
    name = _part_taken_for_a_measure(stumble)
    if name is None or len(stumble.failure.tokens) < 2:
        return None
    start, end = name
    if stumble.text[:start].rstrip().endswith(","):
        return None
    written = stumble.text[start:end]
    return Mistake(
        "preposition-missing",
        f"nothing says how this part meets the `{written}`",
        stumble.span(start, end),
        (Repair(f"write `into {written}`", stumble.span(start, start), "into "),),
        guess=True,
    )


def distance_as_place(stumble: Stumble) -> Mistake | None:
    """``at 30, 270 and 600``: places have names, distances have a direction."""
    last = stumble.previous
    if last is None or last.type != "_AT" or not stumble.written[:1].isdigit():
        return None
    written = stumble.written
    assert last.start_pos is not None
    assert last.end_pos is not None
    at = stumble.span(last.start_pos, last.end_pos)
    return Mistake(
        "unknown-place",
        f"`{written}` is a distance, and `at` wants a place",
        stumble.place,
        (
            Repair("is it a height?", at, "up"),
            Hint("a distance has a side, such as `{30} from left`; for equal gaps write `spread`"),
        ),
    )


def _part_taken_for_a_measure(stumble: Stumble) -> tuple[int, int] | None:
    last = stumble.previous
    if (
        last is None
        or last.type != "NAME"
        or not stumble.takes <= {"DIM", "_DOT", "_POSS", "SHOWS"}
    ):
        return None
    if stumble.written not in _BEHIND_A_NAME or last.start_pos is None or last.end_pos is None:
        return None
    return last.start_pos, last.end_pos


def _preposition_is_far(stumble: Stumble, comma: int) -> bool:
    # Between the preposition and the comma stand names only.
    tokens = [token for token in stumble.failure.tokens if (token.start_pos or 0) < comma]
    for token in reversed(tokens):
        if token.type == "PREP":
            return False
        if token.type not in ("NAME", "_AND", "AND", "PLACE", "_COMMA", "COMMA"):
            return True
    return True


def _end_of_list(stumble: Stumble, end: int) -> int:
    # The names that follow behind further commas.
    while True:
        rest = stumble.text[end:]
        start = end + len(rest) - len(rest.lstrip(", "))
        if "," not in stumble.text[end:start]:
            return end
        runs = stumble.runs_from(start)
        found = next((s for run, _, s in runs if canonical(run) in stumble.vocabulary.parts), None)
        if found is None:
            return end
        end = found


CASES = (comma_in_hosts, preposition_left_out, distance_as_place)
