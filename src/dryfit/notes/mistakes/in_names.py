"""Names that nothing bears, and names of the wrong sort: a part where a measure belongs."""

from __future__ import annotations

import re

from dryfit.diagnostics import Hint
from dryfit.notes.mistake import Mistake, Repair
from dryfit.notes.mistakes.stumble import Stumble, parts_hint
from dryfit.notes.names import canonical
from dryfit.notes.reading.near import nearest
from dryfit.notes.reading.runs import phrase_at

_DIMENSIONS = ("length", "width", "thickness")
_ADJECTIVES = {
    "long": "length",
    "wide": "width",
    "thick": "thickness",
    "high": "length",
    "height": "length",
}
_BEGIN_A_SUM = frozenset(
    {"INT", "NUMBER", "MEASURE", "NAME", "VALUE", "DIM", "OVERALL", "_HALF", "_LPAR", "_MINUS"}
)
_ONLY_A_DIMENSION = frozenset({"DIM", "_DOT", "_POSS", "SHOWS"})
_MOST_TOGETHER = 6
"""So many parts that end in one word are offered together."""

_DIMENSION_OF_VALUE = re.compile(r"\.\s*([^\W\d_]+)")


def unknown_dimension(stumble: Stumble) -> Mistake | None:
    """``leg.widht``, ``leg.wide``."""
    last = stumble.previous
    if last is None or last.type not in ("_DOT", "_POSS") or "DIM" not in stumble.takes:
        return None
    written = stumble.written.lower()
    meant = _ADJECTIVES.get(written)
    near = (meant,) if meant else nearest(written, _DIMENSIONS)
    return Mistake(
        "unknown-dimension",
        f"`{stumble.written}` is not a dimension of a part",
        stumble.place,
        (
            *(stumble.replacing(f"did you mean `{word}`?", word) for word in near),
            Hint("a part has a length, a width and a thickness"),
        ),
    )


def part_as_measure(stumble: Stumble) -> Mistake | None:
    """``leg x 20``: a part's name without the dimension that is meant."""
    last = stumble.previous
    if last is None or last.type != "NAME" or not stumble.takes <= _ONLY_A_DIMENSION:
        return None
    assert last.start_pos is not None
    assert last.end_pos is not None
    written = stumble.text[last.start_pos : last.end_pos]
    place = stumble.span(last.start_pos, last.end_pos)
    return Mistake(
        "part-as-measure",
        f"`{written}` is a part, not a measure",
        place,
        tuple(
            Repair(
                f"say which size of it: `{last.value}.{dimension}`",
                place,
                f"{last.value}.{dimension}",
            )
            for dimension in ("width", "thickness", "length")
        ),
    )


def dimension_of_value(stumble: Stumble) -> Mistake | None:
    """``overhang.width``: a value has no dimensions."""
    last = stumble.previous
    found = _DIMENSION_OF_VALUE.match(stumble.text, stumble.at)
    if last is None or last.type != "VALUE" or not found:
        return None
    place = stumble.span(*found.span())
    return Mistake(
        "measure-has-no-dimension",
        f"`{last.value}` is a measure and not a part, so it has no {found.group(1)}",
        place,
        (Repair(f"write `{last.value}` alone", place, ""),),
    )


def measure_as_part(stumble: Stumble) -> Mistake | None:
    """``into overhang``: a value where a part belongs."""
    if "NAME" not in stumble.takes:
        return None
    for written, start, end in stumble.runs():
        if canonical(written) in stumble.vocabulary.values and "VALUE" not in stumble.takes:
            return Mistake(
                "measure-as-part",
                f"`{written}` is a measure, not a part",
                stumble.span(start, end),
                parts_hint(stumble),
            )
    return None


def unknown_part(stumble: Stumble) -> Mistake | None:
    """``onto plinth``, ``glue up plinth``: only a name fits there, and there is none."""
    first = stumble.word_at(stumble.at)
    if first is None or not {"NAME"} <= stumble.takes or "VALUE" in stumble.takes:
        return None
    end = stumble.name_end(first)
    written = stumble.text[stumble.at : end]
    before = stumble.previous
    what, hints = "part", parts_hint(stumble)
    if before is not None and before.value == "glue up":
        what, hints = "glue-up", _glue_up_hint(stumble, written)
    start = stumble.at
    if before is not None and before.type == "PLACE" and before.start_pos is not None:
        # A place word may be half of a name that nothing bears: ``back rail``.
        start, written = before.start_pos, stumble.text[before.start_pos : end]
    place = stumble.span(start, end)
    alike = tuple(
        Repair(f"did you mean `{name}`?", place, name) for name in _of_the_same_sort(stumble, end)
    )
    return Mistake("unknown-name", f"no {what} is called `{written}`", place, (*alike, *hints))


def _of_the_same_sort(stumble: Stumble, end: int) -> tuple[str, ...]:
    # ``back rail`` where there is one ``hanging rail``; ``aprons`` means all that are called so.
    written = stumble.text[stumble.at : end]
    noun = canonical(written).split(" ")[-1]
    known = sorted(stumble.vocabulary.parts)
    found = [
        stumble.vocabulary.written.get(name, name)
        for name in known
        if name.split(" ")[-1] == noun and name != noun
    ]
    every = " and ".join(found)
    of_all = written.split()[-1].lower() != noun and 1 < len(found) <= _MOST_TOGETHER
    return (every, *found[:2]) if of_all else tuple(found[:2])


def unknown_value(stumble: Stumble) -> Mistake | None:
    """``set in revael``: only a measure fits, and there is none of the name."""
    first = stumble.word_at(stumble.at)
    if first is None or not {"VALUE", "MEASURE"} <= stumble.takes <= _BEGIN_A_SUM:
        return None
    if phrase_at(stumble.words, first):
        return None
    end = stumble.name_end(first)
    written = stumble.text[stumble.at : end]
    return Mistake(
        "unknown-name",
        f"nothing here is called `{written}`",
        stumble.span(stumble.at, end),
        (Hint(f"say what it is on a line of its own: `{written} = {{15}}`"),),
    )


def _glue_up_hint(stumble: Stumble, written: str) -> tuple[Hint, ...]:
    known = [stumble.vocabulary.written[part] for part in sorted(stumble.vocabulary.parts)]
    items = ", ".join(known[:3]) or "..."
    return (Hint(f"say on a line of its own what that is, such as `glue up {written}: {items}`"),)


def part_as_value(stumble: Stumble) -> Mistake | None:
    """``seat = 12``: the name of a part cannot be given to a value."""
    types = [token.type for token in stumble.failure.tokens]
    if types not in (["NAME", "_EQ"], ["_LET", "NAME", "_EQ"]) or stumble.takes != {"OPENING"}:
        return None
    first = stumble.failure.tokens[-2]
    assert first.start_pos is not None
    assert first.end_pos is not None
    return Mistake(
        "name-twice",
        f"`{first.value}` is a part already, so no value can be called so",
        stumble.span(first.start_pos, first.end_pos),
        (Hint("give the value a name of its own, such as `seat gap`"),),
    )


SORT_CASES = (
    unknown_dimension,
    part_as_value,
    part_as_measure,
    dimension_of_value,
    measure_as_part,
)
CASES = (unknown_part, unknown_value)
