"""The patterns that notes can use: the shipped folder and the maker's own."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from collections.abc import Set as AbstractSet
from functools import lru_cache
from pathlib import Path

from dryfit.diagnostics import Diagnostic, Findings, Source
from dryfit.notes import parse, source_of
from dryfit.notes.tree import PatternBlock
from dryfit.patterns.named import named_in

SHIPPED = Path(__file__).resolve().parent / "shipped"
_ENDING = ".dryfit"
_AS = re.compile(r"\bas\b", re.IGNORECASE)


def may_use_patterns(source: Source) -> bool:
    """Return whether the notes say ``as`` anywhere: without it no pattern need be read."""
    return _AS.search(source.text) is not None


def library(
    environment: Mapping[str, str], text: str | None = None
) -> tuple[tuple[PatternBlock, ...], Findings]:
    """Return the maker's own patterns, then the shipped ones, and what is wrong with the own.

    With a text, only those of the shipped patterns that it or one of the maker's own may name.
    Raises OSError when a file of the maker's folder cannot be read.
    """
    blocks: list[PatternBlock] = []
    findings: list[Diagnostic] = []
    for path in _files(own_folder(environment)):
        source = source_of(str(path), path.read_bytes())
        if isinstance(source, Diagnostic):
            findings.append(source)
            continue
        notes, in_notes = parse(source)
        blocks += notes.patterns
        findings += in_notes
    if text is None:
        return (*blocks, *shipped()), tuple(findings)
    texts = (text, *dict.fromkeys(block.notes.source.text for block in blocks))
    return (*blocks, *_shipped_in(texts, {block.name for block in blocks})), tuple(findings)


def _shipped_in(texts: Iterable[str], own: AbstractSet[str]) -> tuple[PatternBlock, ...]:
    """Return the shipped patterns that the texts may name, and those that these may name."""
    files = {path.stem.replace("_", " "): path for path in _files(SHIPPED)}
    needed: set[str] = set()
    waiting = list(texts)
    while waiting:
        new = named_in(waiting.pop(), files, own) - needed
        needed |= new
        waiting += [files[name].read_text(encoding="utf-8") for name in new]
    return tuple(block for name in files if name in needed for block in _blocks_in(files[name]))


def own_folder(environment: Mapping[str, str]) -> Path:
    """Return the folder of the maker's own patterns, which need not exist."""
    base = environment.get("XDG_CONFIG_HOME") or str(Path.home() / ".config")
    return Path(base) / "dryfit" / "patterns"


@lru_cache(maxsize=1)
def shipped() -> tuple[PatternBlock, ...]:
    """Return the patterns that come with the program, by file name."""
    return tuple(block for path in _files(SHIPPED) for block in _blocks_in(path))


@lru_cache(maxsize=64)
def _blocks_in(path: Path) -> tuple[PatternBlock, ...]:
    source = Source(path.name, path.read_text(encoding="utf-8"))
    return parse(source)[0].patterns


def _files(folder: Path) -> Iterable[Path]:
    return sorted(folder.glob(f"*{_ENDING}")) if folder.is_dir() else ()
