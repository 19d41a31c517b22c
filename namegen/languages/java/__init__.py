"""Java, read by tree-sitter."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from namegen.languages import Language

EXTENSIONS = (".java",)


def load() -> Language:
    """Return the language; imports its parser."""
    from namegen.languages.java.language import JAVA

    return JAVA
