"""The constructors that a C++ class says it has: what they may do with its members."""

from __future__ import annotations

from tree_sitter import Node

from namegen.languages.cpp.classes import Class
from namegen.languages.cpp.names import dotted, type_words
from namegen.languages.cpp.scopes import function_declarator
from namegen.languages.sources import Source, elements, field_of

_NO_BODIES = frozenset({"default_method_clause", "delete_method_clause"})


def constructors(own: Class) -> list[Node]:
    """Return the statements of a class that declare a constructor with a body, here or elsewhere.

    Templates of them count; those of ``= default`` and ``= delete`` do not.
    """
    return [one for one in own.body if _constructs(one, own.path[-1])]


def _constructs(statement: Node, word: str) -> bool:
    if any(one.type in _NO_BODIES for one in statement.children):
        return False
    declarator = function_declarator(statement)
    name = field_of(declarator, "declarator")
    return name is not None and name.text == word.encode()


def all_seen(source: Source, own: Class) -> bool:
    """Whether the bodies of all constructors of a class stand in the file."""
    outside = sum(_has_body(one) is False for one in constructors(own))
    return outside == 0 or outside <= _outside(source, own.path[-1])


def makers(source: Source, own: Class) -> list[Node]:
    """Return the constructors that make an object of no other one of the class."""
    return [one for one in constructors(own) if not _copies(source, own, one)]


def delegates(constructor: Node, word: str) -> bool:
    """Whether a constructor has another one of its class do the work: ``Boat() : Boat(3) {}``."""
    lists = (one for one in constructor.children if one.type == "field_initializer_list")
    given = (each for one in lists for each in elements(one))
    return any(each.named_children[0].text == word.encode() for each in given)


def _has_body(statement: Node) -> bool:
    return statement.child_by_field_name("body") is not None


def _outside(source: Source, word: str) -> int:
    """Return how many constructors of a class have their body outside of it."""
    found = 0
    for stack in source.stacks([word]):
        if stack[-2].type != "qualified_identifier" or stack[-3].type != "function_declarator":
            continue
        words = dotted(source, stack[-3].child_by_field_name("declarator"))
        found += words is not None and words[-2:] == (word, word) and _has_body(stack[-4])
    return found


def _copies(source: Source, own: Class, constructor: Node) -> bool:
    """Whether a constructor only takes another object of the class."""
    declarator = function_declarator(constructor)
    given = elements(field_of(declarator, "parameters"))
    words = type_words(source, given[0].child_by_field_name("type")) if len(given) == 1 else None
    return words is not None and words[-1] == own.path[-1] and b"&" in (given[0].text or b"")
