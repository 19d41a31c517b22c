"""Python as one of the languages."""

from __future__ import annotations

from functools import partial

from namegen.languages.prefilters import prefilter
from namegen.languages.python.constants import use_constants
from namegen.languages.python.encoding import decode
from namegen.languages.python.grammar import parser
from namegen.languages.python.literals import spell
from namegen.languages.python.marks import looks_up
from namegen.languages.python.proof import objection
from namegen.languages.python.reading import PythonReading
from namegen.languages.tree_languages import TreeLanguage

PYTHON = TreeLanguage(
    name="python",
    makes="class",
    decode=decode,
    glance=partial(prefilter, looks_up=looks_up),
    parser=parser,
    reading=PythonReading,
    spell=spell,
    use_constants=use_constants,
    objection=objection,
)
