"""A text and places in it; everything read from notes or a shop file carries its place."""

from __future__ import annotations

from dataclasses import dataclass, field


@dataclass(frozen=True, slots=True)
class Source:
    """A text with the name under which it is reported; line ends are single newlines."""

    name: str
    text: str = field(repr=False)

    def lines(self) -> tuple[str, ...]:
        """Return the lines without their ends; a text without a final newline has it added."""
        return tuple(self.text.split("\n"))


@dataclass(frozen=True, slots=True, order=True)
class Span:
    """Part of one line of a source: line and columns from 1, `end_column` exclusive.

    A span never crosses a line: a statement continued over several lines is pointed at where it
    is wrong.  Columns count characters of the line as typed.  What stands inside a pattern has in
    `used_by` the place of the line that uses the pattern: the line which the maker wrote.
    """

    source: Source = field(compare=False)
    line: int
    column: int
    end_column: int
    used_by: Span | None = None

    def told(self) -> Span:
        """Return the place to tell the maker: that of the line which uses the pattern, if any."""
        return self if self.used_by is None else self.used_by.told()

    def text(self) -> str:
        """Return the characters that the span covers."""
        return self.source.lines()[self.line - 1][self.column - 1 : self.end_column - 1]
