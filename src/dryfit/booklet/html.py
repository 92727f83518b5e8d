"""One self-contained HTML file: styles and fonts inside, no script, nothing to fetch."""

from __future__ import annotations

import re
from base64 import b64encode
from collections.abc import Mapping
from functools import cache
from types import MappingProxyType
from typing import TYPE_CHECKING, Literal

from dryfit.booklet.text import Amount, Label, Mark, Piece, Text, plain
from dryfit.booklet.view import Booklet, booklet_view
from dryfit.booklet.wording import steps_in_words
from dryfit.diagnostics import Findings
from dryfit.placing.model import Model
from dryfit.plan.plan import Plan
from dryfit.plan.reasons import StepReasons
from dryfit.resources import root
from dryfit.shop.shop import Shop
from dryfit.stock.laid_out import LaidOut

if TYPE_CHECKING:
    from jinja2 import Environment
    from markupsafe import Markup

Paper = Literal["a4", "letter"]

_FONTS = (("Inter-Regular.woff2", 400), ("Inter-Bold.woff2", 700))


_TAG = re.compile(r"(<[^>]*>)")


def render(
    model: Model,
    plan: Plan,
    shop: Shop,
    findings: Findings,
    paper: Paper = "a4",
    *,
    rehearsed: bool = False,
    reasons: Mapping[int, StepReasons] = MappingProxyType({}),
    laid: LaidOut | None = None,
) -> str:
    """Return the booklet of a piece as one HTML file.

    `paper` sets the size of the printed page; on a screen it has no effect.  A plan that was not
    `rehearsed` bears the word UNREHEARSED on every page.  `reasons` and `laid` are as in
    `booklet_view`.
    """
    view = booklet_view(
        model, plan, shop, findings, rehearsed=rehearsed, reasons=reasons, laid=laid
    )
    return page(view, paper)


def page(booklet: Booklet, paper: Paper) -> str:
    """Return the HTML of a booklet."""
    template = _environment().get_template("booklet.html.j2")
    styles = _styles(paper, rehearsed=booklet.rehearsed)
    return as_spoken(template.render(booklet=booklet, paper=paper, styles=styles))


def as_spoken(html: str) -> str:
    """Return the page with parts inside patterns named as the notes name them.

    ``upper drawer > side`` is an id, and stays so in attributes; on paper it is the upper drawer's
    side.
    """
    pieces = _TAG.split(html)
    return "".join(
        piece if index % 2 else piece.replace(" &gt; ", "\u2019s ")
        for index, piece in enumerate(pieces)
    )


def words(text: Text) -> Markup:
    """Return a text as HTML, its words escaped and every amount with its exact value."""
    from markupsafe import Markup

    return Markup("").join(_piece(piece) for piece in text)


def _piece(piece: Piece) -> Markup:
    from markupsafe import Markup, escape

    match piece:
        case Amount(unit=unit):
            span = Markup('<span class="q" data-{}="{}">{}</span>')
            return span.format(unit, piece.decimal(), piece.shown)
        case Label(sign):
            return Markup('<b class="label">{}</b>').format(sign)
        case Mark(sign):
            return Markup('<b class="mark">{}</b>').format(sign)
    return escape(piece)


@cache
def _environment() -> Environment:
    from jinja2 import Environment, FileSystemLoader, StrictUndefined

    environment = Environment(
        loader=FileSystemLoader(root("templates")),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=True,
    )
    environment.filters["words"] = words
    environment.filters["plain"] = plain
    environment.filters["steps"] = steps_in_words
    return environment


def _styles(paper: Paper, *, rehearsed: bool) -> Markup:
    """Return our own stylesheet with the fonts in it; no text of the user's gets in here."""
    from markupsafe import Markup

    size = {"a4": "A4", "letter": "letter"}[paper]
    names = ("booklet.css",) if rehearsed else ("booklet.css", "unrehearsed.css")
    sheet = "".join(root("templates").joinpath(name).read_text(encoding="utf-8") for name in names)
    return Markup(f"{font_faces()}@page{{size:{size} portrait}}\n{sheet}")  # noqa: S704 - our own files


@cache
def font_faces() -> str:
    """Return the style rules that carry the booklet's font, for a page or a drawing."""
    return "".join(_font_face(name, weight) for name, weight in _FONTS)


def _font_face(name: str, weight: int) -> str:
    font = b64encode(root("templates").joinpath("fonts", name).read_bytes()).decode("ascii")
    return (
        f"@font-face{{font-family:Inter;font-weight:{weight};"
        f"src:url(data:font/woff2;base64,{font}) format('woff2')}}\n"
    )
