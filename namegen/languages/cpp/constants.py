"""Literals of a C++ file become references to generated constants, with their include."""

from __future__ import annotations

from collections.abc import Sequence

from namegen.errors import UnusableInput
from namegen.model.facts import ConstantUse


def use_constants(utf8: bytes, uses: Sequence[ConstantUse]) -> bytes:
    """Refuse: names in C++ are not replaced by constants yet.

    Raises:
        UnusableInput: always.
    """
    raise UnusableInput("names in C++ are not replaced by constants; write the constant by hand")
