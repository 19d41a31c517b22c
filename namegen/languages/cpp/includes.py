"""Includes of a C++ file: all names of the file that is included, and of the source beside it."""

from __future__ import annotations

import re
from functools import cached_property
from posixpath import splitext

from namegen.languages.sources import Source
from namegen.model.facts import Import

_INCLUDE = re.compile(
    rb"^[ \t]*#[ \t]*include(?:_next)?[ \t]*"
    rb'(?:"(?P<own>[^"\r\n]+)"|<(?P<other>[^>\r\n]+\.[^>\r\n]+)>)',
    re.MULTILINE,
)
"""An include. The standard library's own headers have no ending, so they are left out."""
_FOLDERS = ("", "include/", "src/", "../include/", "../src/")
"""Where a header lies that others include by its name alone. Common practice, no source."""
_SOURCES = (".cpp", ".cc", ".cxx")


class Includes:
    """The includes of one file; implements `namegen.languages.imports.Origins`."""

    def __init__(self, source: Source) -> None:
        self.source = source

    @cached_property
    def all(self) -> list[str]:
        """The paths that are included, as they are written, in order."""
        lines = self.source.data.replace(b"\r", b"\n") if b"\r" in self.source.data else None
        found = _INCLUDE.finditer(lines or self.source.data)
        paths = ((one["own"] or one["other"]).decode("utf-8", "replace") for one in found)
        return list(dict.fromkeys(path.replace("\\", "/").strip() for path in paths))

    def named(self, word: str) -> list[Import]:
        """Return where a word alone may come from: nothing in C++ says so."""
        return []

    @cached_property
    def files(self) -> list[Import]:
        """The files that are included; then, beside headers, the sources with what they declare."""
        headers = [Import("", _places(path)) for path in self.all]
        stems = [splitext(path)[0] for path in self.all]
        sources = [tuple(f for end in _SOURCES for f in _places(stem + end)) for stem in stems]
        return [*headers, *(Import("", files, alone=True) for files in sources)]


def _places(path: str) -> tuple[str, ...]:
    return tuple(folder + path for folder in _FOLDERS)
