"""Objects that are made of a list of values for their members: ``Part part{"bow", 3}``."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from functools import lru_cache

from tree_sitter import Node

from namegen.languages.cpp.classes import Class, classes_of
from namegen.languages.cpp.constructions import constructions
from namegen.languages.cpp.declarations import Binding
from namegen.languages.cpp.names import type_words
from namegen.languages.cpp.scopes import function_declarator
from namegen.languages.sources import Source, elements

_LIST = re.compile(rb"(?:[(,={]|\breturn)\s*\{")
_NO_TEXTS = frozenset({"char_literal", "false", "null", "number_literal", "true"})
_TAKING = frozenset({"argument_list", "assignment_expression", "return_statement"})


def is_filled(source: Source, member: Binding) -> bool:
    """Whether an object in the file is made with another value for a member than its own.

    A constructor that has one for it says so itself; a list that names its members too.
    The members of a union share their place, so none of them has what it is given for sure.
    """
    owner = member.path[:-1]
    own = next((one for one in classes_of(source, owner[-1]) if one.path == owner), None)
    if own is None or not _is_aggregate(own, owner[-1]):
        return False
    if own.node.type == "union_specifier":
        return True
    members = [*_members(own)]
    place = next((at for at, one in enumerate(members) if _holds(one, member.name)), None)
    if place is None:
        return False
    fitting = (one for one in _lists(source) if len(elements(one)) <= len(members))
    if any(_may_fill(source, one, place, owner[-1]) for one in fitting):
        return True
    for stack in source.stacks([owner[-1]]):
        for one in constructions(source, [*stack]) if len(stack) > 1 else ():
            if _gives(one.given, place):
                return True
    return False


def _is_aggregate(own: Class, word: str) -> bool:
    """Whether lists can make objects of a class: all may use what it has, and it has no more."""
    is_open = own.node.type != "class_specifier"
    for one in own.body:
        if one.type == "access_specifier":
            is_open = one.text == b"public"
        elif _constructs(one, word) or (
            not is_open and one.type == "field_declaration" and function_declarator(one) is None
        ):
            return False
    return True


def _gives(listed: Node, place: int) -> bool:
    given = elements(listed)
    return len(given) > place and given[0].type != "initializer_pair"


def _may_fill(source: Source, listed: Node, place: int, word: str) -> bool:
    """Whether a list that names no class may make an object of one, with a text at a place."""
    given = elements(listed)
    if len(given) <= place or given[place].type in _NO_TEXTS:
        return False
    above = listed.parent
    function = above.parent if above is not None and above.type == "return_statement" else None
    while function is not None and function.type not in {
        "function_definition",
        "lambda_expression",
    }:
        function = function.parent
    words = type_words(source, function.child_by_field_name("type")) if function else None
    return words is None or words[-1] == word or words[:1] != ("std",)


@lru_cache(maxsize=64)  # one file is asked about again and again
def _lists(source: Source) -> Sequence[Node]:
    """Return the lists that make an object of a class which they do not name: ``f({"bow"})``."""
    found: list[Node] = []
    for place in _LIST.finditer(source.data):
        brace = source.root.descendant_for_byte_range(place.end() - 1, place.end())
        above = node = brace.parent if brace is not None else None
        while above is not None and above.type == "initializer_list":
            above = above.parent
        if node is not None and above is not None and above.type in _TAKING and _gives(node, 0):
            found.append(node)
    return found


def _constructs(statement: Node, word: str) -> bool:
    """Whether a statement in the body of a class declares a constructor of it with a body."""
    if any(one.type == "default_method_clause" for one in statement.children):
        return False
    declarator = function_declarator(statement)
    name = declarator.child_by_field_name("declarator") if declarator is not None else None
    return name is not None and name.text == word.encode()


def _members(own: Class) -> Iterator[Node]:
    """Yield the declarators of what each object of a class has, in order."""
    for statement in own.body:
        is_static = any(one.text == b"static" for one in statement.children)
        if statement.type == "field_declaration" and not is_static:
            yield from statement.children_by_field_name("declarator")


def _holds(declarator: Node, name: Node) -> bool:
    return declarator.start_byte <= name.start_byte < declarator.end_byte
