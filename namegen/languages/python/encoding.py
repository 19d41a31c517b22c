"""The encoding of a Python file, by PEP 263."""

from __future__ import annotations

import io
import re
import tokenize

from namegen.errors import UnusableInput
from namegen.languages.encodings import UTF8_MARK, Decoded, decode_as

_LINE_END = re.compile(rb"\r\n|\r|\n")


def decode(data: bytes) -> Decoded:
    """Return the text of a Python file in the encoding that its first two lines declare.

    Raises:
        UnusableInput: the encoding is not known, or the bytes are none of its text.
    """
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
