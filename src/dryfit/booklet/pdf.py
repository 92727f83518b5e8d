"""The booklet as a PDF: the same HTML, laid out in pages by weasyprint.

This is the only module that imports weasyprint, and it does so late: the import takes half a
second and needs native libraries.
"""

from __future__ import annotations

import gc
import hashlib
import io
from collections.abc import Iterator
from contextlib import contextmanager, redirect_stdout

NATIVE_PACKAGES = "libpango-1.0-0 libpangoft2-1.0-0 libharfbuzz-subset0"


class PdfUnavailable(Exception):  # noqa: N818 - what is the case, not a mistake of ours
    """The libraries that lay out pages are missing; the message is one line fit to be shown."""


def write(html: str) -> bytes:
    """Return the PDF of a booklet, tagged and the same bytes for the same HTML.

    Nothing is fetched: only `data:` addresses are open, and anything else ends the run, because
    our own templates hold no other.

    Raises
    ------
    PdfUnavailable
        weasyprint or the native libraries under it are not installed.
    """
    try:
        # Without its libraries weasyprint prints a page of advice where our paths belong.
        with redirect_stdout(io.StringIO()):
            import weasyprint
            from weasyprint.urls import URLFetcher
    except (ImportError, OSError) as error:
        raise PdfUnavailable(
            f"no PDF, because its libraries are missing: install the packages {NATIVE_PACKAGES}"
        ) from error
    fetcher = URLFetcher(allowed_protocols={"data"})
    with _without_collector():
        document = weasyprint.HTML(string=html, url_fetcher=fetcher)
        pdf: bytes = document.write_pdf(
            pdf_variant="pdf/ua-1",
            pdf_tags=True,
            pdf_identifier=hashlib.sha256(html.encode()).digest()[:16],
        )
    return pdf


@contextmanager
def _without_collector() -> Iterator[None]:
    """Switch the garbage collector off meanwhile: layout makes no rubbish, and is faster so."""
    was_on = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was_on:
            gc.enable()
