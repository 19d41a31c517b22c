"""Whatever the bytes are: no traceback, and an answer before anybody loses patience."""

from __future__ import annotations

import random
import re
import time
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from namegen.bundled import bundled
from namegen.loading.catalogue import NO_CATALOGUE, read_catalogue
from namegen.loading.loaded import MOST_FAULTS, Loaded
from namegen.loading.manifest import read_manifest
from namegen.loading.settings import read_settings

SEEDS = [path.read_bytes() for path in sorted(Path(bundled("examples")).rglob("*.yaml"))]
PIECES = [
    b"{",
    b"[",
    b": ",
    b"- ",
    b"#",
    b" #1",
    b"'",
    b'"',
    b"&a ",
    b"*a",
    b"<<: ",
    b"\t",
    b"\0",
    b"\r",
    b"\xff",
    b"\xed\xa0\x80",
    b"\xef\xbb\xbf",
    b"|\n",
    b"? ",
    b"---\n",
    b"!x ",
    b"~",
]


def read_all(data: bytes) -> list[Loaded]:
    """Read bytes as each of the documents."""
    return [
        read_manifest("a.yaml", lambda _: data, NO_CATALOGUE),
        read_catalogue(data, "a.yaml"),
        read_settings(data, "a.yaml"),
    ]


def mutated(data: bytes, chance: random.Random) -> bytes:
    """Return bytes mutated a few times: half of them stay YAML and are wrong in what they say."""
    if chance.random() < 0.5:
        words = re.findall(rb"[\w.-]+", data)
        for _ in range(chance.randint(1, 4)):
            word, other = chance.choice(words), chance.choice([*words, b"~", b"[]", b"{a: b}", b""])
            data = other.join(data.split(word, 1)) if word in data else data
        return data
    for _ in range(chance.randint(1, 4)):
        start = chance.randrange(len(data) + 1)
        end = min(len(data), start + chance.randint(0, 40))
        piece = chance.choice(
            [b"", data[start:end] * 2, chance.choice(PIECES), chance.randbytes(1)]
        )
        data = data[:start] + piece + data[end:]
    return data


@pytest.mark.parametrize("seed", range(200))
def test_mutated_documents(seed):
    chance = random.Random(seed)
    for loaded in read_all(mutated(chance.choice(SEEDS), chance)):
        assert len(loaded.faults) <= MOST_FAULTS
        assert all(fault.message and fault.place.line >= 1 for fault in loaded.faults)
        assert loaded.value is not None or loaded.faults


@settings(max_examples=100, deadline=2000)
@given(st.binary(max_size=200) | st.text(max_size=200).map(lambda text: text.encode("utf-8")))
def test_any_bytes(data):
    for loaded in read_all(data):
        assert loaded.value is not None or loaded.faults


GIANTS = {
    "brackets": b"[" * 1_000_000,
    "braces": b"{a: " * 250_000,
    "dashes": b"- " * 500_000,
    "one list": b"devices: [" + b"a," * 500_000,
    "one text": b"robot: " + b"x" * 1_000_000,
    "one line of colons": b"a: " * 300_000,
    "one quote": b'robot: "' + b"x\n" * 500_000,
    "line ends": b"\n" * 1_000_000,
    "comments": b"# 1\n" * 250_000,
    "unknown fields": b"".join(b"field%d: x\n" % n for n in range(4900)),
    "wrong devices": b"devices:\n" + b"".join(b"  d%d: x\n" % n for n in range(4900)),
    "misplaced": b"devices:\n" + b"".join(b"  d%d:\n  kind%d: x\n" % (n, n) for n in range(2400)),
    "unknown kinds": b"devices:\n"
    + b"".join(b"  d%d: {kind: k%d, port: a b}\n" % (n, n) for n in range(1600)),
    "bad numbers": b"devices: {a: {identifiers: {"
    + b"".join(b"i%d: [],\n" % n for n in range(4900))
    + b"}}}",
    "cut texts": b"devices:\n" + b"".join(b"  d%d: x #1\n" % n for n in range(4900)),
    "ten megabytes": b"a: b\n" * 2_000_000,
}


@pytest.mark.parametrize("name", GIANTS)
def test_giants_end_within_two_seconds(name):
    for read in (
        lambda data: read_manifest("a.yaml", lambda _: data, NO_CATALOGUE),
        lambda data: read_catalogue(data, "a.yaml"),
    ):
        began = time.process_time()
        loaded = read(GIANTS[name])
        assert time.process_time() - began < 2
        assert loaded.value is not None or loaded.faults
