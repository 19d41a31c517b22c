"""The text of one YAML file, and places in it."""

from __future__ import annotations

import codecs
import re

from msgspec import Struct

from namegen.model.findings import Fault
from namegen.model.places import Place
from namegen.text.positions import Lines

LARGEST = 1 << 20
"""Largest YAML file that is read, in bytes (1 MiB)."""

_NOT_TEXT = re.compile(r"[^\t\n\r\x20-\x7e\x85\xa0-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")
_INDENT_TAB = re.compile(r"^ *\t[ \t]*(?=[^\s#])", re.MULTILINE)
_OTHER_ENCODINGS = (
    (codecs.BOM_UTF32_LE, "UTF-32"),
    (codecs.BOM_UTF32_BE, "UTF-32"),
    (codecs.BOM_UTF16_LE, "UTF-16"),
    (codecs.BOM_UTF16_BE, "UTF-16"),
)


class Source(Struct, frozen=True, eq=False):
    """Decoded text of one file, without its byte order mark."""

    path: str
    text: str
    lines: Lines

    def place(self, start: int, end: int) -> Place:
        """Return the place of ``text[start:end]``."""
        return Place(self.path, *self.lines.locate(start, end))

    def line_at(self, index: int) -> str:
        """Return the whole line that an index lies in, without its line end."""
        return self.lines.line(self.lines.position(index)[0])

    def start_of_line(self, index: int) -> int:
        """Return where the line that an index lies in begins."""
        return index - self.lines.position(index)[1] + 1

    def rest_of_line(self, index: int) -> str:
        """Return the text from an index to the end of its line, without the line end."""
        line, column = self.lines.position(index)
        return self.lines.line(line)[column - 1 :]


def source_of(path: str, text: str) -> Source:
    """Return text with its lines counted."""
    return Source(path, text, Lines(text))


def decoded(data: bytes, path: str) -> Source | Fault:
    """Return the text of a YAML file, or the fault that keeps it from being read at all."""
    if len(data) > LARGEST:
        return _unreadable(
            f"This file has {len(data):,} bytes; a YAML file of namegen has at most {LARGEST:,}. "
            "Split it: shared parts can stand in files of their own and be named in `includes`.",
            Place(path),
        )
    for mark, encoding in _OTHER_ENCODINGS:
        if data.startswith(mark):
            return _unreadable(_save_as_utf8(f"is saved as {encoding}"), Place(path))
    if b"\0" in data[:4]:
        return _unreadable(_save_as_utf8("seems to be saved as UTF-16"), Place(path))
    try:
        text = data.removeprefix(codecs.BOM_UTF8).decode("utf-8")
    except UnicodeDecodeError as error:
        good = error.object[: error.start].decode("utf-8")
        place = source_of(path, good).place(len(good), len(good))
        return _unreadable(_save_as_utf8("is not UTF-8 from here on"), place)
    source = source_of(path, text)
    return _unprintable(source) or _tab(source) or source


def _unprintable(source: Source) -> Fault | None:
    found = _NOT_TEXT.search(source.text)
    if found is None:
        return None
    code = ord(found[0])
    return _unreadable(
        f"An invisible control character (code {code:#04x}) stands here. Delete it; "
        "it often comes along when text is copied from a document or a terminal.",
        source.place(found.start(), found.end()),
    )


def _tab(source: Source) -> Fault | None:
    found = _INDENT_TAB.search(source.text) if "\t" in source.text else None
    if found is None:
        return None
    tabs = sum(1 for _ in _INDENT_TAB.finditer(source.text))
    lines = "This line is" if tabs == 1 else f"This line and {tabs - 1} more are"
    return _unreadable(
        f"{lines} indented with a tab, which YAML does not allow. "
        "Use two blanks for each step; most editors have a setting for it.",
        source.place(found.start(), found.end()),
    )


def _save_as_utf8(what: str) -> str:
    return f"This file {what}. Open it in an editor, choose UTF-8 as its encoding and save it."


def _unreadable(message: str, place: Place) -> Fault:
    return Fault("bad-yaml", message, place)
