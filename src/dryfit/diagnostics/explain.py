"""The page on a code: what it means, why it matters at the bench, an example, what to write.

One TOML file a code, `pages/CODE.toml`.  Its keys are the fields of `Page`; those with a default
may be left out, and so may the notes where the example is a shop file.  A long row is written once:
with ``stands_for = { text = "+1", times = 60 }`` the sign ``…`` in an example is 60 times ``+1``;
a text that ends a line is a row of lines.
"""

from __future__ import annotations

import difflib
import textwrap
import tomllib
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Final, Literal

INVENTORY: Final = "offcuts.dryfit"
"""The file of wood in an example."""

WIDTH: Final = 78
"""Columns of a page as text."""

REPEATED: Final = "…"
"""Stands in an example for a text that is repeated too often to be printed."""

_FOLDER = Path(__file__).parent / "pages"
_INDENT = "    "
_UNSHOWABLE = "\ufffd"
_FLAWLESS = """\
piece Cutting board
overall 400 wide, 250 deep, 22 high
timber beech
1 board, across, flat, 400 x 250 x 22
finish hard wax oil, 2 coats, 8 h apart
"""


@dataclass(frozen=True, slots=True)
class StandsFor:
    """What `REPEATED` stands for in an example: a text so many times."""

    text: str
    times: int


@dataclass(frozen=True, slots=True)
class Page:
    """What there is to say about a code.

    `example` is a whole notes file in which the code is found, `instead` the same notes mended;
    with `shop` and `instead_shop` it is the shop file that is wrong, with `inventory` and
    `instead_inventory` a file `INVENTORY` beside the notes.  `command` is the command
    that finds it.  `encoding` is the one in which the example is saved; `note` is one remark more.
    `beside` names other codes that cannot but be found in the example too.  With `what_to_do` the
    page is on a finding that no notes can bring out: it has no example, and says this instead.
    """

    code: str
    means: str
    matters: str
    source: str
    example: str = _FLAWLESS
    instead: str = _FLAWLESS
    command: Literal["check", "stock", "steps"] = "check"
    shop: str | None = None
    instead_shop: str | None = None
    note: str | None = None
    encoding: str = "utf-8"
    stands_for: StandsFor | None = None
    beside: tuple[str, ...] = ()
    what_to_do: str | None = None
    inventory: str | None = None
    instead_inventory: str | None = None

    def written_out(self, example: str) -> str:
        """Return one of the examples with what was left out of print."""
        if self.stands_for is None:
            return example
        return example.replace(REPEATED, self.stands_for.text * self.stands_for.times)


def known_codes() -> tuple[str, ...]:
    """Return every code that has a page, by name."""
    return tuple(sorted(path.stem for path in _FOLDER.glob("*.toml")))


def near_codes(code: str) -> tuple[str, ...]:
    """Return up to three codes that a mistyped one may have meant, the nearest first."""
    written = "-".join(code.lower().replace("_", " ").replace("-", " ").split())
    return tuple(difflib.get_close_matches(written, known_codes(), n=3))


def page(code: str) -> Page | None:
    """Return the page on the code, or None when there is no such code."""
    if code not in known_codes():
        return None
    text = (_FOLDER / f"{code}.toml").read_text(encoding="utf-8")
    entries = tomllib.loads(text)
    stands_for = entries.pop("stands_for", None)
    return Page(
        code=code,
        stands_for=StandsFor(**stands_for) if stands_for else None,
        beside=tuple(entries.pop("beside", ())),
        **entries,
    )


def page_text(shown: Page, example_findings: str = "") -> str:
    """Return the page as plain text of `WIDTH` columns, ending in a newline.

    `example_findings` is what the command says about the example, as `render.full` gives it.
    """
    parts = [shown.code, *_sections(shown, example_findings.strip("\n"))]
    return "\n\n".join(parts) + "\n"


def _sections(shown: Page, found: str) -> Iterator[str]:
    yield _section("What it means", _wrapped(shown.means))
    yield _section("Why it matters at the bench", _wrapped(shown.matters))
    if shown.what_to_do is None:
        yield _section("Example", _example(shown, shown.example, shown.shop, shown.inventory))
        if found:
            yield _section(f"What `dryfit {shown.command}` says", _findings(found))
        instead = shown.instead, shown.instead_shop, shown.instead_inventory
        yield _section("Write instead", _example(shown, *instead))
    else:
        yield _section("What to do", _wrapped(shown.what_to_do))
    if shown.note:
        yield _section("Note", _wrapped(shown.note))
    source = shown.source.strip()
    yield _section("Source", _wrapped(f"{source[:1].upper()}{source[1:].rstrip('.')}."))


def _section(heading: str, body: str) -> str:
    return f"{heading}\n\n{body}"


def _wrapped(text: str) -> str:
    """Return paragraphs, set apart by empty lines, each filled to the width."""
    paragraphs = text.strip().split("\n\n")
    return "\n\n".join(_filled(paragraph) for paragraph in paragraphs)


def _filled(paragraph: str, first: str = _INDENT, rest: str = _INDENT) -> str:
    return textwrap.fill(
        paragraph,
        WIDTH,
        initial_indent=first,
        subsequent_indent=rest,
        break_long_words=True,
        break_on_hyphens=False,
    )


def _example(shown: Page, notes: str, shop: str | None, inventory: str | None) -> str:
    """Return the notes, or else what differs in the shop file or the inventory, or all of them."""
    texts = []
    if notes != _FLAWLESS:
        texts.append(notes)
    if shop is not None:
        texts.append("# shop file\n" + shop.strip("\n"))
    if inventory is not None:
        texts.append(f"# {INVENTORY}\n" + inventory.strip("\n"))
    blocks = [textwrap.indent(_showable(text.strip("\n")), _INDENT) for text in texts]
    if shown.stands_for is not None and any(REPEATED in text for text in texts):
        many = shown.stands_for
        times = "lines" if many.text.endswith("\n") else "times"
        words = f"Here {REPEATED} stands for {many.times} {times} `{many.text.strip()}`."
        blocks.append(_wrapped(words))
    return "\n\n".join(blocks)


def _showable(text: str) -> str:
    """Return the text with a mark for each sign that a terminal would act on."""
    return "".join(c if c.isprintable() or c == "\n" else _UNSHOWABLE for c in text)


def _findings(found: str) -> str:
    return "\n".join(_finding_line(line) for line in found.split("\n"))


def _finding_line(line: str) -> str:
    """Return the line filled; a line of the notes and the marks below it keep their columns."""
    if line.lstrip(" 0123456789").startswith(("|", "-->")):
        return (_INDENT + line)[:WIDTH].rstrip()
    return _filled(line, rest=_INDENT + "      ") if line else ""
