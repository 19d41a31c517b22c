"""Types of C++ whose values are texts: what is given to anything else is not known.

A class may make another text of what it is given, or none. So it counts only for what is
known to keep it: the standard library's texts and lists, letters, and other names of these.
"""

from __future__ import annotations

from collections.abc import Sequence

from tree_sitter import Node

from namegen.languages.cpp.library import LISTS
from namegen.languages.cpp.names import LETTERS, dotted, is_of_letters, type_arguments
from namegen.languages.cpp.openings import std_words, tries
from namegen.languages.cpp.scopes import Scope
from namegen.languages.expressions import RUN_TIME
from namegen.languages.sources import Source, elements, span_of
from namegen.model.facts import Expression, Path, Ref, Unknown, Wrapped
from namegen.model.places import Span

EXACT = "="
"""Begins a path of which nothing more is to be opened: two namespaces may open each other."""
_TEXTS = frozenset(
    {"string", "string_view", "u16string", "u32string", "u8string", "wstring", "wstring_view"}
)
_BOARDS = frozenset({"F", "PSTR", "String"})
"""What small boards have; the first two are macros that keep a text in another memory."""


def keeps_text(path: Path) -> bool:
    """Whether a path that nothing in the code defines is that of a text, a list or letters."""
    words = path[1:] if path[:1] == (EXACT,) else path
    if words[:1] == ("std",):
        return len(words) == 2 and words[1] in _TEXTS | LISTS
    return words != path and len(words) == 1 and words[0] in {LETTERS, *_BOARDS}


def is_list(source: Source, kind: Node | None) -> bool:
    """Whether a type is one of the standard library's lists."""
    words = dotted(source, kind)
    known = std_words(source, words) if words else None
    return known is not None and len(known) == 1 and known[0] in LISTS


def keeper(source: Source, scope: Scope, words: Path, span: Span) -> Ref | None:
    """Return what must keep a text so that the type of this name does; None where it is known."""
    known = std_words(source, words)
    if known is not None and len(known) == 1 and known[0] in _TEXTS:
        return None
    paths = tries(source, scope, words)
    if len(words) == 1 and words[0] in _BOARDS:
        paths = (*paths, (EXACT, *words))
    return Ref(paths, span)


def kept(
    source: Source, scope: Scope, kind: Node | None, value: Expression, *, brackets: bool = False
) -> Expression:
    """Return a value as one of a type: as it is, if the type is known to keep it.

    ``brackets``: there are ``*`` or ``[]`` beside the type.
    """
    if kind is None or isinstance(value, Unknown):
        return value
    needed = _needed(source, scope, kind, brackets=brackets)
    if needed is None:
        return Unknown(RUN_TIME, value.span)
    for one in needed:
        value = Wrapped(one, value, value.span)
    return value


def _needed(source: Source, scope: Scope, kind: Node, *, brackets: bool) -> Sequence[Ref] | None:
    """Return what must keep a text for a type to do so; None where it never does."""
    found: list[Ref] = []
    node: Node | None = kind
    while node is not None and node.type != "placeholder_type_specifier":
        if node.type == "type_descriptor":
            brackets = brackets or node.child_by_field_name("declarator") is not None
            node = node.child_by_field_name("type")
        elif node.type in {"primitive_type", "sized_type_specifier"}:
            return found if brackets and is_of_letters(source, node) else None
        elif is_list(source, node):
            given = type_arguments(node)
            node, brackets = next(iter(elements(given)), None) if given is not None else None, True
        else:
            words = dotted(source, node)
            one = keeper(source, scope, words, span_of(kind)) if words else None
            found += [one] if one is not None else []
            return found if words else None
    return found
