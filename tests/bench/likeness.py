"""How often the likeness of namegen names the right name, beside plain measures.

    python tests/bench/likeness.py [SEED...]

Two sorts of names, 41 to a draw:

words      corrections of codespell's dictionary, read from the installed
           package; a slip is one of its misspellings of one of them (entries
           with a single correction), an unknown word is another correction.
compounds  cells of a grid {qualifier} x {thing}; a slip is a name with one word
           misspelt at random, an unknown name is another cell of the grid, so
           that the word that differs is a real one, often near (lift for left).

A slip is answered right by the name it was made from. Where at least two names
are equally near by plain edit distance (optimal string alignment), or where the
slip made another real word (deckLap for deckLamp), abstaining is right too; the
column "sure" counts it as wrong nevertheless. An unknown name is
answered right by no suggestion.
"""

from __future__ import annotations

import difflib
import random
import string
import sys
import time
from collections import defaultdict
from collections.abc import Callable, Iterator
from functools import cache
from pathlib import Path
from typing import NamedTuple

from rapidfuzz import fuzz, process
from rapidfuzz.distance import OSA, DamerauLevenshtein, JaroWinkler

from namegen.text.english import is_word
from namegen.text.likeness import suggest

NAMES = 41
DRAWS = 100
PER_DRAW = 20
"""Slips and as many unknown names asked for in each draw."""
SEEDS = (11, 12, 13, 14, 15)


def words_of(text: str) -> list[str]:
    """Return the words of a text."""
    return text.split()


QUALIFIERS = words_of(
    "left right lift light front frond bow row port part pot stern steer upper lower inner outer "
    "rear gear near arm aim hull hill deck dock net jet tail rail main rain fore four aft bilge "
    "bridge hatch latch winch wench"
)
THINGS = words_of(
    "Motor Rotor Servo Sensor Pump Bump Lamp Ramp Switch Twitch Valve Winch Pinch Brake Break "
    "Encoder Decoder Temp Level Lever Light Flight Door Floor"
)

Method = Callable[[str, list[str]], "str | None"]


class Case(NamedTuple):
    """One question: what was meant (None: nothing), and whether abstaining is right too."""

    text: str
    names: list[str]
    meant: str | None
    unclear: bool


def plain(word: str) -> bool:
    """Whether a word has at least four letters, all lower-case ASCII."""
    return word.isascii() and word.isalpha() and word.islower() and len(word) >= 4


@cache
def misspellings() -> dict[str, list[str]]:
    """Return correct word -> its misspellings, for entries with a single correction."""
    import codespell_lib

    wrong = defaultdict(list)
    path = Path(codespell_lib.__file__).parent / "data" / "dictionary.txt"
    for line in path.read_text(encoding="utf-8").splitlines():
        found, _, right = line.partition("->")
        if plain(found) and plain(right):
            wrong[right].append(found)
    return dict(wrong)


def unclear(text: str, names: list[str]) -> bool:
    """Whether two names are equally near by plain edit distance, case aside."""
    distances = sorted(OSA.distance(text.lower(), name.lower()) for name in names)
    return distances[0] == distances[1]


def real_words(text: str, meant: str) -> bool:
    """Whether a slip made another real word, by SCOWL, codespell's corrections or the grid."""
    at = next(i for i, letter in enumerate(meant) if letter.isupper())
    known = {word.lower() for word in (*QUALIFIERS, *THINGS)} | misspellings().keys()

    def real(word: str) -> bool:
        return word in known or is_word(word)

    lower, right = text.lower(), meant.lower()
    head, tail = right[:at], right[at:]
    if lower.endswith(tail) and lower != right:
        return real(lower.removesuffix(tail))
    return lower.startswith(head) and real(lower.removeprefix(head)) and lower != right


def words(seed: int, draws: int = DRAWS) -> Iterator[Case]:
    """Yield slips of single words and unknown words."""
    chance = random.Random(seed)
    wrong = misspellings()
    every = sorted(wrong)
    for _ in range(draws):
        names = chance.sample(every, NAMES)
        for meant in chance.sample(names, PER_DRAW):
            text = chance.choice(wrong[meant])
            yield Case(text, names, meant, unclear(text, names))
        for _ in range(PER_DRAW):
            text = chance.choice(every)
            if text not in names:
                yield Case(text, names, None, True)


def compounds(seed: int, draws: int = DRAWS) -> Iterator[Case]:
    """Yield slips of compound names and unknown ones of the same grid."""
    chance = random.Random(seed)
    yield from grid(chance, QUALIFIERS, THINGS, draws)


def near_words(seed: int, draws: int = DRAWS) -> Iterator[Case]:
    """Yield the same from grids of real words that are near to each other, a new one each draw."""
    chance = random.Random(seed)
    short = [word for word in sorted(misspellings()) if len(word) <= 7]
    for _ in range(draws):
        picked: list[str] = []
        while len(picked) < 30:
            word = chance.choice(short)
            others = [w for w in short if 0 < OSA.distance(word, w, score_cutoff=2) <= 2]
            others = [w for w in others if w + "s" != word and word + "s" != w]
            picked += [word, *chance.sample(others, min(2, len(others)))]
        picked = list(dict.fromkeys(picked))
        chance.shuffle(picked)
        things = [word.capitalize() for word in picked[20:]]
        yield from grid(chance, picked[:20], things, 1)


def grid(
    chance: random.Random, qualifiers: list[str], things: list[str], draws: int
) -> Iterator[Case]:
    """Yield slips and unknown names of a grid of two words."""
    cells = [qualifier + thing for qualifier in qualifiers for thing in things]
    for _ in range(draws):
        names = chance.sample(cells, NAMES)
        for meant in chance.sample(names, PER_DRAW):
            text = slip(chance, meant)
            if text not in names:
                yield Case(text, names, meant, real_words(text, meant) or unclear(text, names))
        for text in chance.sample(sorted(set(cells) - set(names)), PER_DRAW):
            yield Case(text, names, None, True)


def slip(chance: random.Random, name: str) -> str:
    """Return a name with one letter dropped, doubled, swapped, replaced or of the other case."""
    while True:
        at = chance.randrange(len(name))
        a, letter, b = name[:at], name[at], name[at + 1 :]
        text = chance.choice(
            [
                a + b,
                a + letter + letter + b,
                a + b[:1] + letter + b[1:],
                a + chance.choice(string.ascii_lowercase) + b,
                a + letter.swapcase() + b,
            ]
        )
        if text != name:
            return text


def own(text: str, names: list[str]) -> str | None:
    """Answer as namegen does."""
    return suggest(text, names).best


def by_difflib(text: str, names: list[str]) -> str | None:
    """Answer with the nearest by difflib's ratio of at least 0.6."""
    return next(iter(difflib.get_close_matches(text, names, n=1, cutoff=0.6)), None)


def by_rapidfuzz(scorer: Callable[..., float], cutoff: float) -> Method:
    """Return a method that takes the best by one of rapidfuzz's scorers."""

    def answer(text: str, names: list[str]) -> str | None:
        hit = process.extractOne(text, names, scorer=scorer, score_cutoff=cutoff)
        return hit[0] if hit else None

    return answer


METHODS: dict[str, Method] = {
    "namegen": own,
    "difflib 0.6": by_difflib,
    "WRatio 80": by_rapidfuzz(fuzz.WRatio, 80),
    "WRatio 90": by_rapidfuzz(fuzz.WRatio, 90),
    "Damerau-Levenshtein 0.7": by_rapidfuzz(DamerauLevenshtein.normalized_similarity, 0.7),
    "Damerau-Levenshtein 0.8": by_rapidfuzz(DamerauLevenshtein.normalized_similarity, 0.8),
    "Jaro-Winkler 0.85": by_rapidfuzz(JaroWinkler.similarity, 0.85),
    "Jaro-Winkler 0.9": by_rapidfuzz(JaroWinkler.similarity, 0.9),
}
SORTS = {"words": words, "compounds": compounds, "near words": near_words}


class Score(NamedTuple):
    """Shares in percent, and microseconds for one question."""

    right: float
    """Slips answered right; abstaining counts where it is right."""
    sure: float
    """Slips answered with the right name."""
    wrong: float
    """Slips answered with a wrong name."""
    false: float
    """Unknown names for which a name was suggested."""
    micros: float

    def __str__(self) -> str:
        shares = (self.right, self.sure, self.wrong, self.false)
        return "".join(f"{share:9.2f}" for share in shares) + f"{self.micros:8.0f}"


def score(method: Method, cases: list[Case]) -> Score:
    """Ask all questions and return the shares and the time for one."""
    start = time.perf_counter()
    answers = [method(case.text, case.names) for case in cases]
    micros = (time.perf_counter() - start) / len(cases) * 1e6
    slips = [(c, a) for c, a in zip(cases, answers, strict=True) if c.meant is not None]
    unknown = [a for c, a in zip(cases, answers, strict=True) if c.meant is None]
    sure = sum(answer == case.meant for case, answer in slips)
    silent = sum(answer is None and case.unclear for case, answer in slips)
    wrong = sum(answer not in {None, case.meant} for case, answer in slips)
    false = sum(answer is not None for answer in unknown)
    each = 100 / len(slips)
    return Score(
        (sure + silent) * each, sure * each, wrong * each, 100 * false / len(unknown), micros
    )


def main() -> None:
    """Print one table for each sort of names, all seeds together and namegen's seed by seed."""
    seeds = [int(word) for word in sys.argv[1:]] or list(SEEDS)
    for sort, make in SORTS.items():
        cases = {seed: list(make(seed)) for seed in seeds}
        every = [case for some in cases.values() for case in some]
        print(f"\n{sort}: {len(every)} questions, seeds {seeds}")
        heads = ("right %", "sure %", "wrong %", "false %")
        print(" " * 26 + "".join(f"{head:>9}" for head in heads) + f"{'us':>8}")
        for name, method in METHODS.items():
            print(f"{name:26}{score(method, every)}")
        for seed, some in cases.items():
            print(f"{f'  namegen, seed {seed}':26}{score(own, some)}")


if __name__ == "__main__":
    main()
