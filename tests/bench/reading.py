"""Reads the whole standard library, compares each look-up literal with `ast`, and tells MB/s.

The bound: all literals equal, and all that is not tree-sitter's own parse at
most a quarter of it.
"""

from __future__ import annotations

import sys
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1] / "languages"))

from stdlib_oracle import RULES, by_ast, by_reader, standard_library

from namegen import languages
from namegen.languages.python.grammar import parser

WHOLE = 0.25


def main() -> int:
    """Print the table and return 1 when a bound is missed."""
    python = languages.named("python")
    files = {path: path.read_bytes() for path in standard_library()}
    holds = python.prefilter(RULES)
    began = time.perf_counter()
    held = {path: data for path, data in files.items() if holds(data)}
    sieve = time.perf_counter() - began
    parse = read = 0.0
    literals = different = refused = unsound = 0
    for data in held.values():
        found = by_reader(data)
        wanted = by_ast(found[0]) if found else None
        if found is None or wanted is None:
            refused += 1
            continue
        literals += len(wanted)
        different += found[1] != wanted
        utf8 = python.decode(data).utf8
        began = time.perf_counter()
        parser().parse(utf8)
        parse += time.perf_counter() - began
        began = time.perf_counter()
        reading = python.read(utf8, RULES)
        _ = reading.lookups
        read += time.perf_counter() - began
        unsound += bool(reading.unsound)
    everything = sum(map(len, files.values())) / 1e6
    looked = sum(map(len, held.values())) / 1e6
    over = max(read - parse, 0) / parse
    speed = everything / sieve
    print(f"files          {len(files):6}  {everything:6.1f} MB, sieved at {speed:.0f} MB/s")
    print(f"with a look-up {len(held):6}  {looked:6.1f} MB, read at {looked / read:.1f} MB/s")
    print(
        f"parsing alone  {parse:6.2f} s, reading {read:.2f} s: {over:.0%} more (bound {WHOLE:.0%})"
    )
    print(f"literals       {literals:6}, files that differ from ast: {different}")
    print(f"not compilable by Python: {refused}, with an unsound stretch: {unsound}")
    return int(different > 0 or unsound > 0 or over > WHOLE)


if __name__ == "__main__":
    sys.exit(main())
