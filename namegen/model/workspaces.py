"""The workspace: which robots, which code, which look-ups, which outputs."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Literal

from msgspec import Struct, field

from namegen.model.boards import Places

NameStyle = Literal["camelCase", "snake_case", "PascalCase", "kebab-case", "any"]
Shape = Literal["call", "new", "annotation", "subscript"]
OptionValue = str | bool | int | tuple[str, ...] | Mapping[str, str]
"""What a build entry may give a target: one value, several texts, or texts by key."""


class NameRules(Struct, frozen=True):
    """How device names are to be written, and the longest they may be (None: any length)."""

    style: NameStyle = "any"
    longest: int | None = None


class LookupRule(Struct, frozen=True):
    """Says which places in code look a device up, and of which kind it must be.

    ``called`` is the identifier that is called, constructed, annotated with or
    subscripted (the last word of a dotted expression). ``on`` is the last word
    of the receiver, where it matters.
    """

    shape: Shape
    called: str
    on: str | None = None
    name_at: tuple[int, ...] | Literal["rest"] = (0,)
    """Positions of the name among the arguments; ``rest`` is every positional argument."""
    name_key: str | None = None
    """Keyword under which the name may be given instead."""
    kind: str | None = None
    kind_at: int | None = None
    kind_by: Literal["type-argument", "declared-type"] | None = None
    kinds: Mapping[str, str] = field(default_factory=dict)
    """Last identifier of the type expression -> device kind."""
    languages: tuple[str, ...] = ()
    """Languages it holds for; empty means all."""
    unknown: Mapping[str, str] = field(default_factory=dict)
    """Kinds that the row names, by field, though there are none such: they judge nothing."""
    places: Places = field(default_factory=dict)


class CodeEntry(Struct, frozen=True):
    """A folder or file of code and the robots it runs on. Names must exist on each of them."""

    path: str
    robots: tuple[str, ...]
    setup: str | None = None
    exclude: tuple[str, ...] = ()
    places: Places = field(default_factory=dict)


class BuildEntry(Struct, frozen=True):
    """One sort of output: a target, where its files go, for which robots, with which options.

    ``to`` may hold ``{robot}`` (as written) and ``{Robot}`` (as a type name).
    An empty ``robots`` means all.
    """

    target: str
    to: str
    robots: tuple[str, ...] = ()
    options: Mapping[str, OptionValue] = field(default_factory=dict)
    places: Places = field(default_factory=dict)


class Settings(Struct, frozen=True):
    """What ``namegen.yaml`` says. Globs and paths are relative to its folder, with ``/``."""

    path: str
    robots: tuple[str, ...]
    catalogue: str | None = None
    names: NameRules = field(default_factory=NameRules)
    lookups: tuple[LookupRule, ...] = ()
    code: tuple[CodeEntry, ...] = ()
    build: tuple[BuildEntry, ...] = ()
    templates: str | None = None
    places: Places = field(default_factory=dict)
