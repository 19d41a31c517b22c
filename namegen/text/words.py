"""Splitting names into words and joining words in a case style.

How words are split is a public promise, because identifiers in generated code
depend on it: digits stay with the word before them.
"""

from __future__ import annotations

import re
from typing import Literal

Case = Literal["camelCase", "PascalCase", "snake_case", "UPPER_SNAKE", "kebab-case", "kPascal"]

_WORD = re.compile(
    r"[A-Z]+[0-9]*(?![a-z0-9])"  # a run of capitals: IMU, IMU2, and X in motorX
    r"|[A-Z]?[a-z]+[0-9]*"  # bow, Thruster, arm2
    r"|[A-Z][0-9]*"
    r"|[0-9]+"
    r"|[^\W\d_A-Za-z]+[0-9]*"  # letters of other scripts stay together
)


def split(name: str) -> list[str]:
    """Return the words of a name in any case style, as they are written.

    >>> split("bowThruster2"), split("IMUHeading"), split("hull_temp-3")
    (['bow', 'Thruster2'], ['IMU', 'Heading'], ['hull', 'temp', '3'])
    """
    return _WORD.findall(name)


def join(words: list[str], case: Case) -> str:
    """Return words written in a case style.

    >>> join(["bow", "Thruster2"], "UPPER_SNAKE"), join(["bow", "Thruster2"], "kPascal")
    ('BOW_THRUSTER2', 'kBowThruster2')
    """
    if case == "UPPER_SNAKE":
        return "_".join(word.upper() for word in words)
    if case == "snake_case":
        return "_".join(word.lower() for word in words)
    if case == "kebab-case":
        return "-".join(word.lower() for word in words)
    capitalised = [word[:1].upper() + word[1:].lower() for word in words]
    if case == "camelCase" and capitalised:
        capitalised[0] = capitalised[0].lower()
    return ("k" if case == "kPascal" else "") + "".join(capitalised)


def convert(name: str, case: Case) -> str:
    """Return a name rewritten in a case style: ``convert("bowThruster", "snake_case")``."""
    return join(split(name), case)
