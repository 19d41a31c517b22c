"""Plants realistic slips in code that no one here wrote, and counts what an audit makes of them.

Run from the project's folder: ``python tests/bench/mutations.py [SEED...]``. The trees are the
installed Python files and, where Debian's openjdk-17-source lies on the machine, java.base.

One name is nearest where rapidfuzz's OSA distance says so. That is not yet one name that was
surely meant: ``java.hone`` is one letter from ``java.home``, and a word of its own. So a slip
that is not told is looked up in WordNet (Debian's wordnet-base): where it made another word,
or changed a number or a word of one or two letters, which can be a code, not to tell is right
too.
"""

from __future__ import annotations

import random
import re
import shutil
import sys
import tempfile
import zipfile
from collections import Counter
from functools import cache
from pathlib import Path

import yaml

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from real.installed_code import InstalledCode, Site, copied_to
from real.slips import Mutation, Outcome, commonest, judged, mutate

JDK = Path("/usr/lib/jvm/openjdk-17/lib/src.zip")
COMMENT = re.compile(
    r"//[^\n]*|/\*.*?\*/|\"\"\".*?\"\"\"|\"(?:\\.|[^\"\\\n])*\"|'(?:\\.|[^'\\\n])+'", re.S
)
CALLS = ("getProperty", "privilegedGetProperty", "getInstance", "getString")
CALL = re.compile(  # a piece of a name is no name
    rf"\b(?:{'|'.join(CALLS)})\(\s*\"([^\"\\\n]*)\"\s*[,)]"
)
WORDNET = Path("/usr/share/wordnet")
WORD = re.compile(r"[A-Z]?[a-z]+|[A-Z]+|\d+")
CODE = 2
"""Letters of a word that can be a code, such as fl and fr."""


def java_base(root: Path) -> InstalledCode | None:
    """Lay java.base out as a workspace; a tokenizer of its own finds the literals."""
    if not JDK.exists():
        return None
    code = InstalledCode(root)
    with zipfile.ZipFile(JDK) as archive:
        for name in archive.namelist():
            if name.startswith("java.base/") and name.endswith(".java"):
                archive.extract(name, root / "code")
                code.files += 1
                text = (root / "code" / name).read_bytes().decode("utf-8")
                code.sites |= set(_java_sites(text, f"code/{name}"))
    settings = {
        "robots": ["real.yaml"],
        "lookups": [{"call": call} for call in CALLS],
        "code": [{"path": "code", "robots": ["real"]}],
    }
    (root / "namegen.yaml").write_text(yaml.dump(settings), encoding="utf-8")
    return code


def _java_sites(text: str, path: str) -> list[Site]:
    bare = COMMENT.sub(lambda m: m[0] if m[0][:1] == '"' else re.sub(r"[^\n]", " ", m[0]), text)
    found = []
    for match in CALL.finditer(bare):
        start = match.start(1)
        line = bare.count("\n", 0, start) + 1
        column = start - (bare.rfind("\n", 0, start) + 1) + 1
        found.append(Site(path, line, column, match[1]))
    return found


def run(title: str, code: InstalledCode, seed: int) -> None:
    """Mutate a tree, audit it, and put it back as it was."""
    chance = random.Random(seed)
    names = commonest(code.sites)
    code.declare(names)
    paths = {site.path for site in code.sites if site.text in names}
    originals = {path: (code.root / path).read_bytes() for path in paths}
    try:
        _show(
            title, seed, judged(code.root, originals, mutate(code.root, code.sites, names, chance))
        )
    finally:
        for path, data in originals.items():
            (code.root / path).write_bytes(data)


@cache
def wordnet() -> frozenset[str]:
    """Return the words of WordNet in lower case; empty where it is not installed."""
    files = [WORDNET / f"index.{sort}" for sort in ("noun", "verb", "adj", "adv")]
    lines = (line for file in files if file.exists() for line in file.read_text().splitlines())
    return frozenset(line.split(" ", 1)[0] for line in lines if not line.startswith(" "))


def other_word(mutation: Mutation) -> bool:
    """Whether each word that a slip changed is another word now, a number, or short as a code."""
    old, new = (Counter(WORD.findall(text)) for text in (mutation.site.text, mutation.text))
    changed = {word.lower() for word in (new - old or old - new)}
    return all(len(w) <= CODE or w.isdigit() or w in wordnet() for w in changed)


def _show(title: str, seed: int, done: Outcome) -> None:
    count = len(done.mutations)
    rightly = sum(map(other_word, done.silent))
    print(
        f"{title:10} seed {seed:3}: {count} slips ({done.collisions} were other names), "
        f"flagged {100 * done.flagged / count:.2f} %, untouched {done.untouched} of which flagged "
        f"{len(done.false)}, one nearest {done.clear}: "
        f"right {100 * done.right / done.clear:.2f} %, "
        f"right or rightly not told {100 * (done.right + rightly) / done.clear:.2f} %, "
        f"another name {len(done.wrong)}, lines restored {done.told - len(done.lost)}/{done.told}"
    )
    silent = Counter((m.slip, m.site.text, m.text) for m in done.silent)
    for (slip, name, text), times in silent.most_common(12):
        print(f"    not told: {name!r} as {text!r} ({slip}) x{times}")
    if not wordnet():
        print(f"    {WORDNET} is missing, so that no slip counts as another word")
    for mutation, expected in done.wrong[:8]:
        print(f"    told {expected!r} for {mutation.text!r}, meant {mutation.site.text!r}")
    for mutation in done.missed[:8]:
        print(f"    missed: {mutation}")
    for mutation, line in done.lost[:8]:
        print(f"    not restored: {mutation.site.text!r} as {mutation.text!r} in {line.strip()!r}")
    for site in done.false[:8]:
        print(f"    flagged though right: {site}")


def main(seeds: list[int]) -> None:
    """Run on each tree with each seed."""
    for title, make in (("Python", copied_to), ("java.base", java_base)):
        root = Path(tempfile.mkdtemp())
        try:
            code = make(root)
            if code is None:
                print(f"{title}: {JDK} is missing; Debian's openjdk-17-source has it")
                continue
            for seed in seeds:
                run(title, code, seed)
        finally:
            shutil.rmtree(root)


if __name__ == "__main__":
    main([int(word) for word in sys.argv[1:]] or [1, 2, 3])
