from collections.abc import Iterator

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dryfit.diagnostics import Source
from dryfit.notes import parse, value_names
from dryfit.notes.reading.near import distance

LETTERS = "bdgkmprt"
names = st.lists(st.text(alphabet="bdi ", min_size=5, max_size=7), max_size=8)


def asked_about(named: list[str]) -> list[tuple[int, int]]:
    """The line of each value that may be the same as another, with that one's line."""
    text = "\n".join(f"{name} = 1" for name in named)
    return [
        (finding.span.line, finding.notes[0].span.line)
        for finding in parse(Source("a.dryfit", text))[1]
        if finding.code == "near-values" and finding.span and finding.notes[0].span
    ]


def nearly_same(first: str, second: str) -> bool:
    """What the question is about, by its definition."""
    words = zip(first.split(), second.split(), strict=False)
    apart = all(one == other or min(len(one), len(other)) > 1 for one, other in words)
    return min(len(first), len(second)) >= 5 and distance(first, second) <= 1 and apart


def expected(named: list[str]) -> Iterator[tuple[int, int]]:
    for later, name in enumerate(named):
        for earlier in range(later):
            if nearly_same(name, named[earlier]):
                yield later + 1, earlier + 1
                break


@given(names)
def test_each_value_is_asked_about_that_is_one_letter_from_an_earlier_one(
    written: list[str],
) -> None:
    named = list(dict.fromkeys(f"q{' '.join(name.split())}" for name in written))
    assert asked_about(named) == list(expected(named))


@pytest.mark.parametrize("named", [["rail gap", "rial gap"], ["post gap", "posts gap lo"]])
def test_letters_that_are_swapped_are_one_mistake(named: list[str]) -> None:
    assert asked_about(named) == list(expected(named))


def named_apart(count: int) -> list[str]:
    return [
        f"{LETTERS[i % 8] * 2}a{LETTERS[i // 8 % 8] * 2}o {LETTERS[i // 64 % 8] * 3}u"
        for i in range(count)
    ]


def named_alike(count: int) -> list[str]:
    return [f"gap {chr(0x4E00 + i)}" for i in range(count)]


@pytest.mark.parametrize("named", [named_apart, named_alike])
def test_twice_as_many_values_are_compared_at_most_about_twice_as_often(
    named: object, monkeypatch: pytest.MonkeyPatch
) -> None:
    compared = [0]

    def counting(first: str, second: str, most: int) -> int:
        compared[0] += 1
        return distance(first, second, most)

    monkeypatch.setattr(value_names, "distance", counting)
    assert callable(named)
    asked_about(named(200))
    once, compared[0] = compared[0], 0
    asked_about(named(400))
    assert compared[0] <= 2 * once + 400 * 21
