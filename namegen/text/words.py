"""Splitting names into words and joining words in a case style.

How words are split is a public promise, because identifiers in generated code
depend on it: digits stay with the word before them. Letters of every script
count: upper and lower case are Unicode's (``É`` begins a word as ``E`` does),
and letters without case stay together.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Sequence
from typing import Literal

Case = Literal["camelCase", "PascalCase", "snake_case", "UPPER_SNAKE", "kebab-case", "kPascal"]
Style = Literal["camelCase", "snake_case", "PascalCase", "kebab-case", "any"]
"""The styles that a workspace may ask its device names to follow."""

# Both patterns read the shape of a name (see `_shape`), not the name itself.
_WORD = re.compile(
    r"[A-Z]+[0-9]*(?![a-z0-9])"  # a run of capitals: IMU, IMU2, and X in motorX
    r"|[A-Z]?[a-z]+[0-9]*"  # bow, Thruster, arm2
    r"|[A-Z][0-9]*"
    r"|[0-9]+"
    r"|[¤]+[0-9]*"  # letters without case
)
_FOLLOWS = {
    "camelCase": re.compile(r"[a-z¤][A-Za-z¤0-9]*"),
    "PascalCase": re.compile(r"[A-Z¤][A-Za-z¤0-9]*"),
    "snake_case": re.compile(r"[a-z¤][a-z¤0-9]*(_[a-z¤0-9]+)*"),
    "kebab-case": re.compile(r"[a-z¤][a-z¤0-9]*(-[a-z¤0-9]+)*"),
}
_SHAPES = {"Lu": "A", "Lt": "A", "Ll": "a", "Lo": "¤", "Lm": "¤", "Nd": "0", "Nl": "0", "No": "0"}


def _shape(name: str) -> str:
    """Return the name with each letter beyond ASCII replaced by one that stands for its class.

    A combining mark belongs to the letter before it and takes its class.
    """
    if name.isascii():
        return name
    shape: list[str] = []
    for char in name:
        category = unicodedata.category(char)
        if char.isascii():
            shape.append(char)
        elif category.startswith("M"):
            shape.append(shape[-1] if shape else " ")
        else:
            shape.append(_SHAPES.get(category, " "))
    return "".join(shape)


def split(name: str) -> list[str]:
    """Return the words of a name in any case style, as they are written.

    >>> split("bowThruster2"), split("IMUHeading"), split("hull_temp-3")
    (['bow', 'Thruster2'], ['IMU', 'Heading'], ['hull', 'temp', '3'])
    >>> split("ÉcranGauche"), split("héllo"), split("水温Sensor2")
    (['Écran', 'Gauche'], ['héllo'], ['水温', 'Sensor2'])
    """
    return [name[match.start() : match.end()] for match in _WORD.finditer(_shape(name))]


def letters(name: str) -> str:
    """Return a name without its case style: what all its spellings share.

    >>> letters("bowThruster2"), letters("BOW_THRUSTER2")
    ('bowthruster2', 'bowthruster2')
    """
    return "".join(split(name)).lower()


def join(words: Sequence[str], case: Case) -> str:
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
    capitalised = [word[:1].title() + word[1:].lower() for word in words]
    if case == "camelCase" and capitalised:
        capitalised[0] = words[0].lower()
    return ("k" if case == "kPascal" else "") + "".join(capitalised)


def convert(name: str, case: Case) -> str:
    """Return a name rewritten in a case style: ``convert("bowThruster", "snake_case")``.

    >>> convert("bowThruster", "snake_case"), convert("tank-test", "PascalCase")
    ('bow_thruster', 'TankTest')
    """
    return join(split(name), case)


def follows(name: str, style: Style) -> bool:
    """Whether a name is written in a style.

    A run of capitals is right wherever a capital is (``bowIMU``, ``IMUHeading``
    in PascalCase), because people write acronyms as they see them. A name of
    snake_case or kebab-case has single separators, inside only. Every style but
    ``any`` begins with a letter and holds letters, digits and its separator.

    >>> follows("bowIMU", "camelCase"), follows("IMUHeading", "camelCase")
    (True, False)
    >>> follows("hull_temp_2", "snake_case"), follows("hull__temp", "snake_case")
    (True, False)
    """
    return style == "any" or _FOLLOWS[style].fullmatch(_shape(name)) is not None
