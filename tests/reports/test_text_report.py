"""The report for people: layout, carets, cutting, colours."""

from __future__ import annotations

import re
import time

import pytest

from namegen import reports
from namegen.model.findings import Finding, Severity
from namegen.model.places import Place
from namegen.model.reports import Report
from tests.reports.samples import EMPTY, FULL, MAIN, SOURCES, finding

ANSI = re.compile(r"\x1b\[[0-9;]*m")


def rendered(report: Report, source=SOURCES.get, **options) -> str:
    return reports.renderer("text")(report, source, {}, **options)


def excerpt(line: str, start: int, end: int, width: int = 80) -> tuple[str, str]:
    """Return a line of source and the carets below it, without their margin."""
    one = Finding("unreadable", Severity.ERROR, "x", Place("a.py", 1, start, 1, end))
    text = rendered(Report((one,), files=1), lambda _: line, width=width).split("\n")
    at = next(i for i, row in enumerate(text) if row.startswith("    1 | "))
    return text[at][8:], text[at + 1][8:]


@pytest.mark.parametrize("width", [40, 80, 120])
def test_the_whole_report(snapshot, width: int):
    assert rendered(FULL, width=width) == snapshot


def test_nothing_wrong(snapshot):
    assert rendered(EMPTY) + rendered(Report((), files=4, lookups=23)) == snapshot


def test_colour_says_nothing_that_the_words_do_not():
    coloured = rendered(FULL, colour=True)
    assert ANSI.search(coloured)
    assert ANSI.sub("", coloured) == rendered(FULL)


@pytest.mark.parametrize(
    ("line", "name", "shown", "carets"),
    [
        ("a = bow", "bow", "a = bow", "    ^^^"),
        ("\ta = bow", "bow", "    a = bow", "        ^^^"),
        ("ab\tbow", "bow", "ab  bow", "    ^^^"),
        ("\u6c34 bow", "bow", "\u6c34 bow", "   ^^^"),  # wide: two columns
        ("e\u0301 bow", "bow", "e\u0301 bow", "  ^^^"),  # combining: none
        ("bow\u6c34", "bow\u6c34", "bow\u6c34", "^^^^^"),
        ("x\u202e bow", "bow", "x\\u{202E} bow", "          ^^^"),
        ("bow\x1b[2J", "bow\x1b[2J", "bow\\u{1B}[2J", "^^^^^^^^^^^^"),
    ],
)
def test_carets_stand_below_the_letters(line, name, shown, carets):
    start = line.index(name) + 1
    assert excerpt(line, start, start + len(name)) == (shown, carets)


@pytest.mark.parametrize("before", [0, 1, 30, 60, 75, 1000])
@pytest.mark.parametrize("after", [0, 1, 30, 60, 75, 1000])
@pytest.mark.parametrize("pad", ["x", "\u6c34", "\t"])
def test_a_long_line_is_cut_around_the_name(before: int, after: int, pad: str):
    line = pad * before + "bowThruster" + pad * after
    shown, carets = excerpt(line, before + 1, before + 12, width=80)
    columns = sum(2 if char == "\u6c34" else 1 for char in shown)
    assert columns <= 72
    assert carets.strip() == "^" * 11
    expanded = shown.replace("\u6c34", "\u6c34\0")
    assert expanded[len(carets) - 11 : len(carets)] == "bowThruster"


def test_a_span_wider_than_the_screen_is_marked_as_far_as_it_is_seen():
    shown, carets = excerpt("x" * 500, 1, 501)
    assert len(carets) <= len(shown) <= 72
    assert carets.startswith("^" * 60)


@pytest.mark.parametrize("spot", [(1, 1), (6, 6), (99, 120)])
def test_an_empty_span_or_one_past_the_line_still_has_a_caret(spot):
    shown, carets = excerpt("short", *spot)
    assert shown == "short"
    assert carets.strip() == "^"


def test_a_place_outside_the_source_is_told_without_a_line():
    one = Finding("unreadable", Severity.ERROR, "x", Place(MAIN, 999, 1, 999, 2))
    assert f"error unreadable at {MAIN}:999:1\n  x\n" in rendered(Report((one,), files=1))


def test_a_quoted_name_is_never_broken_at_a_blank():
    message = "word " * 13 + '"net  Winch of the bow" and then `- {call: start, name_at: 0}` more'
    one = Finding("unreadable", Severity.ERROR, message, Place("a.py"))
    text = rendered(Report((one,), files=1), width=72)
    assert '"net  Winch of the bow"' in text
    assert "`- {call: start, name_at: 0}`" in text


def test_a_name_wrong_in_many_places_is_explained_once():
    many = [finding(Place(MAIN, 1, n, 1, n + 3), "bow", "Bow") for n in range(1, 50)]
    text = rendered(Report(tuple(many), files=1))
    assert text.count("It should be") == 1
    assert "The same at 1:4, 1:5," in text
    assert "49 errors in 1 file." in text


def test_a_line_of_megabytes_costs_no_more_than_a_short_one():
    line = "x" * 5_000_000 + '"bow"' + "y" * 5_000_000
    many = [finding(Place(MAIN, 1, 5_000_002, 1, 5_000_005), f"bow{n}", "Bow") for n in range(50)]
    begin = time.perf_counter()
    text = rendered(Report(tuple(many), files=1), lambda _: line)
    assert time.perf_counter() - begin < 5
    assert len(text) < 100_000


def test_what_was_accepted_is_counted_and_never_called_nothing_wrong():
    error = Finding("letter-case", Severity.ERROR, "x", Place("a.py", 1, 1, 1, 2))
    warning = Finding("not-checkable", Severity.WARNING, "x", Place("a.py", 2, 1, 2, 2))
    text = rendered(Report((), files=4, accepted=(error, warning, warning)))
    assert " ".join(text.split()) == (
        "Nothing new in 4 files. 3 findings are not shown, accepted by `namegen audit --accept`: "
        "1 error, 2 warnings."
    )
    one = rendered(Report((error,), files=4, accepted=(error,)), lambda _: None)
    assert "1 finding is not shown, accepted by `namegen audit --accept`: 1 error." in one
