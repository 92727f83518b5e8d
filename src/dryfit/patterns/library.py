"""The patterns that notes can use: the shipped folder and the maker's own."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from functools import lru_cache
from pathlib import Path

from dryfit.diagnostics import Diagnostic, Findings, Source
from dryfit.notes import parse, source_of
from dryfit.notes.tree import PatternBlock

SHIPPED = Path(__file__).resolve().parent / "shipped"
_ENDING = ".dryfit"
_AS = re.compile(r"\bas\b", re.IGNORECASE)


def may_use_patterns(source: Source) -> bool:
    """Return whether the notes say ``as`` anywhere: without it no pattern need be read."""
    return _AS.search(source.text) is not None


def library(environment: Mapping[str, str]) -> tuple[tuple[PatternBlock, ...], Findings]:
    """Return the maker's own patterns, then the shipped ones, and what is wrong with the own.

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
    return (*blocks, *shipped()), tuple(findings)


def own_folder(environment: Mapping[str, str]) -> Path:
    """Return the folder of the maker's own patterns, which need not exist."""
    base = environment.get("XDG_CONFIG_HOME") or str(Path.home() / ".config")
    return Path(base) / "dryfit" / "patterns"


@lru_cache(maxsize=1)
def shipped() -> tuple[PatternBlock, ...]:
    """Return the patterns that come with the program, by file name."""
    found: list[PatternBlock] = []
    for path in _files(SHIPPED):
        source = Source(path.name, path.read_text(encoding="utf-8"))
        found += parse(source)[0].patterns
    return tuple(found)


def _files(folder: Path) -> Iterable[Path]:
    return sorted(folder.glob(f"*{_ENDING}")) if folder.is_dir() else ()
