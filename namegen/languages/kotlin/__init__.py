"""Kotlin, read by tree-sitter."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from namegen.languages import Language

EXTENSIONS = (".kt", ".kts")


def load() -> Language:
    """Return the language; imports its parser."""
    from namegen.languages.kotlin.language import KOTLIN

    return KOTLIN
