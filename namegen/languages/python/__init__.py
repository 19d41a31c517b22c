"""Python, read by tree-sitter and proved by LibCST."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from namegen.languages import Language

EXTENSIONS = (".py", ".pyw", ".pyi")


def load() -> Language:
    """Return the language; imports its parser."""
    from namegen.languages.python.language import PYTHON

    return PYTHON
