"""The JSON report, held against its form letter by letter."""

from __future__ import annotations

import json

from namegen import reports
from namegen.model.findings import Finding, Severity
from namegen.model.places import Place
from namegen.model.reports import Report
from tests.reports.samples import EMPTY, FULL, MAIN, finding

# The example of the report's form, with its spaces and line ends left out.
FORM = (
    '{"format":"namegen-report/1","findings":[{"kind":"letter-case","severity":"error",'
    '"message":"...","path":"code/heron/main.py","line":12,"column":21,"end_line":12,'
    '"end_column":32,"found":"bowthruster","expected":"bowThruster","robot":"heron",'
    '"fix":{"safety":"safe","edits":[{"path":"code/heron/main.py","line":12,"column":21,'
    '"end_line":12,"end_column":32,"text":"bowThruster"}]},'
    '"related":[{"path":"robots/heron.yaml","line":3,"column":3,"message":"named here"}]}],'
    '"summary":{"error":1,"warning":0,"note":0,"files":4,"lookups":23}}'
)


def rendered(report: Report) -> str:
    return reports.renderer("json")(report, lambda _: None, {})


def test_one_finding_has_the_form_to_the_letter():
    one = finding(Place(MAIN, 12, 21, 12, 32), "bowthruster", "bowThruster")
    text = rendered(Report((one,), files=4, lookups=23))
    again = json.loads(text)
    again["findings"][0]["message"] = "..."
    assert json.dumps(again, separators=(",", ":")) == FORM


def test_what_there_is_not_is_null_and_no_key_is_left_out():
    bare = Finding("unreadable", Severity.WARNING, "x", Place("a.py"))
    (one,) = json.loads(rendered(Report((bare,), files=1)))["findings"]
    assert list(one)[-5:] == ["found", "expected", "robot", "fix", "related"]
    assert list(one.values())[-5:] == [None, None, None, None, []]


def test_an_empty_report_still_has_its_summary():
    assert json.loads(rendered(EMPTY)) == {
        "format": "namegen-report/1",
        "findings": [],
        "summary": {"error": 0, "warning": 0, "note": 0, "files": 1, "lookups": 0},
    }


def test_the_summary_counts_what_is_listed():
    report = json.loads(rendered(FULL))
    counts = [one["severity"] for one in report["findings"]]
    for severity in ("error", "warning", "note"):
        assert report["summary"][severity] == counts.count(severity)


def test_letters_outside_the_basic_plane_and_lone_surrogates_come_back():
    text = "\U0001f6a3 \ud800 \udc80 \u6c34"
    one = Finding("unreadable", Severity.ERROR, text, Place("caf\udce9.py"), found=text)
    (back,) = json.loads(rendered(Report((one,), files=1)))["findings"]
    assert (back["message"], back["found"], back["path"]) == (text, text, "caf\udce9.py")
