"""Declarations of C++: from a name up to what declares it, through ``*``, ``&`` and ``[]``."""

from __future__ import annotations

from collections.abc import Iterator, Set
from itertools import takewhile
from typing import Literal

from msgspec import Struct
from tree_sitter import Node

from namegen.languages.cpp.library import LISTS
from namegen.languages.cpp.names import dotted
from namegen.languages.sources import Source, Stack, elements, field_of, is_field, same
from namegen.model.facts import Path

STATEMENTS = frozenset(
    {
        "declaration",
        "field_declaration",
        "for_range_loop",
        "function_definition",
        "optional_parameter_declaration",
        "parameter_declaration",
        "variadic_parameter_declaration",
    }
)
PARAMETERS = frozenset({one for one in STATEMENTS if one.endswith("parameter_declaration")})
_DECLARATORS = frozenset(
    {
        "array_declarator",
        "attributed_declarator",
        "function_declarator",
        "parenthesized_declarator",
        "pointer_declarator",
        "reference_declarator",
        "structured_binding_declarator",
        "variadic_declarator",
    }
)
INDIRECT = frozenset({"pointer_declarator", "reference_declarator"})
"""What makes a variable lead to something instead of being it."""
_NAMES = frozenset({"qualified_identifier", "template_function"})


class Declared(Struct, frozen=True):
    """How a name is declared: ``place`` is where its statement stands in the stack.

    ``words`` are the name with what qualifies it, ``parts`` the types of the nodes
    between, outermost first.
    """

    place: int
    statement: Node
    words: Path
    parts: tuple[str, ...]
    value: Node | None = None
    specialised: bool = False
    """Whether it is what a template is for some arguments: ``name<2>()``."""

    @property
    def type(self) -> Node | None:
        """The type that is written before the name."""
        return self.statement.child_by_field_name("type")

    @property
    def sort(self) -> Literal["function", "parts", "many", "one"]:
        """What it is: a function, parts of something, a list of several, one value."""
        if "structured_binding_declarator" in self.parts:
            return "parts"
        if self.parts[-1:] == ("function_declarator",):
            return "function"
        if self.parts.count("array_declarator") > self._letters:
            return "many"
        return "many" if self._container else "one"

    @property
    def points(self) -> bool:
        """Whether it is a pointer or a reference to something."""
        return not INDIRECT.isdisjoint(self.parts)

    @property
    def _letters(self) -> int:
        """How many of its brackets only make a text of letters."""
        kind = self.type
        text = kind is not None and kind.type == "primitive_type" and not self.points
        return 1 if text else 0

    @property
    def _container(self) -> bool:
        kind = self.type
        while kind is not None and kind.type == "qualified_identifier":
            kind = kind.child_by_field_name("name")
        if kind is None or kind.type != "template_type":
            return False
        name = kind.child_by_field_name("name")
        return name is not None and name.text is not None and name.text.decode() in LISTS


def declared(source: Source, stack: Stack) -> Declared | None:
    """Return how the last node of the stack is declared, if it is the name in a declaration."""
    place = len(stack) - 1
    specialised = False
    while place and stack[place - 1].type in _NAMES:
        if not is_field(stack[place - 1], "name", stack[place]):
            return None
        place -= 1
        specialised = specialised or stack[place].type == "template_function"
    words = dotted(source, stack[place])
    parts: list[str] = []
    while place and stack[place - 1].type in _DECLARATORS:
        if not _is_declared_by(stack[place], stack[place - 1]):
            return None
        place -= 1
        parts.append(stack[place].type)
    if not place or not words:
        return None
    above, value = stack[place - 1], None
    if above.type == "init_declarator" and is_field(above, "declarator", stack[place]):
        value = above.child_by_field_name("value")
        place -= 1
        above = stack[place - 1]
    if above.type not in STATEMENTS or not _declares(above, stack[place]):
        return None
    if value is None:
        value = value_after(above, stack[place])
    return Declared(place - 1, above, words, tuple(parts[::-1]), value, specialised)


def nested(declarator: Node | None, unnamed: Set[str] = frozenset()) -> Iterator[Node]:
    """Yield a declarator and those within it, outermost first.

    The grammar gives no name to what lies in some; ``unnamed`` are the types of those that are
    looked into all the same.
    """
    while declarator is not None:
        yield declarator
        inner = declarator.child_by_field_name("declarator")
        last = declarator.named_children[-1:] if declarator.type in unnamed else []
        declarator = inner or next(iter(last), None)


def _is_declared_by(node: Node, around: Node) -> bool:
    """Whether a node is the declarator inside another one, and no size or parameter of it."""
    inner = around.child_by_field_name("declarator")
    if inner is not None:
        return same(inner, node)
    return node.type not in {"type_qualifier", "parameter_list"}


def _declares(statement: Node, declarator: Node) -> bool:
    return any(same(one, declarator) for one in statement.children_by_field_name("declarator"))


def value_after(statement: Node, declarator: Node) -> Node | None:
    """Return the value that follows a declarator: of a field, a default, a condition, a loop."""
    if statement.type == "for_range_loop":
        return statement.child_by_field_name("right")
    children = statement.children
    start = next(at for at, one in enumerate(children) if same(one, declarator))
    fields = {"default_value", "value"}
    until = takewhile(lambda at: children[at].type != ",", range(start + 1, len(children)))
    named = (children[at] for at in until if statement.field_name_for_child(at) in fields)
    return next(named, None)


def arguments_as_parameters(declarator: Node | None) -> list[Node]:
    """Return the arguments in ``Sensor bow(boat, kBow)``, which reads like a function too.

    Empty where a parameter is more than a bare name: then it is one.
    """
    given = elements(field_of(declarator, "parameters"))
    return given if all(map(_may_be_argument, given)) else []


def _may_be_argument(parameter: Node) -> bool:
    kind = parameter.child_by_field_name("type")
    if parameter.type != "parameter_declaration" or kind is None:
        return False
    if kind.type not in {"type_identifier", "qualified_identifier"}:
        return False
    inner = parameter.child_by_field_name("declarator")
    called = inner is not None and inner.type == "abstract_function_declarator"
    return parameter.named_child_count == 1 or (called and parameter.named_child_count == 2)
