"""Java as one of the languages."""

from __future__ import annotations

from functools import partial

from namegen.languages.encodings import decode_older
from namegen.languages.java.constants import use_constants
from namegen.languages.java.grammar import parser
from namegen.languages.java.literals import spell
from namegen.languages.java.marks import looks_up
from namegen.languages.java.proof import objection
from namegen.languages.java.reading import JavaReading
from namegen.languages.prefilters import prefilter
from namegen.languages.tree_languages import TreeLanguage

JAVA = TreeLanguage(
    name="java",
    makes="new",
    decode=decode_older,
    glance=partial(prefilter, looks_up=looks_up),
    parser=parser,
    reading=JavaReading,
    spell=spell,
    use_constants=use_constants,
    objection=objection,
)
