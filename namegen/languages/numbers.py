"""Numbers as they are written out in code: how large they are, and how exact they claim to be."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from itertools import islice

from msgspec import Struct
from tree_sitter import Node

from namegen.languages.sources import Source

MOST_FACTORS = 20
"""Factors of a product; a longer one is no figure that a person typed."""

LONGEST = 40
"""Letters of a number; a longer one is no figure either."""

_WHOLE = {"0x[0-9a-f]+": 16, "0b[01]+": 2, "0o?[0-7]+": 8}
_DECIMAL = re.compile(r"(?=\.?\d)\d*(\.(?P<part>\d*))?(e(?P<power>[+-]?\d{1,3}))?", re.ASCII)


class NumberForms(Struct, frozen=True):
    """How a language's tree shows numbers: the types of literals, of products, of brackets."""

    literals: frozenset[str]
    products: str
    brackets: str
    suffixes: str = ""
    """Letters that may stand behind a number: ``lfd`` in Java; several where ``u`` is one."""


def written(text: str, suffixes: str = "") -> tuple[float, float] | None:
    """Return a literal's value and the unit of its last digit, or None if it is no plain number.

    >>> written("1_296"), written("5.50f", "lfd"), written("1.5e3"), written("0x10")
    ((1296.0, 1.0), (5.5, 0.01), (1500.0, 100.0), (16.0, 1.0))
    >>> written("3j"), written("017"), written("1'296ull", "ulf")
    (None, (15.0, 1.0), (1296.0, 1.0))
    """
    plain = text.lower().replace("_", "").replace("'", "")
    if len(plain) > LONGEST:
        return None
    whole = _without(plain, {"l", "u", "z"} & {*suffixes})
    for pattern, base in _WHOLE.items():
        if re.fullmatch(pattern, whole):
            return float(int(whole, base)), 1.0
    plain = _without(plain, {*suffixes})
    match = _DECIMAL.fullmatch(plain)
    if match is None:
        return None
    decimals, power = len(match["part"] or ""), int(match["power"] or 0)
    return float(plain), float(f"1e{power - decimals}")


def _without(number: str, suffixes: set[str]) -> str:
    """Return a number without its suffix, which has up to three letters where ``u`` is one."""
    for _ in range(3 if "u" in suffixes else 1):
        number = number[:-1] if number[-1:] in suffixes else number
    return number


def figure(source: Source, node: Node | None, forms: NumberForms) -> tuple[float, float] | None:
    """Return a number that is written out, alone or as a product, and its last digit's unit.

    Whole factors of a product count as exact: 48 * 26.9 is as exact as 26.9 is.
    """
    if node is None:
        return None
    factors: list[tuple[float, float]] = []
    for one in islice(_factors(node, forms), MOST_FACTORS + 1):
        known = written(source.text(one), forms.suffixes) if one.type in forms.literals else None
        if known is None or len(factors) == MOST_FACTORS:
            return None
        factors.append(known)
    return _product(factors)


def _product(factors: Sequence[tuple[float, float]]) -> tuple[float, float]:
    value = 1.0
    for factor, _ in factors:
        value *= factor
    rough = [unit / factor for factor, unit in factors if factor and unit != 1.0]
    if len(factors) == 1:
        return factors[0]
    return value, value * sum(rough) if rough else 1.0


def _factors(node: Node, forms: NumberForms) -> Iterator[Node]:
    """Yield the factors of a product, brackets left out; anything else is one factor."""
    pending = [node]
    while pending:
        one = pending.pop()
        operator = one.child_by_field_name("operator")
        if one.type == forms.brackets and one.named_child_count == 1:
            pending += one.named_children
        elif one.type == forms.products and operator is not None and operator.type == "*":
            pending += [
                side for name in ("right", "left") if (side := one.child_by_field_name(name))
            ]
        else:
            yield one
