"""C++ as one of the languages."""

from __future__ import annotations

from collections.abc import Sequence

from namegen.languages import Prefilter
from namegen.languages.cpp.constants import use_constants
from namegen.languages.cpp.grammar import parser
from namegen.languages.cpp.literals import spell
from namegen.languages.cpp.marks import initialises, looks_up
from namegen.languages.cpp.proof import objection
from namegen.languages.cpp.reading import CppReading
from namegen.languages.encodings import decode_older
from namegen.languages.prefilters import prefilter
from namegen.languages.tree_languages import TreeLanguage
from namegen.model.workspaces import LookupRule


def _glance(rules: Sequence[LookupRule]) -> Prefilter:
    """Return the test on raw bytes: a list may construct a member of a class elsewhere."""
    names = prefilter(rules, looks_up)
    if not any(rule.shape == "new" for rule in rules):
        return names
    return lambda data: names(data) or initialises(data)


CPP = TreeLanguage(
    name="cpp",
    makes="own class",
    decode=decode_older,
    glance=_glance,
    parser=parser,
    reading=CppReading,
    spell=spell,
    use_constants=use_constants,
    objection=objection,
)
