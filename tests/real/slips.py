"""Realistic slips of the hand in names that real code looks up, and what an audit makes of them."""

from __future__ import annotations

import json
import random
import re
import subprocess
import sys
from collections import Counter
from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from pathlib import Path

from rapidfuzz.distance import OSA

from real.installed_code import Site

NAME = re.compile(r"[A-Za-z_][A-Za-z0-9_.]{3,}")
KEYS = ("qwertyuiop", "asdfghjkl", "zxcvbnm")
CYRILLIC = {"a": "а", "c": "с", "e": "е", "o": "о", "p": "р", "x": "х", "y": "у", "i": "і"}
LIKE = {"0": "O", "O": "0", "o": "0", "1": "l", "l": "1", "I": "l"}
NAMING = frozenset(
    {
        *("wrong-kind", "not-in-setup", "retired-name", "letter-case", "look-alike"),
        *("other-robot", "misspelt", "unknown-name"),
    }
)

Slip = Callable[[str, int, random.Random], str]


def _neighbour(name: str, at: int, chance: random.Random) -> str:
    row = next((keys for keys in KEYS if name[at].lower() in keys), "")
    here = row.find(name[at].lower())
    keys = [row[i] for i in (here - 1, here + 1) if row and 0 <= i < len(row)]
    new = chance.choice(keys) if keys else name[at]
    return name[:at] + (new.upper() if name[at].isupper() else new) + name[at + 1 :]


def _replaced(table: dict[str, str]) -> Slip:
    return lambda name, at, _: name[:at] + table.get(name[at], name[at]) + name[at + 1 :]


def _plural(name: str) -> str:
    """Return the name with its last word in the plural, or in the singular if it was."""
    last = max(at for at, letter in enumerate(name) if letter.isalnum())
    if name[last] in "sS":
        return name[:last] + name[last + 1 :]
    return name[: last + 1] + ("S" if name[last].isupper() else "s") + name[last + 1 :]


SLIPS: dict[str, Slip] = {
    "case": lambda name, at, _: name[:at] + name[at].swapcase() + name[at + 1 :],
    "neighbour": _neighbour,
    "dropped": lambda name, at, _: name[:at] + name[at + 1 :],
    "doubled": lambda name, at, _: name[: at + 1] + name[at:],
    "swapped": lambda name, at, _: name[:at] + name[at : at + 2][::-1] + name[at + 2 :],
    "blank": lambda name, at, _: name[:at] + " " + name[at:] if at else name + " ",
    "underscore": lambda name, at, _: name[:at] + "_" + name[at:],
    "0/O, 1/l/I": _replaced(LIKE),
    "Cyrillic": _replaced(CYRILLIC),
    "plural": lambda name, _, __: _plural(name),
}


@dataclass(frozen=True)
class Mutation:
    """A site whose text was changed: the slip, the wrong text, and whether one name is nearest."""

    site: Site
    slip: str
    text: str
    clear: bool


@dataclass
class Outcome:
    """What an audit made of the mutations."""

    mutations: list[Mutation]
    untouched: int
    collisions: int
    flagged: int = 0
    clear: int = 0
    right: int = 0
    wrong: list[tuple[Mutation, str]] = field(default_factory=list)
    false: list[Site] = field(default_factory=list)
    missed: list[Mutation] = field(default_factory=list)
    silent: list[Mutation] = field(default_factory=list)
    told: int = 0
    lost: list[tuple[Mutation, str]] = field(default_factory=list)
    """Slips told right whose line is not as it was after mending, with the line as it is."""


def commonest(sites: Iterable[Site], number: int = 40) -> set[str]:
    """Return the names that are looked up most, of those that could be device names."""
    counted = Counter(site.text for site in sites if NAME.fullmatch(site.text))
    return {name for name, _ in sorted(counted.items(), key=lambda row: (-row[1], row[0]))[:number]}


def mutate(
    root: Path, sites: Iterable[Site], names: set[str], chance: random.Random
) -> tuple[list[Mutation], list[Site], int]:
    """Change half of the sites on the disk; return the mutations, the others, and collisions.

    A slip that gives another real name is none that any audit could see; it is
    counted and undone.
    """
    ours = sorted(site for site in sites if site.text in names)
    chance.shuffle(ours)
    half = len(ours) // 2
    mutations, collisions = [], 0
    for site in ours[:half]:
        made = _mutation(site, names, chance)
        if made is None:
            collisions += 1
        else:
            mutations.append(made)
    by_path: dict[str, list[Mutation]] = {}
    for mutation in mutations:
        by_path.setdefault(mutation.site.path, []).append(mutation)
    for path, found in by_path.items():
        _write(root / path, found)
    done = {mutation.site for mutation in mutations}
    return mutations, [site for site in ours if site not in done], collisions


def _mutation(site: Site, names: set[str], chance: random.Random) -> Mutation | None:
    for _ in range(30):
        slip = chance.choice(list(SLIPS))
        text = SLIPS[slip](site.text, chance.randrange(len(site.text)), chance)
        if text == site.text:
            continue
        if text in names:
            return None
        distances = sorted((OSA.distance(text, name), name) for name in names)
        clear = distances[0][1] == site.text and distances[0][0] < distances[1][0]
        return Mutation(site, slip, text, clear)
    return None


def _write(path: Path, mutations: list[Mutation]) -> None:
    lines = path.read_bytes().decode("utf-8").split("\n")
    for mutation in sorted(mutations, key=lambda m: (m.site.line, m.site.column), reverse=True):
        site = mutation.site
        line, at = lines[site.line - 1], site.column - 1
        assert line[at : at + len(site.text)] == site.text
        lines[site.line - 1] = line[:at] + mutation.text + line[at + len(site.text) :]
    path.write_bytes("\n".join(lines).encode("utf-8"))


def namegen(root: Path, *words: str) -> int:
    """Run the command in the workspace and return its exit code."""
    command = [sys.executable, "-m", "namegen", *words]
    done = subprocess.run(command, cwd=root, capture_output=True, check=False, timeout=900)
    assert b"Traceback" not in done.stderr, done.stderr.decode()
    return done.returncode


def judged(
    root: Path, originals: dict[str, bytes], done: tuple[list[Mutation], list[Site], int]
) -> Outcome:
    """Audit the mutated tree, then mend it, and count what was right."""
    mutations, untouched, collisions = done
    outcome = Outcome(mutations, len(untouched), collisions)
    namegen(root, "audit", "--report", "json", "--output", "report.json")
    report = json.loads((root / "report.json").read_text(encoding="utf-8"))
    found = {
        (row["path"], row["line"], row["column"]): row
        for row in report["findings"]
        if row["kind"] in NAMING
    }
    outcome.false = [site for site in untouched if tuple(site)[:3] in found]
    told: list[Mutation] = []
    for mutation in mutations:
        row = found.get(_place(mutation, mutations))
        outcome.flagged += row is not None
        if row is None:
            outcome.missed.append(mutation)
        expected = row["expected"] if row else None
        right = expected == mutation.site.text and row is not None and row["fix"] is not None
        told += [mutation] if right else []
        if expected not in (None, mutation.site.text):
            outcome.wrong.append((mutation, expected))
        if mutation.clear:
            outcome.clear += 1
            outcome.right += right
            if not right:
                outcome.silent.append(mutation)
    namegen(root, "audit", "--fix-suggested")
    outcome.told = len(told)
    outcome.lost = [
        (mutation, _line(root / mutation.site.path, mutation.site))
        for mutation in told
        if not _is_back(root, originals, mutation.site)
    ]
    return outcome


def _is_back(root: Path, originals: dict[str, bytes], site: Site) -> bool:
    """Whether the line of a site is as it was, from one of its ends to the name and beyond.

    Names outside the manifest stand in the same lines, and are mended too.
    """
    line = _line(root / site.path, site)
    old = originals[site.path].decode("utf-8").split("\n")[site.line - 1]
    end = site.column - 1 + len(site.text) + 1
    return line[:end] == old[:end] or line[-len(old) + site.column - 2 :] == old[site.column - 2 :]


def _place(mutation: Mutation, mutations: list[Mutation]) -> tuple[str, int, int]:
    """Return where a mutated text begins: earlier ones on its line may have moved it."""
    site = mutation.site
    shift = sum(
        len(other.text) - len(other.site.text)
        for other in mutations
        if other.site.path == site.path
        and other.site.line == site.line
        and other.site.column < site.column
    )
    return site.path, site.line, site.column + shift


def _line(path: Path, site: Site) -> str:
    return path.read_bytes().decode("utf-8").split("\n")[site.line - 1]
