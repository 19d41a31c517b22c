"""What a file of code says, whatever its language: look-ups, definitions, imports.

A language package under ``languages/`` makes a `Reading` of a file; resolving
follows its references, across files, down to the text that a look-up gets.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Protocol

from msgspec import Struct

from namegen.model.places import Span
from namegen.model.workspaces import LookupRule

Path = tuple[str, ...]
"""A dotted name with the scopes it lies in: ("Boat", "name").

A word ``@120`` stands for the function or block at that byte of the file: names
inside it are not reached by name from elsewhere. A word ``()`` stands for an object of the
class before it, of which some attributes may be given when it is made.
"""
MADE = "()"


PASSED_ON = "it is passed on as a function, so that the names it gets are not seen"
"""Why a name is not known where a look-up is not called but handed to something else."""


class Text(Struct, frozen=True):
    """A string literal. ``span`` is its text without the quotes.

    ``opening`` is what stands before the text (``'``, ``b"``, ``r'''``), so
    that the language can spell another value in the same quotes.
    """

    value: str
    span: Span
    opening: str
    is_key: bool = False
    """Whether it is a key of a table: other code may take the value by it, so it is left alone."""


class Join(Struct, frozen=True):
    """Pieces that are put together: ``"bow" + SIDE``, ``f"bow{SIDE}"``, ``"bow" "Thruster"``."""

    parts: tuple[Expression, ...]
    span: Span


class Ref(Struct, frozen=True):
    """A name that stands for a text defined elsewhere.

    ``tries`` are the paths it may mean, in the order in which the language
    looks them up; resolving takes the first that this file defines, or else an
    import of the first word of ``tries[-1]``.
    """

    tries: tuple[Path, ...]
    span: Span


class Unknown(Struct, frozen=True):
    """A value that only running the program tells. ``why`` completes "because ..."."""

    why: str
    span: Span
    weighs: bool = False
    """Whether the reason stands for a name that gets other values too."""


class Several(Struct, frozen=True):
    """Each of several values: the elements of a list, or both branches of a condition."""

    options: tuple[Expression, ...]
    span: Span
    listed: bool = False
    """Whether they are the elements of one list."""


class Each(Struct, frozen=True):
    """What a loop takes from a value: one element of a list after the other."""

    of: Expression
    span: Span


class Wrapped(Struct, frozen=True):
    """A call with one argument, ``MotorName("bow")``.

    It means its argument if ``by`` turns out to be a `Wrapper`, else it is not known.
    """

    by: Ref
    value: Expression
    span: Span


class Wrapper(Struct, frozen=True):
    """A type of text that, called with a text, gives just that text: ``NewType("N", str)``."""

    span: Span


Expression = Text | Join | Ref | Unknown | Several | Each | Wrapped | Wrapper


class LookupSite(Struct, frozen=True):
    """One name at one place that looks a device up.

    A call with several names (a list, ``name_at: rest``) gives several sites.
    """

    rule: LookupRule
    name: Expression
    kind: str | None
    """The device kind that the program asks for, where the site says it."""
    span: Span
    """The whole look-up expression."""
    scope: Path = ()
    """Classes and functions that it lies in, outermost first."""
    holder: str | None = None
    """Variable, field, parameter or keyword that is filled with the device."""
    parameter: str | None = None
    """Name of the enclosing function when the name is one of its parameters."""
    parameter_at: int | None = None
    """Which argument of a call, from 0, fills that parameter; None where none does by its place."""
    parameter_key: str | None = None
    """The keyword that fills that parameter, in a language that has keywords."""
    keywords: tuple[str, ...] = ()
    """Where the rule finds no name but arguments: the keywords of which one may give it."""
    member: Ref | None = None
    """A member declared in another file: it is a look-up only if that is of the rule's class."""


class NumberSite(Struct, frozen=True):
    """A number that is written out and given a name: ``COUNTS = 48 * 27``.

    ``unit`` is what one step of its last digit is: 0.01 for ``5.50``.
    """

    name: str
    value: float
    unit: float
    text: str
    span: Span


class Definition(Struct, frozen=True):
    """One binding of a path in a file. Two of one path mean that the value is not known.

    ``inherited``: not bound here but perhaps in a base class; if that does not
    define it either, the search goes on.
    """

    path: Path
    value: Expression
    span: Span
    inherited: bool = False


class Import(Struct, frozen=True):
    """A local name that comes from another file.

    ``files`` are the relative paths where the module may lie, best first, tried
    below the importing file's folder (going up ``up`` folders; None: not
    relative) and then below each root of the code. ``member`` is the path inside
    that file that the local name stands for; empty when it stands for the module.
    ``under`` are words that follow the local name and belong to the module's name
    (``import club.names`` binds ``club``, and ``club.names`` is the module).

    ``club/*.kt`` are all files of a folder with that ending: where a language lets any file
    of a package define a name, it is the first that does.
    """

    local: str
    files: tuple[str, ...]
    member: Path = ()
    up: int | None = None
    under: Path = ()
    alone: bool = False
    """Of a file that is included: whether only its own names count, not what it includes."""


class Respelling(Struct, frozen=True):
    """A literal that is to get another value: ``spelling`` is its new text between the quotes."""

    literal: Text
    spelling: str
    value: str


class ConstantUse(Struct, frozen=True):
    """A literal that is to become a reference to a generated constant.

    ``words`` lead to the constant inside the generated file: ("Motor", "BOW_THRUSTER").
    ``file`` is that file's path, ``text`` its content in UTF-8.
    """

    literal: Text
    words: Path
    file: str
    text: bytes


class Surroundings(Struct, frozen=True):
    """Where a file lies into which constants are to be imported.

    ``path`` is its own, ``roots`` are the folders that imports start from.
    """

    path: str
    roots: Sequence[str] = ()
    packaged: bool = False
    """Whether its folder says that it is a package: in Python by an ``__init__.py``."""
    exposed: bool = False
    """Whether other files import all names of this one, so that an added import is theirs too."""


class Reading(Protocol):
    """The facts of one file, worked out on demand: most definitions are never asked for."""

    @property
    def lookups(self) -> Sequence[LookupSite]:
        """All look-ups in the order of the file."""

    @property
    def unsound(self) -> Sequence[Span]:
        """Stretches that could not be parsed; everything else is sound."""

    def numbers(self, names: Sequence[str]) -> Sequence[NumberSite]:
        """Return the numbers that are given one of these names here, in order.

        A variable, a field, an argument, a default or a key of a table may bear the name.
        """

    def definitions(self, path: Path) -> Sequence[Definition]:
        """Return every binding of the path in this file, in order."""

    def declared_type(self, path: Path) -> Path | None:
        """Return the type that the path is declared with here, if it holds such an object itself.

        For names alone that the language declares with a type; None for pointers to one.
        """

    def imported(self, name: str) -> Sequence[Import]:
        """Return where a name not defined in this file may come from, best first.

        Wildcard imports and, in Java, the package's other files are included.
        """

    @property
    def spaces(self) -> Sequence[Path]:
        """The namespaces that the file opens, as other files write them before its names."""

    @property
    def included(self) -> Sequence[Import]:
        """The files all of whose names count as names of this one, and of what includes it."""

    def members(self, word: str) -> Sequence[str]:
        """Return what the classes of this name define directly, in order; for hints alone."""

    def references(self, name: str) -> Sequence[Ref]:
        """Return the names in the code that are this word or end in it; the span is the word's.

        A name of one word may be left out where the language imports no constant by itself.
        """

    def mentions(self, path: Path) -> bool:
        """Whether code of this file (not a comment or a string) refers to the dotted name."""
