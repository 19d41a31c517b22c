"""The sheet to print: valid HTML by html5lib, and whole as it leaves a browser's printer."""

from __future__ import annotations

import re
import subprocess
from pathlib import Path
from xml.etree.ElementTree import Element

import html5lib
import pytest
import tinycss2
from hypothesis import given
from msgspec.structs import replace
from pypdf import PdfReader

from namegen.model.cautions import CAUTIONS
from namegen.model.sheet_mark import sheet_mark
from namegen.targets.escapes import html
from namegen.targets.escapes.plain import line
from targets.boats import HERON, device, robot
from targets.sheets import read as read_markdown
from targets.strategies import hostile

MARKUP = {"html", "head", "meta", "title", "style", "body", "section", "footer"}
MARKUP |= {"h1", "h2", "h3", "h4", "p", "ul", "li", "dl", "div", "dt", "dd"}
MARKUP |= {"table", "thead", "tbody", "tr", "th", "td", "code", "b", "small", "strong"}
ATTRIBUTES = {"lang", "charset", "name", "content", "class", "scope"}
ANY = hostile()


def read(page: str) -> Element:
    """Return the page as a browser understands it; what the standard calls an error fails."""
    return html5lib.HTMLParser(strict=True, namespaceHTMLElements=False).parse(page)


def shown(element: Element) -> str:
    return "".join(element.itertext())


def tables(page: str) -> list[list[list[str]]]:
    return [
        [[shown(cell) for cell in row] for row in one.iter("tr")]
        for one in read(page).iter("table")
    ]


@given(ANY)
def test_escapes_are_undone_by_their_readers(text: str):
    cell = read(
        f"<!DOCTYPE html><!-- by {html.comment(text)}. --><title>x</title>"
        f'<p title="{html.text(text)}">{html.text(text)}</p><code>{html.name(text)}</code>'
    )
    (paragraph,), (code,) = cell.iter("p"), cell.iter("code")
    assert shown(paragraph) == paragraph.get("title") == shown(code) == line(text)
    quoted = tinycss2.parse_one_component_value(html.style(text))
    assert quoted.type == "string"
    assert quoted.value == line(text)
    assert "<" not in html.style(text)


def test_capitals_of_a_name_stand_out():
    assert html.name("bowÖThr&x") == "bow<b>Ö</b><b>T</b>hr&amp;x"


def test_hostile_text_makes_no_markup(make, hostile_robots):
    for manifest in hostile_robots:
        page = read(make("sheet-html", manifest))
        for element in page.iter():
            if isinstance(element.tag, str):  # comments are none
                assert element.tag in MARKUP
                assert set(element.attrib) <= ATTRIBUTES
        names = [shown(code) for code in page.iter("code")]
        for one in manifest.devices_in():
            assert names.count(line(one.name)) >= 2  # where it is plugged in, and at the test
        assert shown(next(page.iter("title"))).endswith(f", {sheet_mark(manifest)}")


def test_it_says_what_the_sheet_in_markdown_says(make, hostile_robots):
    for manifest in (HERON, *hostile_robots):
        page = make("sheet-html", manifest)
        sheet = read_markdown(make("sheet-markdown", manifest))
        written = re.sub(r"\s+", "", shown(read(page)))
        for _, rows in sheet.tables:
            for row in rows[1:]:
                for cell in row:
                    for piece in re.split(r" PORT IS DEAD|\(|\)", cell):
                        assert re.sub(r"\s+", "", piece) in written, (piece, cell)
        for heading, item in sheet.items:
            if heading != "Select and compare":  # it is put in other words
                assert re.sub(r"\s+", "", item.partition(": ")[2] or item) in written
        for text in (manifest.selected or "", manifest.robot, manifest.revision):
            assert re.sub(r"\s+", "", line(text)) in written


def test_all_cautions_stand_before_the_wiring(make):
    page = shown(read(make("sheet-html")))
    places = [page.index(caution) for caution in CAUTIONS]
    assert places == sorted(places)
    assert places[-1] < page.index("Plug in and type")


def test_a_row_for_each_device_has_boxes_to_tick(make):
    first = tables(make("sheet-html"))[0]
    assert first[0][-2:] == ["Plugged", "Typed"]
    rows = {row[2]: row for row in first[1:]}
    assert rows["bowThrustercapital T"][:2] == ["motor 1", "motorthruster-b"]
    assert all(row[-2:] == ["", ""] for row in first[1:])


def test_a_dead_port_in_use_is_told(make):
    dead = robot(device("rudder", "servo", "stern servo 2"))
    assert "PORT IS DEAD" in make("sheet-html", dead)


def contrast(colour: str) -> float:
    """Return the contrast with white: WCAG 2.2, relative luminance and contrast ratio."""
    parts = [int(digit * 2, 16) / 255 for digit in colour]
    light = [part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts]
    return 1.05 / (0.2126 * light[0] + 0.7152 * light[1] + 0.0722 * light[2] + 0.05)


def test_everything_can_be_read_on_white(make):
    style = make("sheet-html").partition("<style>")[2].partition("</style>")[0]
    colours = set(re.findall(r"(?<!background: )#([0-9a-f]{3})\b", style))
    assert colours
    assert contrast("777") == pytest.approx(4.4781, abs=0.001)  # shared facts: two libraries say so
    assert min(map(contrast, colours)) >= 4.5  # WCAG 2.2, 1.4.3


@pytest.mark.parametrize("paper", ["A4", "letter"])
def test_what_is_printed(tool, make, tmp_path: Path, paper: str):
    chromium = tool("chromium")
    longest = "aVeryLongNameOfADeviceHere"  # one more letter than most workspaces allow
    more = device(longest, "switch", "bridge digital 5")
    boat = replace(HERON, devices={**HERON.devices, longest: more})
    (tmp_path / "sheet.html").write_text(make("sheet-html", boat, paper=paper), encoding="utf-8")
    words = ["--headless", "--no-sandbox", "--disable-gpu", "--no-pdf-header-footer"]
    words += [f"--user-data-dir={tmp_path / 'profile'}", "--print-to-pdf=sheet.pdf", "sheet.html"]
    subprocess.run([chromium, *words], cwd=tmp_path, check=True, capture_output=True, timeout=120)
    pages = PdfReader(tmp_path / "sheet.pdf").pages
    # ISO 216: 210 mm x 297 mm; ANSI/ASME Y14.1 A: 8.5 in x 11 in. In points of 1/72 inch.
    width, height = {"A4": (595.3, 841.9), "letter": (612, 792)}[paper]
    assert len(pages) > 1
    printed = []
    for number, page in enumerate(pages, 1):
        assert float(page.mediabox.width) == pytest.approx(width, abs=1)
        assert float(page.mediabox.height) == pytest.approx(height, abs=1)
        text = re.sub(r"\s+", " ", page.extract_text())
        assert f"Sheet mark {sheet_mark(boat)}" in text
        assert f"Page {number} of {len(pages)}" in text
        printed.append(text)
    everything = " ".join(printed)
    for name in boat.devices:
        assert re.search(rf"(?<!\w){name}(?!\w)", everything), name  # in one piece, on one line
