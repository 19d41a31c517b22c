"""Realistic slips planted in code that no one here wrote: each is found, and nothing else.

A small, seeded version of ``tests/bench/mutations.py``. Checked from outside: `ast`
finds the look-ups, and rapidfuzz's OSA distance says where one name alone is nearest.
"""

from __future__ import annotations

import random
from pathlib import Path

import pytest

from real.installed_code import copied_to
from real.slips import commonest, judged, mutate


@pytest.mark.parametrize("seed", [11, 12])
def test_slips_are_flagged_and_mended_and_right_names_left_in_peace(tmp_path: Path, seed: int):
    code = copied_to(tmp_path, tests_too=False, most_sites=250)
    names = commonest(code.sites)
    code.declare(names)
    paths = {site.path for site in code.sites if site.text in names}
    originals = {path: (tmp_path / path).read_bytes() for path in paths}
    done = judged(tmp_path, originals, mutate(tmp_path, code.sites, names, random.Random(seed)))
    assert len(done.mutations) > 40
    assert done.false == []
    assert done.missed == []
    assert done.wrong == []
    assert done.right >= 0.95 * done.clear, done.silent
    assert done.lost == []
