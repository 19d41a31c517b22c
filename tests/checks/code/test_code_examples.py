"""The example of each finding kind is real: the wrong side gives the finding, the right none."""

from __future__ import annotations

import pkgutil
from importlib import import_module

import pytest

import namegen.checks.code
from namegen.checks.naming import judge_lookup
from namegen.model.findings import FindingKind
from namegen.model.views import CodeView, NameQuestion
from tests.checks.code.boats import FLEET, HERON, device, lookups, manifest, view

MODULES = [
    module
    for found in pkgutil.iter_modules(namegen.checks.code.__path__)
    if hasattr(module := import_module(f"namegen.checks.code.{found.name}"), "KIND")
]
JUDGES = [module for module in MODULES if hasattr(module, "judge")]
CHECKS = [module for module in MODULES if hasattr(module, "check")]
NAMED = {module.KIND.name: module.KIND for module in MODULES}


def found(code: str, setup: str | None = None) -> list[str]:
    """Return the kinds of all naming findings in a piece of code for heron."""
    findings = [
        judge_lookup(lookup, [NameQuestion(lookup, lookup.text, HERON, setup, FLEET)])
        for lookup in lookups(code)
    ]
    return [finding.kind for finding in findings if finding]


@pytest.mark.parametrize("module", JUDGES, ids=lambda module: module.KIND.name)
def test_a_naming_example_is_flagged_and_its_mended_side_is_clean(module):
    kind: FindingKind = module.KIND
    setup = "tank-test" if "tank-test" in kind.example.flagged else None
    assert found(kind.example.flagged, setup) == [kind.name]
    assert lookups(kind.example.mended)
    assert found(kind.example.mended, setup) == []


@pytest.mark.parametrize("module", CHECKS, ids=lambda module: module.KIND.name)
def test_an_example_beside_naming_is_flagged_and_its_mended_side_is_clean(module):
    kind: FindingKind = module.KIND
    robot = manifest("heron", [device("bowThruster", "motor"), device("sternThruster", "motor")])
    flagged = list(module.check(view(kind.example.flagged, robot)))
    assert [finding.kind for finding in flagged] == [kind.name]
    mended = [one for one in lookups(kind.example.mended) if one.text is not None]
    clean = CodeView(robot, None, mended, frozenset(), complete=True)
    assert list(module.check(clean)) == []


def test_the_example_of_not_checkable_has_a_name_that_is_not_known():
    example = NAMED["not-checkable"].example
    assert [lookup.text for lookup in lookups(example.flagged)] == [None]
    assert None not in [lookup.text for lookup in lookups(example.mended)]
    assert found(example.mended) == []


def test_the_example_of_unreadable_does_not_compile():
    example = NAMED["unreadable"].example
    with pytest.raises(SyntaxError):
        compile(example.flagged, "flagged", "exec")
    compile(example.mended, "mended", "exec")
