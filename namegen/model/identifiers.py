"""Identifiers that a language gives to devices, kinds and robots.

An identifier depends on its own row alone, never on neighbours or order, so
that code which compiles today still compiles when a device is added.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import lru_cache

from msgspec import Struct, field

from namegen.model.manifests import Device
from namegen.text.words import Case, convert

_spelled = lru_cache(maxsize=16384)(convert)
"""The spelling of a name, remembered: every check and target asks for it again."""


class NamingScheme(Struct, frozen=True):
    """How one programming language spells the identifiers that namegen makes.

    Read from ``templates/languages/<language>.yaml``. ``reserved`` holds every
    word that cannot or must not be an identifier there, with the reason.
    """

    language: str
    constant_case: Case
    type_case: Case
    field_case: Case
    pattern: str
    """Regular expression that a whole identifier matches."""
    reserved: Mapping[str, str] = field(default_factory=dict)
    soft: frozenset[str] = frozenset()
    """Reserved words that may still name a variable, a package or a module."""

    def constant(self, device: Device) -> str:
        """Return the device's constant: its own choice, or its name in the language's case.

        The result may be invalid or reserved; the manifest checks say so.
        """
        return device.identifiers.get(self.language) or self.spelled(device.name)

    def spelled(self, name: str) -> str:
        """Return a device's name, today's or a former one, as a constant."""
        return _spelled(name, self.constant_case)

    def number(self, device: Device, name: str) -> str:
        """Return the constant of one of a device's numbers, ``name`` being in snake_case.

        No number's name ends in another's, so that devices with different
        constants never share one.
        """
        if self.constant_case == "UPPER_SNAKE":
            return f"{self.constant(device)}_{name.upper()}"
        return self.constant(device) + _spelled(name, "PascalCase")

    def type_name(self, text: str) -> str:
        """Return a kind's or robot's name as a type name."""
        return _spelled(text, self.type_case)

    def field_name(self, device: Device) -> str:
        """Return the device's name as a field or variable."""
        return _spelled(device.identifiers.get(self.language) or device.name, self.field_case)

    def valid(self, identifier: str) -> bool:
        """Whether the text has the form of an identifier (it may still be reserved)."""
        return re.fullmatch(self.pattern, identifier) is not None
