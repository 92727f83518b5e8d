"""The booklet of each example as written: the figures of the JSON, and both files whole."""

from __future__ import annotations

import io
import logging
import re
from contextlib import redirect_stdout
from pathlib import Path
from typing import Any
from xml.etree import ElementTree as ET

import html5lib
import pypdf
import pytest
from tests.pdf_pages import pages_of
from tests.property.plan_oracle.documents import documents

from dryfit.cli import main

FOLDER = Path(__file__).parents[2] / "examples"
# The desk's booklet is as long as three others; its pages are kept by tests/golden and unit tests.
EXAMPLES = [path for path in sorted(FOLDER.glob("*.dryfit")) if path.stem != "writing_desk"]
HTML = "{http://www.w3.org/1999/xhtml}"
Json = dict[str, Any]


class Written:
    """What the command line writes for one example on one paper, and the two documents of it."""

    def __init__(self, example: Path, paper: str, folder: Path) -> None:
        found, errors = documents(example.read_text(encoding="utf-8"))
        assert found is not None, errors
        self.steps, self.parts = found
        self.warnings = Warnings()
        self.files = self._files(example, paper, folder)
        self.html = self.files[0].read_text(encoding="utf-8")
        tree = html5lib.HTMLParser(strict=True).parse(self.html)
        assert isinstance(tree, ET.Element)
        self.tree = tree
        self.pdf = pypdf.PdfReader(self.files[1])
        self.pages = pages_of(self.files[1])

    def _files(self, example: Path, paper: str, folder: Path) -> list[Path]:
        printer, told = logging.getLogger("weasyprint"), io.StringIO()
        with pytest.MonkeyPatch.context() as patch, redirect_stdout(told):
            patch.setenv("XDG_CONFIG_HOME", str(folder))
            printer.addHandler(self.warnings)
            assert main(["booklet", str(example), "-o", str(folder), "--paper", paper]) == 0
            printer.removeHandler(self.warnings)
        return [Path(line) for line in told.getvalue().split()]


class Warnings(logging.Handler):
    """What the printer warns of."""

    def __init__(self) -> None:
        super().__init__(logging.WARNING)
        self.messages: list[str] = []

    def emit(self, record: logging.LogRecord) -> None:
        self.messages.append(record.getMessage())


OFTEN = {"boot_bench", "splayed_stool", "step_stool", "wall_cabinet"}
"""Written in every run: long and short, upright and leaning, in mm and in inches.

Writing takes long; the other examples are written with `-m slow`, and drawn in every run.
"""


def _case(example: Path, paper: str) -> object:
    marks = () if example.stem in OFTEN else (pytest.mark.slow,)
    return pytest.param((example, paper), marks=marks)


@pytest.fixture(
    scope="module",
    params=[*(_case(example, "a4") for example in EXAMPLES), _case(EXAMPLES[0], "letter")],
    ids=lambda case: f"{case[0].stem}-{case[1]}",
)
def written(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Written:
    example, paper = request.param
    return Written(example, paper, tmp_path_factory.mktemp("booklet"))


def figures(element: ET.Element) -> set[float]:
    """Return every length printed in the element, in mm."""
    return {
        float(span.get("data-mm") or 0)
        for span in element.iter()
        if str(span.tag).endswith(("span", "tspan")) and span.get("data-mm")
    }


def test_both_files_are_written_and_told(written: Written) -> None:
    assert [path.suffix for path in written.files] == [".html", ".pdf"]
    assert all(path.stat().st_size > 10_000 for path in written.files)


def test_every_step_is_an_item_of_its_visit(written: Written) -> None:
    for step in written.steps["steps"]:
        section = written.tree.find(f".//{HTML}section[@data-visit='{step['visit']}']")
        assert section is not None
        items = section.findall(f".//{HTML}li[@data-step='{step['number']}']")
        operations = list(dict.fromkeys(work["operation"] for work in step["work"]))
        assert [item.get("data-operation") for item in items if item is not None] == operations


def test_the_settings_that_change_are_those_of_the_json(written: Written) -> None:
    for step in written.steps["steps"]:
        section = written.tree.find(f".//{HTML}section[@data-visit='{step['visit']}']")
        assert section is not None
        printed = figures(section)
        for axis in step["changed"]:
            value = step["settings"][axis]
            if isinstance(value, dict) and "mm" in value:
                assert value["mm"] in printed, (step["number"], axis)


def test_the_cut_list_has_the_sizes_of_the_json(written: Written) -> None:
    section = written.tree.find(f".//{HTML}section[@id='parts']")
    assert section is not None
    printed = figures(section)
    for part in written.parts["parts"]:
        sizes = {part[size]["mm"] for size in ("length", "width", "thickness")}
        assert sizes <= printed, part["name"]


def test_glue_ups_print_their_clamps(written: Written) -> None:
    for step in written.steps["steps"]:
        for clamp in step.get("clamps", []):
            section = written.tree.find(f".//{HTML}section[@data-visit='{step['visit']}']")
            assert section is not None
            assert clamp["length"]["mm"] in figures(section)


def test_the_pdf_has_every_step_and_no_text_is_lost(written: Written) -> None:
    words = " ".join(written.pages)
    places = written.pdf.named_destinations
    # The text of a page has no blank where a number stands close to another: "8256hours".
    for step in written.steps["steps"]:
        assert f"step-{step['number']}" in places
        assert str(step["number"]) in words
    for visit in {step["visit"] for step in written.steps["steps"]}:
        assert f"visit-{visit}" in places


def test_the_booklet_has_fewer_pages_than_the_work_has_steps(written: Written) -> None:
    """It is carried to the bench: parts of one deed and cuts of one picture share a page.

    Pages on the wood come on top: they grow with the boards, not with the steps.
    """
    texts = written.pages
    on_wood = [
        text
        for text in texts
        if re.search(r"^(Pull these boards|Board [A-Z]+: )", text, re.MULTILINE)
    ]
    assert len(texts) - len(on_wood) <= len(written.steps["steps"])


def test_no_heading_of_a_visit_stands_alone(written: Written) -> None:
    """The first step of a visit begins on the page of its heading, with at least one box of it."""
    found = written.pdf.named_destinations
    page = {name: written.pdf.get_destination_page_number(place) for name, place in found.items()}
    texts = written.pages
    first: dict[int, Json] = {}
    for step in written.steps["steps"]:
        first.setdefault(step["visit"], step)
    for visit, step in first.items():
        number = page[f"visit-{visit}"]
        assert number is not None
        assert page[f"step-{step['number']}"] == number
        assert len(texts[number].split()) > 40, f"page {number + 1}: {texts[number]}"


def test_the_printer_is_silent(written: Written) -> None:
    assert written.warnings.messages == []


def test_every_drawing_stands_on_a_page_and_its_figures_are_in_the_pdf(written: Written) -> None:
    words = " ".join(written.pages)
    body = {"a4": 297.0, "letter": 279.4}["letter" if 'class="letter"' in written.html else "a4"]
    drawings = list(written.tree.iter("{http://www.w3.org/2000/svg}svg"))
    assert len(drawings) > 5
    for svg in drawings:
        assert float((svg.get("height") or "").removesuffix("mm")) <= body - 30
        for figure in svg.iter("{http://www.w3.org/2000/svg}tspan"):
            assert (figure.text or "") in words
