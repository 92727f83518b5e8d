"""Every length and angle that a booklet prints carries its exact value as data.

Whoever reads the page with a program, and our own checks of the booklet, find a figure by its
``data-mm`` or ``data-deg``; a figure printed as plain text escapes both.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache
from xml.etree import ElementTree as ET

import html5lib
import pytest
from tests.pieces.planning import planned
from tests.pieces.reading import FILES, text_of

from dryfit import booklet

QUANTITY = re.compile(r'\d\s*(?:mm\b|"|°)')
HTML = "{http://www.w3.org/1999/xhtml}"

AS_WRITTEN = (
    ("style", None),
    ("title", None),
    ("q", None),  # a line of the notes, quoted beside a finding
    ("td", "typed"),  # the line that the maker may write instead
    ("ul", "plain"),  # notes and timber, as the notes have them
    ("td", "sold"),  # sizes as they are asked for in a shop
    ("ul", "cautions"),  # sentences of our table of cautions, as their sources give the figures
    ("table", "assumed"),  # assumptions and findings are sentences of the run, not of the booklet:
    ("ul", "findings"),  # ``check`` prints the same, and has the figures as data in its document
)
"""Elements, by tag and class, whose words are quoted and not worked out."""


def is_quoted(element: ET.Element) -> bool:
    tag = str(element.tag).rpartition("}")[2]
    classes = (element.get("class") or "").split()
    return any(tag == name and (cls is None or cls in classes) for name, cls in AS_WRITTEN)


def bare_texts(element: ET.Element) -> Iterator[str]:
    """Yield the text nodes outside amounts and quotations."""
    amount = element.get("data-mm") is not None or element.get("data-deg") is not None
    if not amount and not is_quoted(element):
        yield element.text or ""
        for child in element:
            yield from bare_texts(child)
            yield child.tail or ""


def bare_figures(html: str) -> list[str]:
    tree = html5lib.HTMLParser(strict=True).parse(html)
    assert isinstance(tree, ET.Element)
    return [" ".join(text.split()) for text in bare_texts(tree) if QUANTITY.search(text)]


@cache
def printed(name: str) -> str:
    """The booklet of a piece."""
    found, plan, findings = planned(text_of(name))
    assert found.model is not None
    assert found.shop is not None
    assert plan is not None, findings
    return booklet.render(found.model, plan, found.shop, findings, laid=found.laid)


@pytest.mark.parametrize("name", FILES)
def test_every_printed_quantity_carries_its_value(name: str) -> None:
    assert bare_figures(printed(name)) == []


def test_a_figure_in_plain_text_is_found() -> None:
    page = (
        "<!DOCTYPE html><html><head><title>45 mm</title></head><body>"
        '<p>a <span class="q" data-mm="45">45 mm</span> b <q>c 45 mm</q> d 12.5 mm e</p>'
        '<ul class="plain"><li>board 3 mm</li></ul><p class="plain">1/4" and <b>90°</b></p>'
        "</body></html>"
    )
    assert bare_figures(page) == ["d 12.5 mm e", '1/4" and', "90°"]
