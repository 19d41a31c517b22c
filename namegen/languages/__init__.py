"""Languages: what a file of code says, and how an edit of it is spelt.

Each language is one package below this one, found by walking the folder. Its
``__init__.py`` imports nothing heavy and offers ``EXTENSIONS`` and ``load()``.

What languages share lies beside the packages, as bases that a language fills in:
``readings.py`` (a file's facts) with ``uses.py`` (look-ups) and ``parameters.py`` (names that
a function is given), ``definitions.py``, ``imports.py``, ``expressions.py``, ``numbers.py`` and
``named_values.py``, all on ``sources.py``, whose parser may be one of ``mended_parsers.py``.
``stretches.py`` tells what was not parsed, ``prefilters.py`` from bytes which files can hold a
look-up, and ``tree_languages.py`` puts a language together.

Where names belong to types and regions, as in Java and Kotlin, more is shared: ``scopes.py``,
``owned_names.py`` (how names are bound and declared), ``owned_bindings.py`` (all bindings of a
word) with ``earlier_uses.py``, ``families.py`` (types and their bases), ``alterations.py`` (lists
that are changed) and ``members.py`` (what a path stands for).

Texts come in by ``encodings.py``, with ``surrogates.py`` for escapes in pairs. Edits are spelt
and proved with ``edits.py``, ``proofs.py`` and ``import_lines.py``.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from functools import cache
from importlib import import_module
from pkgutil import iter_modules
from typing import Literal, Protocol

from namegen.languages.encodings import Decoded
from namegen.model.facts import ConstantUse, Reading, Respelling, Surroundings, Text
from namegen.model.workspaces import LookupRule

Prefilter = Callable[[bytes], bool]
"""Whether a file with these bytes can hold a look-up at all; False is certain."""

Making = Literal["new", "own class", "class"]
"""How code says that it makes an object: ``new Motor()``; ``Motor()``; ``lib.Motor()`` too."""


class Language(Protocol):
    """One programming language. An instance holds no state of any file."""

    @property
    def name(self) -> str:
        """The language's name, as ``languages:`` of a look-up rule says it."""

    @property
    def makes(self) -> Making:
        """How objects are made; a class is told from a function by its capital."""

    def decode(self, data: bytes) -> Decoded:
        """Return the text of a file.

        Raises:
            UnusableInput: the bytes are no text in the encoding that the file declares.
        """

    def prefilter(self, rules: Sequence[LookupRule]) -> Prefilter:
        """Return the test that tells, on raw bytes, which files need no reading."""

    def read(self, utf8: bytes, rules: Sequence[LookupRule]) -> Reading:
        """Return the facts of a file from its text in UTF-8, without a byte order mark."""

    def spell(self, value: str, literal: Text) -> str | None:
        """Return what to write between the literal's quotes so that it means ``value``.

        None: those quotes cannot say it.
        """

    def use_constants(self, utf8: bytes, uses: Sequence[ConstantUse], here: Surroundings) -> bytes:
        """Return the text with literals replaced by constants, and their imports added.

        Raises:
            UnusableInput: the constants cannot be named in this file.
        """

    def objection(
        self, before: bytes, after: bytes, respellings: Sequence[Respelling]
    ) -> str | None:
        """Return why ``after`` must not be written, or None when it is proved.

        Proved is: it is ``before`` with exactly these literals changed, it is
        valid code where it was, and each literal has its new value. Both are
        UTF-8; spans are those of ``before``.
        """


@cache
def extensions() -> Mapping[str, str]:
    """Return each file extension that is read, with the name of its language."""
    found: dict[str, str] = {}
    for module in iter_modules(__path__):
        if module.ispkg:
            package = import_module(f"{__name__}.{module.name}")
            found |= dict.fromkeys(package.EXTENSIONS, module.name)
    return found


@cache
def named(name: str) -> Language:
    """Return the language of this name; loads its parser.

    Raises:
        KeyError: there is no such language.
    """
    if name not in extensions().values():
        raise KeyError(name)
    language: Language = import_module(f"{__name__}.{name}").load()
    return language


def for_path(path: str) -> Language | None:
    """Return the language that a file's extension stands for, or None."""
    name = extensions().get(path[path.rfind(".") :].lower()) if "." in path else None
    return named(name) if name else None
