"""C++, read by tree-sitter."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from namegen.languages import Language

EXTENSIONS = (".cpp", ".cc", ".cxx", ".hpp", ".hh", ".hxx", ".h", ".ino")
"""Sources, headers and sketches. A header may be C as well: what C looks up reads the same."""


def load() -> Language:
    """Return the language; imports its parser."""
    from namegen.languages.cpp.language import CPP

    return CPP
