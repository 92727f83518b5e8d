"""Sixty known mistakes in the examples: each is found on its line, most are put right."""

import csv
from pathlib import Path
from typing import NamedTuple

import pytest

from dryfit.diagnostics import Diagnostic, Severity, Source
from dryfit.notes import parse
from dryfit.patterns import shipped

HERE = Path(__file__).parent
EXAMPLES = HERE.parents[1] / "examples"
WANTED = 60
WANTED_CORRECTIONS = 50


class Seed(NamedTuple):
    """A flawless text, and what one line of it became."""

    text: str
    line: int
    original: str
    findings: tuple[Diagnostic, ...]

    def corrections(self) -> list[str]:
        """The corrected lines that are offered for the line, blanks made single."""
        return [
            " ".join(hint.corrected_line.split())
            for finding in self.findings
            if finding.span and finding.span.line == self.line
            for hint in finding.hints
            if hint.corrected_line is not None
        ]

    def is_corrected(self) -> bool:
        """Whether one of the corrections is the line as it was."""
        return " ".join(self.original.split()) in self.corrections()


def seeds() -> list[tuple[str, Seed]]:
    found = []
    with (HERE / "mistakes.csv").open(encoding="utf-8", newline="") as file:
        for row in csv.DictReader(file):
            path = EXAMPLES / f"{row['piece']}.dryfit"
            text = path.read_text(encoding="utf-8")
            lines = text.split("\n")
            at = next(index for index, line in enumerate(lines) if row["written"] in line)
            original = lines[at]
            lines[at] = original.replace(row["written"], row["mistyped"], 1)
            _, findings = parse(Source(path.name, "\n".join(lines)))
            found.append((row["mistyped"], Seed(text, at + 1, original, findings)))
    return found


SEEDS = seeds()


@pytest.mark.parametrize("seed", [seed for _, seed in SEEDS], ids=[name for name, _ in SEEDS])
def test_the_mistake_is_found_on_its_line(seed: Seed) -> None:
    told = [finding for finding in seed.findings if finding.severity is Severity.ERROR]
    assert seed.line in [finding.span.line for finding in told if finding.span]


def test_one_mistake_gives_one_finding() -> None:
    assert [name for name, seed in SEEDS if len(seed.findings) != 1] == []


def test_most_mistakes_are_put_right() -> None:
    assert len(SEEDS) >= WANTED
    corrected = [name for name, seed in SEEDS if seed.is_corrected()]
    assert len(corrected) >= WANTED_CORRECTIONS, [
        name for name, seed in SEEDS if not seed.is_corrected()
    ]


def test_the_examples_themselves_are_flawless() -> None:
    for path in sorted(EXAMPLES.glob("*.dryfit")):
        assert parse(Source(path.name, path.read_text(encoding="utf-8")), shipped())[1] == ()
