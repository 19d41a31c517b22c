"""The SARIF report, held against the standard's schema."""

from __future__ import annotations

import json
from pathlib import PurePosixPath
from urllib.parse import unquote, urlsplit

import pytest

from namegen import checks, reports
from namegen.model.findings import Finding, Severity
from namegen.model.places import Place
from namegen.model.reports import Report
from tests.reports.samples import FULL, MAIN, SOURCES


def run_of(report: Report):
    document = json.loads(reports.renderer("sarif")(report, SOURCES.get, checks.kinds()))
    (run,) = document["runs"]
    return run


def test_it_is_valid(sarif_schema):
    document = json.loads(reports.renderer("sarif")(FULL, SOURCES.get, checks.kinds()))
    sarif_schema.validate(document)


def test_the_schema_can_say_no(sarif_schema):
    document = json.loads(reports.renderer("sarif")(FULL, SOURCES.get, checks.kinds()))
    document["runs"][0]["results"][0]["level"] = "fatal"
    assert not sarif_schema.is_valid(document)


def test_each_kind_is_a_rule_and_each_result_points_at_its_own():
    run = run_of(FULL)
    rules = run["tool"]["driver"]["rules"]
    assert [rule["id"] for rule in rules] == list(checks.kinds())
    for result, finding in zip(run["results"], FULL.findings, strict=True):
        assert rules[result["ruleIndex"]]["id"] == result["ruleId"] == finding.kind
        assert result["level"] == finding.severity.value


def test_columns_are_code_points_and_a_fix_replaces_what_is_found():
    run = run_of(FULL)
    assert run["columnKind"] == "unicodeCodePoints"
    lines = SOURCES[MAIN].split("\n")
    for result in run["results"]:
        for fix in result.get("fixes", ()):
            (change,) = fix["artifactChanges"]
            (replacement,) = change["replacements"]
            region = replacement["deletedRegion"]
            line = lines[region["startLine"] - 1]
            cut = line[region["startColumn"] - 1 : region["endColumn"] - 1]
            assert cut == result["properties"]["found"]
            assert replacement["insertedContent"]["text"] == result["properties"]["expected"]


def test_second_places_are_related_locations():
    (related,) = run_of(FULL)["results"][0]["relatedLocations"]
    assert related["message"]["text"] == "named here"
    assert related["physicalLocation"]["region"]["startLine"] == 3


def test_a_finding_about_a_whole_file_has_no_region():
    whole = next(r for r in run_of(FULL)["results"] if "read" in r["message"]["text"])
    assert "region" not in whole["locations"][0]["physicalLocation"]


@pytest.mark.parametrize(
    "path", ["a b.py", "a#b?.py", "100%.py", "c:/x.py", "\u6c34/\u00fc.py", "[x]{y}.py", "a\nb.py"]
)
def test_a_path_is_a_relative_uri_that_means_the_same_path(path: str):
    odd = Finding("unreadable", Severity.ERROR, "x", Place(path))
    (result,) = run_of(Report((odd,), files=1))["results"]
    location = result["locations"][0]["physicalLocation"]["artifactLocation"]
    uri = urlsplit(location["uri"])
    assert (uri.scheme, uri.netloc, uri.query, uri.fragment) == ("", "", "", "")
    assert location["uri"].isascii()
    assert PurePosixPath(unquote(uri.path)) == PurePosixPath(path)
    assert location["uriBaseId"] in run_of(FULL)["originalUriBaseIds"]
