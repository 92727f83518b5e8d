from __future__ import annotations

import json
import re
from fractions import Fraction
from html import unescape
from xml.etree import ElementTree as ET

import html5lib
import pytest
from tests.unit.booklet import fixtures, planned

from dryfit import booklet
from dryfit.booklet.html import words
from dryfit.booklet.text import Amount, Mark
from dryfit.plan.plan import Plan
from dryfit.plan.setting import Setting
from dryfit.quantities import Display

HTML = "{http://www.w3.org/1999/xhtml}"
HOSTILE = (
    "<script>alert(1)</script>",
    "{{ 7*7 }}{% raw %}",
    '"><img src=file:///etc/passwd>',
    "url(file:///etc/hostname)",
    "</style><style>*{display:none}",
    'O\'Neill & Söhne "quoted"',
    "&lt;already&gt; &#x27;",
)


def rendered(display: Display | None = None, paper: booklet.Paper = "a4") -> str:
    return booklet.render(
        fixtures.model(display), planned.plan(), planned.shop(), fixtures.findings(), paper
    )


def parsed(html: str) -> ET.Element:
    """Return the tree of a page; a parse error of HTML5 fails the test."""
    tree = html5lib.HTMLParser(strict=True).parse(html)
    assert isinstance(tree, ET.Element)
    return tree


def text(element: ET.Element) -> str:
    return " ".join("".join(element.itertext()).split())


@pytest.fixture(scope="module")
def page() -> ET.Element:
    return parsed(rendered())


@pytest.mark.parametrize("paper", ["a4", "letter"])
@pytest.mark.parametrize("display", [None, Display.inches()])
def test_the_page_is_valid_html5(paper: booklet.Paper, display: Display | None) -> None:
    parsed(rendered(display, paper))


def test_every_visit_is_a_section(page: ET.Element) -> None:
    found = [s.get("data-visit") for s in page.iter(f"{HTML}section") if s.get("data-visit")]
    assert found == [str(visit.number) for visit in planned.plan().visits()]


def test_every_operation_is_an_item_with_its_step(page: ET.Element) -> None:
    found = [
        (item.get("data-step"), item.get("data-operation"))
        for item in page.iter(f"{HTML}li")
        if item.get("data-step")
    ]
    plan = planned.plan()
    assert found == [(str(s.number), op.id) for s in plan.steps for op in s.operations]


def test_every_item_has_a_box_to_tick(page: ET.Element) -> None:
    for item in page.iter(f"{HTML}li"):
        if item.get("data-step"):
            assert [s.get("class") for s in item.iter(f"{HTML}span")].count("tick") == 1


def test_quantities_are_shown_as_the_display_says(page: ET.Element) -> None:
    display = Display()
    spans = [span for span in page.iter(f"{HTML}span") if span.get("data-mm")]
    assert len(spans) > 60
    for span in spans:
        exact = Fraction(span.get("data-mm") or "")
        shown = text(span)
        assert shown.removesuffix(" mm") in {
            display.shown(exact),
            display.shown(exact, fitted=True),
        }


def test_every_changed_setting_is_printed_with_its_value(page: ET.Element) -> None:
    sections = {s.get("data-visit"): s for s in page.iter(f"{HTML}section")}
    for step in planned.plan().steps:
        section = sections[str(step.visit)]
        printed = {span.get("data-mm") for span in section.iter(f"{HTML}span")}
        for value in changed_lengths(step.settings, step.changed):
            assert json.dumps(float(value)).removesuffix(".0") in printed, (step.number, value)


def changed_lengths(
    settings: tuple[tuple[str, Setting | None], ...], changed: tuple[str, ...]
) -> list[Fraction]:
    return [
        setting.value
        for axis, setting in settings
        if axis in changed
        and setting is not None
        and isinstance(setting.value, Fraction)
        and setting.unit == "mm"
    ]


def test_a_measured_setting_is_a_blank_with_its_formula(page: ET.Element) -> None:
    boxes = [
        box
        for box in page.iter(f"{HTML}div")
        if box.get("class") == "box" and any(p.get("class") == "value blank" for p in box)
    ]
    assert len(boxes) == 1
    assert "= base length, as measured; on paper 940" in text(boxes[0])


def test_the_sum_behind_a_length_stands_beneath_it(page: ET.Element) -> None:
    sums = [text(p) for p in page.iter(f"{HTML}p") if p.get("class") == "sum"]
    assert "Length: shoulder 880 + tenon 20 + tenon 20 = 920" in sums
    assert "Between shoulders: 880" in sums
    assert "Length: overall height 450 − top thickness 20 = 430" in sums
    assert not any("from the floor" in row for row in sums), "the sum says it"
    assert "Length: measured on the glued base" in sums, "no sum: the reason in words"


def test_a_chain_that_rounding_breaks_says_so() -> None:
    assert "is rounding)" in text(parsed(rendered(Display.inches(Fraction(1, 16)))))


def test_nothing_is_fetched_and_nothing_runs() -> None:
    html = rendered()
    assert "<script" not in html
    addresses = re.findall(r"(?:src|href)=\"([^\"#][^\"]*)\"|url\(([^)]*)\)", html)
    assert addresses
    assert all(
        address.startswith("data:font/woff2") for pair in addresses for address in pair if address
    )


@pytest.mark.parametrize("name", HOSTILE)
def test_hostile_names_stay_text(name: str) -> None:
    html = booklet.render(
        fixtures.hostile(name), planned.plan(), planned.shop(), fixtures.findings(), "a4"
    )
    tree = parsed(html)
    heading = next(tree.iter(f"{HTML}h1"))
    assert "".join(heading.itertext()) == name
    assert list(tree.iter(f"{HTML}script")) == []
    assert list(tree.iter(f"{HTML}img")) == []
    assert len(list(tree.iter(f"{HTML}style"))) == 1
    assert unescape(html).count(name) > 2


def test_words_escape_everything_but_their_own_tags() -> None:
    text = ("<b>", Amount(Fraction(254, 10), '1"'), Mark("<i>"))
    expected = '&lt;b&gt;<span class="q" data-mm="25.4">1&#34;</span><b class="mark">&lt;i&gt;</b>'
    assert str(words(text)) == expected


@pytest.mark.parametrize(
    ("value", "decimal"),
    [
        (Fraction(27), "27"),
        (Fraction(9017, 20), "450.85"),
        (Fraction(-1, 64), "-0.015625"),
        (Fraction(25, 3), "8.333333333333334"),
        (Fraction(0), "0"),
    ],
)
def test_decimals_are_exact_where_they_end(value: Fraction, decimal: str) -> None:
    assert Amount(value, "").decimal() == decimal


@pytest.mark.parametrize("word", ["XSLOT", "ENDLAP", "axis", "dominance", "None", "Fraction("])
def test_no_jargon_is_printed(page: ET.Element, word: str) -> None:
    body = page.find(f"{HTML}body")
    assert body is not None
    assert not re.search(rf"\b{re.escape(word)}", text(body))


def test_across_never_stands_alone(page: ET.Element) -> None:
    """The direction is printed as side to side; only the fixture's own clamp row says the word."""
    body = page.find(f"{HTML}body")
    assert body is not None
    found = [words for words in text(body).split(".") if " across" in words]
    assert all("across the frame" in words for words in found)


def test_the_booklet_number_follows_notes_and_shop() -> None:
    plan = planned.plan()
    other = Plan(plan.shop, "6" * 64, plan.favour, plan.steps, plan.totals, plan.alternatives)
    numbers = {
        re.findall(r'class="booklet-id">([0-9a-f]{4}-[0-9a-f]{4})<', html)[0]
        for html in (
            rendered(),
            rendered(Display.inches()),
            booklet.render(fixtures.model(), other, planned.shop(), (), "a4"),
        )
    }
    assert len(numbers) == 2


def test_the_families_of_joints_in_the_piece_are_told_and_no_others(page: ET.Element) -> None:
    (section,) = (s for s in page.iter(f"{HTML}section") if s.get("id") == "joints")
    used = {joint.kind for joint in fixtures.model().joints}
    told = [text(term).rstrip(":") for term in section.iter(f"{HTML}dt")]
    assert sorted(term.lower() for term in told) == sorted(used)
    assert text(section).endswith("a hole, the mortise, in another member.")
