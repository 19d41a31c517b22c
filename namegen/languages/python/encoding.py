"""The encoding of a Python file, by PEP 263."""

from __future__ import annotations

import io
import re
import tokenize

from namegen.errors import UnusableInput
from namegen.languages.encodings import UTF8_MARK, Decoded, decode_as

_LINE_END = re.compile(rb"\r\n|\r|\n")
_MOST_LEVELS = 400
"""Levels of blocks that are read. Python allows 100; the parser's own stack ends at 512, and
the process with it."""
_DEEP = b" " * _MOST_LEVELS
_INDENTED = re.compile(rb"^[ \t]*(?=[^ \t\r\n#])", re.MULTILINE)


def decode(data: bytes) -> Decoded:
    """Return the text of a Python file in the encoding that its first two lines declare.

    Raises:
        UnusableInput: the encoding is not known, or the bytes are none of its text; or it
            has more blocks within one another than can be read.
    """
    # A regular expression for that takes longer than parsing what is left to parse.
    if _DEEP in data.replace(b"\t", b" ") and _is_too_deep(data):
        raise UnusableInput(
            "it has blocks within one another more deeply than Python allows",
            remedy="take them apart",
        )
    head = b"\n".join(_LINE_END.split(data, 2)[:2])
    if b"coding" not in head:
        return decode_as(data, "utf-8", declared=data.startswith(UTF8_MARK))
    try:
        encoding, _ = tokenize.detect_encoding(io.BytesIO(head).readline)
    except SyntaxError as error:
        raise UnusableInput(
            f"its encoding is not clear ({error})",
            remedy="correct the `coding` comment, or save the file as UTF-8",
        ) from error
    marked = data.startswith(UTF8_MARK)
    return decode_as(data, "utf-8" if marked or encoding == "utf-8-sig" else encoding)


def _is_too_deep(data: bytes) -> bool:
    """Whether more lines than can be read go in one after the other, each further than the last."""
    levels = [0]
    for one in _INDENTED.finditer(data):
        width = len(one[0])
        while width < levels[-1]:
            levels.pop()
        if width > levels[-1]:
            levels.append(width)
        if len(levels) > _MOST_LEVELS:
            return True
    return False
