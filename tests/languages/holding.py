"""Holding what is said of programs against what they look up when they run."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Hashable, Mapping
from typing import TypeVar

from namegen.model.facts import LookupSite
from tests.languages.asking import Code

AtT = TypeVar("AtT", bound=Hashable)


def line_of(path: str, text: str, site: LookupSite) -> tuple[str, int]:
    """Return the file and the line of a look-up, in text without letters of several bytes."""
    return path, text.count("\n", 0, site.span.start) + 1


def noted_lines(output: str) -> dict[tuple[str, int], set[str]]:
    """Return by file and line what programs printed as ``file line text``."""
    found: dict[tuple[str, int], set[str]] = defaultdict(set)
    for line in output.splitlines():
        file, number, text = line.split(" ")
        found[file, int(number)].add(text)
    return found


def known_of(
    files: Mapping[str, str],
    looked_up: Mapping[AtT, set[str]],
    at: Callable[[str, str, LookupSite], AtT],
) -> int:
    """Return of how many look-ups all texts are known; none of these may have got another."""
    code = Code(files)
    said: dict[AtT, set[str | None]] = defaultdict(set)
    for path, text in files.items():
        for site in code.sites(path):
            said[at(path, text, site)] |= {one.text for one in code.resolver.resolve(site, path)}
    for place, texts in looked_up.items():
        assert None in said[place] or texts <= said[place], (place, texts, said[place])
    return sum(None not in said[place] for place in looked_up)


def holds_small_program(
    file: str, text: str, looked_up: Mapping[tuple[str, int], set[str]], *, sure: bool
) -> None:
    """Fail unless all is known that a small program looks up, or nothing of what misleads."""
    mine = {place: texts for place, texts in looked_up.items() if place[0] == file}
    known = known_of({file: text}, mine, line_of)
    if sure:
        assert known == len(mine) > 0
    else:
        assert any(texts != {"bow"} for texts in mine.values())
        assert known == 0
