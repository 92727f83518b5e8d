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
        self._at = re.compile(r"\[+[ \t]*").match(self._source.text, self._at).end()  # type: ignore[union-attr]
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
        opening = self._source.text[self._at]
        if opening == "[":
            self._skip_items("]", path)
        elif opening == "{":
            self._skip_items("}", path)
        else:
            text = self._source.text
            string = _STRING.match(text, self._at)
            scalar = _SCALAR.match(text, self._at)
            if string:
                self._at = string.end()
            elif scalar:
                self._at = scalar.start() + len(scalar[0].rstrip())

    def _skip_items(self, closing: str, path: Path) -> None:
        self._at += 1
        self._skip_blank()
        while self._source.text[self._at] != closing:
            if closing == "}":
                self._pair(path)
            else:
                self._skip_value(path)
            self._skip_blank()
            if self._source.text[self._at] == ",":
                self._at += 1
                self._skip_blank()
        self._at += 1


def _plain(key: str) -> str:
    if key[0] not in "\"'":
        return key
    return str(tomllib.loads(f"key = {key}")["key"])
