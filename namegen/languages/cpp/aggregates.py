"""Objects that are made of a list of values for their members: ``Part part{"bow", 3}``."""

from __future__ import annotations

from collections.abc import Iterator

from tree_sitter import Node

from namegen.languages.cpp.classes import Class, classes_of
from namegen.languages.cpp.constructions import constructions
from namegen.languages.cpp.declarations import Binding
from namegen.languages.cpp.scopes import function_declarator
from namegen.languages.sources import Source, elements


def is_filled(source: Source, member: Binding) -> bool:
    """Whether an object in the file is made with another value for a member than its own.

    A constructor that has one for it says so itself; a list that names its members too.
    """
    owner = member.path[:-1]
    own = next((one for one in classes_of(source, owner[-1]) if one.path == owner), None)
    if own is None or any(_constructs(one, owner[-1]) for one in own.body):
        return False
    place = next((at for at, one in enumerate(_members(own)) if _holds(one, member.name)), None)
    if place is None:
        return False
    for stack in source.stacks([owner[-1]]):
        for one in constructions(source, [*stack]) if len(stack) > 1 else ():
            given = elements(one.given)
            if len(given) > place and given[0].type != "initializer_pair":
                return True
    return False


def _constructs(statement: Node, word: str) -> bool:
    """Whether a statement in the body of a class declares a constructor of it."""
    if statement.type == "template_declaration":
        statement = statement.named_children[-1]
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
