"""Each kind's own example: what it calls flagged gives this finding alone, mended gives none."""

from __future__ import annotations

import importlib
import pkgutil

import pytest

from namegen.checks import manifest

MODULES = [
    importlib.import_module(f"{manifest.__name__}.{found.name}")
    for found in pkgutil.iter_modules(manifest.__path__)
]
KINDS = [module.KIND for module in MODULES if hasattr(module, "KIND")]
WITH_RULES = {"part-not-allowed"}


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.name)
def test_the_flagged_example_gives_this_finding_alone(kind, judged):
    found = judged(kind.example.flagged, rules=kind.name in WITH_RULES)
    assert [one.kind for one in found] == [kind.name]


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.name)
def test_the_mended_example_is_clean(kind, judged):
    assert judged(kind.example.mended, rules=kind.name in WITH_RULES) == []


def test_there_are_examples_of_all_manifest_kinds():
    assert len(KINDS) == 32
