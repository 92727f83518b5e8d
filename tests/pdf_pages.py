"""The words of a PDF, page by page."""

from __future__ import annotations

import shutil
import subprocess
from pathlib import Path

import pypdf


def pages_of(pdf: Path) -> list[str]:
    """Return the text of each page: by pdftotext, or ten times slower by a library."""
    if shutil.which("pdftotext") is None:
        return [page.extract_text() for page in pypdf.PdfReader(pdf).pages]
    read = subprocess.run(["pdftotext", pdf, "-"], capture_output=True, check=True)
    return read.stdout.decode().split("\f")[:-1]
