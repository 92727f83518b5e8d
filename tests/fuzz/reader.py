"""Coverage-guided fuzzing of the reader: whatever the text, it is read and tidied to an end.

Run by hand from the root of the repository, after ``pip install -e '.[fuzz]'``::

    python -m tests.fuzz.reader FOLDER -max_total_time=600 -seed=1

What follows the folder is libFuzzer's; the same seed on the same folder does the same again.  The
folder keeps the inputs that reached something new (``corpus``), each distinct crash with the text
that made it (``crashes``), and what was counted (``counts.json``); a second run goes on from there.
An input that takes longer than `-timeout` seconds is written down by libFuzzer as ``timeout-...``.
"""

from __future__ import annotations

import json
import random
import sys
import time
import traceback
from pathlib import Path

import atheris

# How near two words are is counted letter by letter: that it was is no new way through the program.
with atheris.instrument_imports(include=["dryfit.notes"], exclude=["dryfit.notes.reading.near"]):
    from dryfit.diagnostics import Source
    from dryfit.notes import parse, tidied
    from dryfit.patterns import library

from tests.property.strategies_notes import TO_DAMAGE, damaged

LONGEST_INPUT = 160
LINES_OF_A_SEED = 2
BETWEEN_COUNTS = 500
OPTIONS = [f"-max_len={LONGEST_INPUT}", "-timeout=20", "-rss_limit_mb=3000", "-verbosity=0"]
PATTERNS, _ = library({})


class Tally:
    """What was counted over all runs in a folder."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.crashes = folder / "crashes"
        self.crashes.mkdir(parents=True, exist_ok=True)
        kept = folder / "counts.json"
        known = json.loads(kept.read_text(encoding="utf-8")) if kept.is_file() else {}
        self.inputs: int = known.get("inputs", 0)
        self.slowest: float = known.get("slowest_seconds", 0.0)
        self.slowest_text: str = known.get("slowest_text", "")

    def counted(self, text: str, seconds: float) -> None:
        """Count an input, and write all down now and then."""
        self.inputs += 1
        if seconds > self.slowest:
            self.slowest, self.slowest_text = seconds, text
        if self.inputs % BETWEEN_COUNTS == 0:
            counts = {
                "inputs": self.inputs,
                "crashes": len(list(self.crashes.iterdir())),
                "slowest_seconds": round(self.slowest, 4),
                "slowest_text": self.slowest_text,
            }
            (self.folder / "counts.json").write_text(json.dumps(counts, indent=1), encoding="utf-8")

    def crashed(self, text: str, error: Exception) -> None:
        """Keep the text, under the error and the line of the program on which it came up."""
        frame = traceback.extract_tb(error.__traceback__)[-1]
        name = f"{type(error).__name__}-{Path(frame.filename).stem}-{frame.lineno}"
        (self.crashes / name).write_text(text, encoding="utf-8", errors="surrogatepass")


def read(text: str) -> None:
    """Read and tidy; what is tidy stays as it is, and as many lines."""
    source = Source("a.dryfit", text)
    parse(source, PATTERNS if "as" in text.lower().split() else ())
    after = tidied(source)
    assert after.count("\n") == text.count("\n")
    assert after == text or tidied(Source("a.dryfit", after)) == after


def mutated(data: bytes, most: int, seed: int) -> bytes:
    """Return the input with words, lines or signs of the language changed, or any bytes."""
    generator = random.Random(seed)  # noqa: S311 - damage, no secret
    if generator.random() < 0.1:
        changed: bytes = atheris.Mutate(data, most)
        return changed
    text = data.decode("utf-8", "replace")
    if generator.random() < 0.2:
        text += "\n" + generator.choice(SEEDS)
    return damaged(text, generator).encode("utf-8", "replace")[:most]


def seeds() -> tuple[str, ...]:
    """Return flawless notes in pieces of a few lines."""
    return tuple(
        "\n".join(lines[first : first + LINES_OF_A_SEED])
        for lines in (text.split("\n") for text in TO_DAMAGE)
        for first in range(0, len(lines), LINES_OF_A_SEED)
    )


SEEDS = seeds()


def main() -> None:
    """Fuzz until libFuzzer's options say stop."""
    folder, *options = sys.argv[1:]
    tally = Tally(Path(folder))
    corpus = Path(folder) / "corpus"
    corpus.mkdir(exist_ok=True)
    for number, piece in enumerate(SEEDS):
        (corpus / f"seed-{number:03}").write_text(piece, encoding="utf-8")

    def one_input(data: bytes) -> None:
        text = data.decode("utf-8", "replace")
        before = time.process_time()
        try:
            read(text)
        except Exception as error:  # noqa: BLE001 - any is a crash, and the run goes on
            tally.crashed(text, error)
        tally.counted(text, time.process_time() - before)

    places = [f"-artifact_prefix={folder}/", str(corpus)]
    atheris.Setup([sys.argv[0], *OPTIONS, *options, *places], one_input, custom_mutator=mutated)
    atheris.Fuzz()


if __name__ == "__main__":
    main()
