"""What holds for every format: found by walking, never crashing, writable as UTF-8."""

from __future__ import annotations

import json
import subprocess
import sys

import jsonschema
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from namegen import checks, reports
from namegen.model.findings import Finding, Fix, Safety, Severity
from namegen.model.places import Edit, Place, Related
from namegen.model.reports import Report
from namegen.reports import json as json_report
from namegen.text.characters import is_visible
from tests.reports.samples import EMPTY, FULL, SOURCES

HOSTILE = st.text(
    st.one_of(
        st.characters(codec=None, exclude_categories=()),
        st.sampled_from(
            "\0\t\n\r\x1b\x85\u2028\u202e\u200b\ud800\udfff\U0001f6a3\u0301\u6c34\"'{}%"
        ),
    ),
    max_size=30,
)
NUMBERS = st.integers(1, 12)
PLACES = st.builds(
    lambda path, line, column, more, end: Place(
        path, line, column, line + more, column + end if more == 0 else end + 1
    ),
    HOSTILE,
    NUMBERS,
    st.one_of(NUMBERS, st.integers(1, 10**6)),
    st.integers(0, 2),
    st.integers(0, 40),
)
FINDINGS = st.builds(
    Finding,
    st.sampled_from(["letter-case", "unreadable", "no-such-kind"]),
    st.sampled_from(Severity),
    HOSTILE,
    PLACES,
    found=st.none() | HOSTILE,
    expected=st.none() | HOSTILE,
    robot=st.none() | HOSTILE,
    fix=st.none()
    | st.builds(
        Fix,
        st.sampled_from(Safety),
        st.lists(st.builds(Edit, PLACES, HOSTILE), min_size=1, max_size=3).map(tuple),
    ),
    related=st.lists(st.builds(Related, PLACES, HOSTILE), max_size=3).map(tuple),
)
REPORTS = st.builds(
    Report, st.lists(FINDINGS, max_size=4).map(tuple), st.integers(0, 99), st.integers(0, 99)
)


def test_the_formats_are_found():
    assert reports.names() == ("json", "lines", "sarif", "text")


def test_an_unknown_format_is_a_key_error():
    with pytest.raises(KeyError):
        reports.renderer("columns")


def test_finding_the_formats_loads_nothing_heavy():
    program = (
        "import sys; from namegen import reports; reports.names();"
        "print(*(m for m in ('libcst', 'jinja2', 'pydantic', 'tree_sitter') if m in sys.modules))"
    )
    done = subprocess.run([sys.executable, "-c", program], capture_output=True, check=True)
    assert (done.stdout.strip(), done.stderr) == (b"", b"")


@pytest.mark.parametrize("name", reports.names())
@pytest.mark.parametrize("report", [FULL, EMPTY], ids=["full", "empty"])
def test_a_report_is_the_same_each_time_and_ends_a_line(name: str, report: Report):
    render = reports.renderer(name)
    text = render(report, SOURCES.get, checks.kinds())
    assert text == render(report, SOURCES.get, checks.kinds())
    assert text.endswith("\n") or not text


@pytest.mark.parametrize("name", ["lines", "text"])
@settings(max_examples=60, deadline=None)
@given(report=REPORTS, source=HOSTILE, width=st.integers(0, 200))
def test_what_people_read_holds_nothing_that_acts_on_a_terminal(name, report, source, width):
    text = reports.renderer(name)(report, lambda _: source, checks.kinds(), width=width)
    text.encode("utf-8")
    assert all(is_visible(char) for char in text if char != "\n")
    if name == "lines":
        assert text.count("\n") == len(report.findings)


@settings(max_examples=80, deadline=None)
@given(report=REPORTS)
def test_json_comes_back_as_it_was(report: Report):
    text = reports.renderer("json")(report, lambda _: None, {})
    assert text.isascii()
    assert json.loads(text) == json_report.document(report)
    back = json.loads(text)["findings"]
    assert [one["message"] for one in back] == [joined(f.message) for f in report.findings]


def joined(text: str) -> str:
    """Return a text with the halves of a surrogate pair that stand together made one letter."""
    return text.encode("utf-16-le", "surrogatepass").decode("utf-16-le", "surrogatepass")


@settings(max_examples=40, deadline=None)
@given(report=REPORTS)
def test_sarif_is_valid_whatever_the_text(report: Report, sarif_schema: jsonschema.Validator):
    sarif_schema.validate(
        json.loads(reports.renderer("sarif")(report, SOURCES.get, checks.kinds()))
    )
