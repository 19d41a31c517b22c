"""Kotlin as one of the languages."""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial

from namegen.languages import Prefilter
from namegen.languages.encodings import decode_as
from namegen.languages.kotlin.constants import use_constants
from namegen.languages.kotlin.grammar import parser
from namegen.languages.kotlin.literals import spell
from namegen.languages.kotlin.marks import has_implicit, looks_up
from namegen.languages.kotlin.proof import objection
from namegen.languages.kotlin.reading import KotlinReading
from namegen.languages.prefilters import prefilter, without_receivers
from namegen.languages.tree_languages import TreeLanguage
from namegen.model.workspaces import LookupRule


def _glance(rules: Sequence[LookupRule]) -> Prefilter:
    """Return the test on raw bytes: a lambda may hide what a look-up is called on."""
    plain = prefilter(rules, looks_up)
    on_any = prefilter(without_receivers(rules), looks_up)
    return lambda data: plain(data) or (has_implicit(data) and on_any(data))


KOTLIN = TreeLanguage(
    name="kotlin",
    makes="own class",
    decode=partial(decode_as, encoding="utf-8"),
    glance=_glance,
    parser=parser,
    reading=KotlinReading,
    spell=spell,
    use_constants=use_constants,
    objection=objection,
)
