"""The report of one line for each finding."""

from __future__ import annotations

import re

from namegen import reports
from namegen.model.findings import Finding, Severity
from namegen.model.places import Place
from namegen.model.reports import Report
from tests.reports.samples import FULL


def rendered(report: Report) -> list[str]:
    return reports.renderer("lines")(report, lambda _: None, {}).splitlines()


def test_each_line_has_path_line_column_severity_and_message():
    lines = rendered(FULL)
    assert len(lines) == len(FULL.findings)
    for line, finding in zip(lines, FULL.findings, strict=True):
        found = re.fullmatch(r"(.+?):(\d+):(\d+): (error|warning|note): (.+)", line)
        assert found
        place = (found[1], int(found[2]), int(found[3]))
        assert place == (finding.place.path, finding.place.line, finding.place.column)
        assert found[4] == finding.severity.value


def test_a_line_end_in_a_path_or_message_makes_no_second_line():
    odd = Finding("unreadable", Severity.ERROR, "a\r\nb\x85c", Place("x\ny.py"))
    assert len(rendered(Report((odd,), files=1))) == 1


def test_nothing_wrong_is_no_line():
    assert rendered(Report((), files=9)) == []
