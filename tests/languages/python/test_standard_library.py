"""The look-up literals of the standard library, against CPython's own `ast`.

A sample of the files; `tests/bench/reading.py` does all of them.
"""

from __future__ import annotations

from namegen import languages
from tests.languages.stdlib_oracle import RULES, by_ast, by_reader, standard_library

SAMPLE = 120


def test_reader_and_ast_find_the_same_literals():
    holds = languages.named("python").prefilter(RULES)
    compared = literals = 0
    for path in standard_library():
        data = path.read_bytes()
        if len(data) > 60_000 or not holds(data):
            continue
        read = by_reader(data)
        wanted = by_ast(read[0]) if read is not None else None
        if read is None or wanted is None:
            continue
        assert read[1] == wanted, path
        compared += 1
        literals += len(wanted)
        if compared == SAMPLE:
            break
    assert compared == SAMPLE
    assert literals > SAMPLE
