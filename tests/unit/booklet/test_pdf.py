from __future__ import annotations

import io
import logging
import re
import sys
from functools import cache
from pathlib import Path

import pypdf
import pytest
from tests.unit.booklet import fixtures, planned

from dryfit import booklet
from dryfit.booklet import pdf

ROOT = Path(__file__).resolve().parents[3]
SIZES_MM = {"a4": (210.0, 297.0), "letter": (215.9, 279.4)}


def html(paper: booklet.Paper, piece: str = "Hall bench", *, rehearsed: bool = True) -> str:
    return booklet.render(
        fixtures.model(piece=piece),
        planned.plan(),
        planned.shop(),
        fixtures.findings(),
        paper,
        rehearsed=rehearsed,
    )


@pytest.fixture(scope="module", params=["a4", "letter"])
def made(request: pytest.FixtureRequest) -> tuple[str, pypdf.PdfReader]:
    return request.param, pypdf.PdfReader(io.BytesIO(pdf.write(html(request.param))))


def test_pages_have_the_size_of_the_paper(made: tuple[str, pypdf.PdfReader]) -> None:
    paper, reader = made
    for page in reader.pages:
        found = (float(page.mediabox.width), float(page.mediabox.height))
        assert found == pytest.approx([mm / 25.4 * 72 for mm in SIZES_MM[paper]], abs=0.5)


def test_every_step_number_is_printed(made: tuple[str, pypdf.PdfReader]) -> None:
    _, reader = made
    words = " ".join(page.extract_text() for page in reader.pages).split()
    for step in planned.plan().steps:
        assert str(step.number) in words


def test_contents_name_the_page_of_every_visit(made: tuple[str, pypdf.PdfReader]) -> None:
    _, reader = made
    contents = next(p for p in reader.pages if "What is where" in p.extract_text()).extract_text()
    outline = [entry for entry in reader.outline if isinstance(entry, pypdf.generic.Destination)]
    pages = [reader.get_destination_page_number(entry) for entry in outline]
    assert None not in pages
    for number in pages[2:]:
        assert str((number or 0) + 1) in contents.split()


def test_the_document_is_tagged_and_has_a_title(made: tuple[str, pypdf.PdfReader]) -> None:
    _, reader = made
    assert reader.metadata is not None
    assert reader.metadata.title == "Hall bench: build booklet"
    marks = reader.root_object["/MarkInfo"].get_object()
    assert isinstance(marks, pypdf.generic.DictionaryObject)
    assert marks["/Marked"]
    assert str(reader.root_object["/Lang"]) == "en"


LONG = "A rather long name for the bench in the hall of my aunt and of her two cats"


@cache
def long_named(paper: booklet.Paper, *, rehearsed: bool) -> pypdf.PdfReader:
    return pypdf.PdfReader(io.BytesIO(pdf.write(html(paper, LONG, rehearsed=rehearsed))))


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_what_was_not_rehearsed_says_so_on_every_page(paper: booklet.Paper) -> None:
    reader = long_named(paper, rehearsed=False)
    assert all("UNREHEARSED" in page.extract_text() for page in reader.pages)
    assert reader.metadata is not None
    assert reader.metadata.title == f"{LONG}: build booklet, UNREHEARSED"


@pytest.mark.parametrize("rehearsed", [True, False])
@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_the_cover_is_one_page_with_the_number_of_the_booklet(
    paper: booklet.Paper, *, rehearsed: bool
) -> None:
    pages = long_named(paper, rehearsed=rehearsed).pages
    cover, second = (page.extract_text() for page in pages[:2])
    assert "Times are planning figures." in " ".join(cover.split())
    assert "What is where, and when" in second
    number = re.search(r"Booklet ([0-9a-f]{4}-[0-9a-f]{4})", cover)
    assert number is not None
    assert cover.count(number.group(1)) == 2, "in its last lines and at its foot"


def test_what_was_rehearsed_is_not_marked(made: tuple[str, pypdf.PdfReader]) -> None:
    _, reader = made
    words = [page.extract_text() for page in reader.pages]
    assert not any("UNREHEARSED" in each for each in words)
    assert sum("Rehearsed:" in each for each in words) == 1


@pytest.mark.parametrize("rehearsed", [True, False])
def test_weasyprint_has_nothing_to_warn_of(
    caplog: pytest.LogCaptureFixture, *, rehearsed: bool
) -> None:
    with caplog.at_level(logging.WARNING, logger="weasyprint"):
        pdf.write(html("a4", rehearsed=rehearsed))
    assert [record.getMessage() for record in caplog.records] == []


def test_files_are_not_read(tmp_path: Path, caplog: pytest.LogCaptureFixture) -> None:
    secret = tmp_path / "secret.css"
    secret.write_text("body { display: none }")
    linked = f'<link rel="stylesheet" href="{secret.as_uri()}"></head>'
    hostile = html("a4").replace("</head>", linked)
    with caplog.at_level(logging.ERROR, logger="weasyprint"):
        made = pypdf.PdfReader(io.BytesIO(pdf.write(hostile)))
    assert "Failed to load stylesheet" in caplog.text
    assert "Hall bench" in made.pages[0].extract_text()


def test_missing_libraries_are_one_line_that_names_the_packages(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    class Missing:
        def find_spec(self, name: str, *_: object) -> None:
            if name.split(".", maxsplit=1)[0] == "weasyprint":
                print("a page of advice from the library itself")  # noqa: T201
                raise OSError("cannot load library 'libgobject-2.0-0'")

    for name in [name for name in sys.modules if name.split(".")[0] == "weasyprint"]:
        monkeypatch.delitem(sys.modules, name)
    monkeypatch.setattr(sys, "meta_path", [Missing(), *sys.meta_path])
    with pytest.raises(pdf.PdfUnavailable) as caught:
        pdf.write("<p>anything</p>")
    assert "\n" not in str(caught.value)
    assert "libpango-1.0-0 libpangoft2-1.0-0 libharfbuzz-subset0" in str(caught.value)
    assert capsys.readouterr() == ("", "")
