"""Files in every encoding that Python has, judged by `compile` on the same bytes (PEP 263)."""

from __future__ import annotations

import encodings.aliases
import warnings

import pytest

from namegen import languages
from namegen.errors import UnusableInput
from namegen.model.facts import Text
from namegen.model.workspaces import LookupRule

PYTHON = languages.named("python")
RULES = (LookupRule("call", "motor"),)
CODECS = sorted(
    {*encodings.aliases.aliases.values(), "latin-1", "utf-8-sig", "no-such", "undefined"}
)
LETTERS = "éяﾊ字אع"


def compiled_value(data: bytes) -> str | None:
    """Return the text that Python hands to ``motor``, or None if it refuses the file."""
    heard: list[str] = []
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        try:
            exec(compile(data, "<case>", "exec"), {"motor": heard.append})
        except (SyntaxError, ValueError, LookupError):
            return None
    return heard[0] if heard else None


def read_value(data: bytes) -> str | None:
    """Return the text that the reader finds, or None if it refuses the file."""
    try:
        decoded = PYTHON.decode(data)
        reading = PYTHON.read(decoded.utf8, RULES)
    except UnusableInput as error:
        assert error.what
        return None
    names = [site.name for site in reading.lookups]
    return names[0].value if names and isinstance(names[0], Text) else None


@pytest.mark.parametrize("codec", CODECS)
def test_every_codec_reads_as_python_reads_it(codec):
    letter = "x"
    for candidate in LETTERS:
        try:
            if candidate.encode(codec):
                letter = candidate
                break
        except (UnicodeError, LookupError):
            continue
    source = f"# -*- coding: {codec} -*-\nmotor('bow{letter}')\n"
    try:
        data = source.encode(codec)
    except (UnicodeError, LookupError):
        data = source.encode("ascii")
    assert read_value(data) == compiled_value(data)


@pytest.mark.parametrize(
    "data",
    [
        "motor('é')".encode(),
        b"\xef\xbb\xbf" + "motor('é')".encode(),
        b"\xef\xbb\xbf# coding: utf-8\n" + "motor('é')".encode(),
        b"\xef\xbb\xbf# coding: latin-1\nmotor('a')",
        "motor('é')".encode("latin-1"),
        b"#!/bin/x\n# vim: set fileencoding=latin-1 :\nmotor('\xe9')",
        b"\n\n# coding: latin-1\nmotor('\xe9')",
        b"x = 1\n# coding: latin-1\nmotor('\xe9')",
        b"'coding: latin-1'\nmotor('\xc3\xa9')",
        b"# coding: latin-1\rmotor('\xe9')\r",
        b"motor('a\0b')",
        b"\0",
        b"",
    ],
)
def test_bytes_read_as_python_reads_them(data):
    assert read_value(data) == compiled_value(data)


@pytest.mark.parametrize(
    "data",
    [
        b"\xef\xbb\xbfmotor('a')\r\n",
        b"# coding: latin-1\rmotor('\xe9')\r",
        b"# coding: shift_jis\nmotor('\x83n')\n",
        b"motor('a')\x0c\n",
    ],
)
def test_bytes_survive_the_way_there_and_back(data):
    decoded = PYTHON.decode(data)
    assert decoded.survives(data)
    assert decoded.encode(decoded.text) == data


def test_bytes_that_would_not_survive_are_known():
    data = b"# coding: utf-7\nx = '+AGE-'\n"  # utf-7 writes a plain "a" as "a"
    assert not PYTHON.decode(data).survives(data)


def test_name_that_the_encoding_lacks_is_refused():
    decoded = PYTHON.decode(b"# coding: latin-1\nmotor('\xe9')\n")
    with pytest.raises(UnusableInput, match=r"latin-1|iso-8859-1"):
        decoded.encode("字")


def test_bytes_that_are_no_utf8_come_with_both_ways_out():
    with pytest.raises(UnusableInput) as raised:
        PYTHON.decode(b"motor('\xe9')\n")
    assert raised.value.what == (
        "it is not text in UTF-8 (invalid continuation byte at byte 7), and its first line "
        "declares no other encoding"
    )
    assert "save the file as UTF-8, or declare its encoding" in raised.value.remedy


@pytest.mark.parametrize("levels", [90, 99, 101, 350, 520, 700])
def test_blocks_within_one_another_end_no_process(levels: int):
    text = "".join(" " * level + "if 1:\n" for level in range(levels))
    data = (text + " " * levels + "motor('bow')\n").encode()
    assert read_value(data) == ("bow" if levels < 400 else None)
    if levels < 100:  # CPython allows 100 levels
        assert compiled_value(data) == "bow"


def test_lines_that_only_stand_far_to_the_right_are_read():
    data = b"x = (\n" + b" " * 600 + b"1,\n)\nmotor('bow')\n"
    assert read_value(data) == "bow"
