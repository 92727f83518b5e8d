"""Where each key and value of a TOML text stands; `tomllib` keeps no positions.

The text has been read by `tomllib` before, so that only valid TOML gets here.
"""

from __future__ import annotations

import re
import tomllib
from dataclasses import dataclass

from dryfit.diagnostics import Source, Span

Path = tuple[str, ...]

_BLANK = re.compile(r"(?:[ \t\n]|#[^\n]*)*")
_KEY = re.compile(r"[A-Za-z0-9_-]+|\"(?:[^\"\\\n]|\\.)*\"|'[^'\n]*'")
_DOT = re.compile(r"[ \t]*\.[ \t]*")
_STRING = re.compile(
    r'"""(?:[^\\]|\\[\s\S])*?"""(?:"{0,2})'
    r"|'''[\s\S]*?'''(?:'{0,2})"
    r'|"(?:[^"\\\n]|\\.)*"'
    r"|'[^'\n]*'"
)
_SCALAR = re.compile(r"[^,\]}#\n]*")
_TOKEN = re.compile(rf"{_STRING.pattern}|#[^\n]*|[^\"'#\[\]{{}}]+|[\[\]{{}}]")
_HEADER = re.compile(r"\[+[ \t]*")

# No key of a shop file lies deeper; what does is skipped as a whole, so that no text is too deep.
_DEEPEST = 8


@dataclass(frozen=True, slots=True)
class _Extent:
    start: int
    end: int


class Places:
    """Spans of the keys and values of a TOML text, looked up by the path of the key."""

    def __init__(self, source: Source) -> None:
        self._source = source
        self._keys: dict[Path, _Extent] = {}
        self._values: dict[Path, _Extent] = {}
        self._at = 0
        self._scan()

    def key(self, path: Path) -> Span:
        """Return the span of the key, or of the nearest table around it that the text names."""
        while path and path not in self._keys:
            path = path[:-1]
        return self._span(self._keys.get(path, _Extent(0, 0)))

    def value(self, path: Path) -> Span:
        """Return the span of the value, cut at the end of its first line; else as `key`."""
        extent = self._values.get(path)
        return self.key(path) if extent is None else self._span(extent)

    def _span(self, extent: _Extent) -> Span:
        text = self._source.text
        line_start = text.rfind("\n", 0, extent.start) + 1
        line_end = text.find("\n", extent.start)
        end = min(extent.end, len(text) if line_end < 0 else line_end)
        line = text.count("\n", 0, extent.start) + 1
        return Span(self._source, line, extent.start - line_start + 1, end - line_start + 1)

    def _scan(self) -> None:
        table: Path = ()
        self._skip_blank()
        while self._at < len(self._source.text):
            if self._source.text[self._at] == "[":
                table = self._header()
            else:
                self._pair(table)
            self._skip_blank()

    def _header(self) -> Path:
        opening = _HEADER.match(self._source.text, self._at)
        self._at = opening.end() if opening else self._at
        path = self._dotted(())
        self._at = self._source.text.index("]", self._at)
        while self._source.text.startswith("]", self._at):
            self._at += 1
        return path

    def _pair(self, table: Path) -> None:
        path = self._dotted(table)
        self._at = self._source.text.index("=", self._at) + 1
        self._skip_blank()
        start = self._at
        self._skip_value(path)
        self._values.setdefault(path, _Extent(start, self._at))

    def _dotted(self, table: Path) -> Path:
        text, path = self._source.text, table
        while match := _KEY.match(text, self._at):
            path = (*path, _plain(match[0]))
            self._keys.setdefault(path, _Extent(match.start(), match.end()))
            self._at = match.end()
            dot = _DOT.match(text, self._at)
            if dot is None:
                break
            self._at = dot.end()
        return path

    def _skip_blank(self) -> None:
        match = _BLANK.match(self._source.text, self._at)
        self._at = match.end() if match else self._at

    def _skip_value(self, path: Path) -> None:
        text = self._source.text
        if text[self._at] == "{" and len(path) < _DEEPEST:
            self._skip_table(path)
        elif text[self._at] in "[{":
            self._skip_brackets()
        else:
            found = _STRING.match(text, self._at) or _SCALAR.match(text, self._at)
            self._at += len(found[0].rstrip()) if found else 0

    def _skip_table(self, path: Path) -> None:
        self._at += 1
        self._skip_blank()
        while self._source.text[self._at] != "}":
            self._pair(path)
            self._skip_blank()
            if self._source.text[self._at] == ",":
                self._at += 1
                self._skip_blank()
        self._at += 1

    def _skip_brackets(self) -> None:
        depth = 0
        for token in _TOKEN.finditer(self._source.text, self._at):
            depth += {"[": 1, "{": 1, "]": -1, "}": -1}.get(token[0], 0)
            if depth == 0:
                self._at = token.end()
                return


def _plain(key: str) -> str:
    if key[0] not in "\"'":
        return key
    return str(tomllib.loads(f"key = {key}")["key"])
