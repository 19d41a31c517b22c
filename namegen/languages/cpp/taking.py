"""What takes a variable of C++ that is used: another variable, a function, a loop."""

from __future__ import annotations

import re
from typing import Literal, NamedTuple

from tree_sitter import Node

from namegen.languages.cpp import library
from namegen.languages.cpp.classes import classes_of
from namegen.languages.cpp.declarators import PARAMETERS, arguments_as_parameters, value_after
from namegen.languages.cpp.names import dotted, is_of_letters
from namegen.languages.cpp.openings import std_words
from namegen.languages.sources import Source, Stack, elements, same
from namegen.model.facts import Path

Alteration = Literal["altered", "called", "moved", "pointed"]
"""How a use may change a variable: anything can; a method of it that is not known does; what it
holds is taken out; a pointer to it is made if it is an array."""


class Up(NamedTuple):
    """That what stands some nodes further up decides about a use.

    ``inside``: it is given what leads into the variable, an iterator or a pointer.
    """

    steps: int = 1
    inside: bool = False


Answer = Up | Alteration | None


class Use(NamedTuple):
    """A place where a variable is used, as far as it is looked at: ``stack[place]``."""

    source: Source
    stack: Stack
    place: int
    inside: bool = False
    depth: int = 0
    """How many others it is looked at for: in loops over these, or in macros that get these."""
    file: Source | None = None
    """The file, where the source is the text of one of its macros."""

    @property
    def node(self) -> Node:
        """The variable, or an expression that stands for it or for a part of it."""
        return self.stack[self.place]

    @property
    def above(self) -> Node:
        """What the node stands in."""
        return self.stack[self.place - 1]

    @property
    def beyond(self) -> Node | None:
        """What that stands in."""
        return self.stack[self.place - 2] if self.place > 1 else None

    @property
    def sign(self) -> str:
        """The operator that the node stands beside."""
        operator = self.above.child_by_field_name("operator")
        return operator.type if operator is not None else ""

    def is_in(self, field: str) -> bool:
        """Whether the node is this field of what it stands in."""
        return same(self.above.child_by_field_name(field), self.node)

    def text(self, node: Node | None) -> str:
        """Return the text of a node; empty where there is none."""
        return self.source.text(node) if node is not None else ""


def put(use: Use) -> Answer:
    """Return what becomes of a value that a declaration puts into another variable."""
    statement, declarator = use.above, use.above.child_by_field_name("declarator")
    if statement.type == "init_declarator":
        if not use.is_in("value") or use.beyond is None:
            return "altered"
        statement = use.beyond
    elif same(declarator, use.node):  # a parameter's name, where the function has no body
        return None
    elif statement.type == "field_declaration":
        declarators = statement.children_by_field_name("declarator")
        filled = (one for one in declarators if same(value_after(statement, one), use.node))
        declarator = next(filled, declarator)
    return held(use, statement, declarator)


def held(use: Use, statement: Node, declarator: Node | None) -> Answer:
    """Return what a variable of this declaration makes of what it is given."""
    is_constant = _is_constant(use.source, statement)
    ways: list[str] = []
    while declarator is not None:
        ways.append(declarator.type)
        is_last = declarator.type == "reference_declarator" and declarator.named_child_count
        inner = declarator.child_by_field_name("declarator")
        declarator = declarator.named_children[-1] if is_last and inner is None else inner
    pointers, refers = ways.count("pointer_declarator"), "reference_declarator" in ways
    if pointers + refers > 1 or ((pointers or refers) and not is_constant):
        return "altered"
    kind = statement.child_by_field_name("type")
    if kind is not None and kind.type == "placeholder_type_specifier" and not is_constant:
        return "pointed"
    return _copied(use.source, kind)


def _is_constant(source: Source, node: Node) -> bool:
    qualified = (one for one in node.children if one.type == "type_qualifier")
    return any(source.text(one) in {"const", "constexpr"} for one in qualified)


def _copied(source: Source, kind: Node | None) -> Answer:
    """Return what an object of a type makes of what it is given: a copy, or another name of it."""
    words = dotted(source, kind)
    known = std_words(source, words) if words else None
    if known is not None and known[-1] not in library.VALUE_TYPES | library.READING_FUNCTIONS:
        return "altered"
    text = source.text(kind).replace(" ", "") if kind is not None else ""
    loose = any(sign in text for sign in ("&", "*")) and "const" not in text
    if loose or not library.VIEWS.isdisjoint(re.findall(r"\w+", text)):
        return "altered"
    return _kept_by_member(source, words[-1]) if words else None


def _kept_by_member(source: Source, word: str) -> Answer:
    """Return what an object makes of a text that it is given: a member may be a name of it."""
    for one in classes_of(source, word):
        for statement in one.body:
            kind = statement.child_by_field_name("type")
            words = dotted(source, kind)
            known = std_words(source, words) if words else None
            if statement.type != "field_declaration" or _is_constant(source, statement):
                continue
            ways = {each.type for each in statement.children_by_field_name("declarator")}
            if known and "reference_declarator" in ways:
                return "altered"
            if "pointer_declarator" in ways and is_of_letters(source, kind):
                return "pointed"
    return None


def constructed(use: Use) -> Answer:
    """Return what ``Name{name}`` and ``new Name{name}`` make of what they are given."""
    if not use.is_in("value") and not use.is_in("arguments"):
        return None
    return _copied(use.source, use.above.child_by_field_name("type"))


def argument(use: Use) -> Answer:
    """Return what becomes of an argument: of a call, of ``new``, of a declaration."""
    taker = use.beyond
    if taker is None:
        return "altered"
    if taker.type == "call_expression":
        return _called(use, taker)
    return Up()


def _called(use: Use, call: Node) -> Answer:
    """Return what a call does with an argument."""
    function = call.child_by_field_name("function")
    if function is not None and function.type == "field_expression":
        method = use.text(function.child_by_field_name("field"))
        if method in library.FILLING_METHODS or (use.inside and not _is_text(use)):
            return "altered"
        fills = method in library.FILLING_LETTERS and len(elements(use.above)) > 1
        return "pointed" if fills else None
    words = dotted(use.source, function)
    if words is None:
        return None
    if words[-1] in library.CASTS:
        return "altered" if "&&" in use.text(function) else Up(2)
    listed = elements(use.above)
    return _given(use, words, first=bool(listed) and same(listed[0], use.node))


def _given(  # noqa: PLR0911 - one per form
    use: Use, words: Path, *, first: bool
) -> Answer:
    """Return what the function of this name does with an argument."""
    word, known = words[-1], std_words(use.source, words)
    if word in library.FILLING_FIRST and (known or len(words) == 1):
        return "altered" if first else None
    if len(words) == 1 and (word in library.FILLING or word == library.MOVING):
        return "moved" if word == library.MOVING else "altered"
    if len(words) == 1 and word in library.INSIDE_METHODS:  # `begin(names)`, by its argument
        return Up(2, inside=True)
    if known is None and word in library.FILLING_AT and len(elements(use.above)) > 1:
        return "altered" if use.inside else "pointed"
    if known is None:
        readers = library.READING_FUNCTIONS if len(words) == 1 else ()
        return "altered" if use.inside and not _is_text(use) and word not in readers else None
    if word == library.MOVING and len(known) == 1 and not use.inside:
        return "moved"
    if word in library.PASSING_FUNCTIONS:
        return Up(2, inside=True)
    if word in library.PAIRING_FUNCTIONS or (use.inside and _may_alter_elements(use)):
        return "altered" if use.inside else "pointed"
    is_read = word in library.READING_FUNCTIONS | library.VALUE_TYPES
    return None if is_read and len(known) == 1 else "altered"


def _may_alter_elements(use: Use) -> bool:
    """Whether a function beside what leads into a list gets its elements themselves."""
    for one in elements(use.above):
        declarator = one.child_by_field_name("declarator")
        text = use.text(declarator)
        if one.type == "lambda_expression" and "&" in text and "const" not in text:
            return True
    return False


def _is_text(use: Use) -> bool:
    """Whether what leads into the variable is its text: ``name.data()``."""
    call = use.node.child_by_field_name("function")
    field = call.child_by_field_name("field") if call is not None else None
    return use.text(field) == "data"


def bare_argument(use: Use) -> Answer:
    """Return what becomes of ``name`` in ``T other(name)``, which reads like a parameter."""
    if not use.is_in("type") or use.place < 4:
        return None
    taker, around = use.stack[use.place - 3], use.stack[use.place - 4]
    if taker.type == "abstract_function_declarator" and around.type in PARAMETERS:
        called = dotted(use.source, around.child_by_field_name("type"))
        return _given(use, called, first=True) if called else None
    if not arguments_as_parameters(taker):
        return None
    place = use.place - 4
    while place and use.stack[place].type.endswith("declarator"):
        place -= 1
    return held(use, use.stack[place], use.stack[place + 1])


def member(use: Use) -> Answer:
    """Return what a constructor's list makes of a value: a reference, if the member is one."""
    name = use.text(use.above.named_children[0])
    for stack in use.source.stacks([name]):
        if len(stack) > 2 and stack[-2].type == "reference_declarator":
            statement = stack[-3]
            if statement.type == "field_declaration" and not _is_constant(use.source, statement):
                return "altered"
    return None


def captured(use: Use) -> Answer:
    """Return what ``[other = name]`` does; ``[&other = name]`` makes another name."""
    if not use.is_in("right"):
        return None
    return "altered" if any(one.type == "&" for one in use.above.children) else "pointed"


def returned(use: Use) -> Answer:
    """Return what becomes of a value that is returned: a reference or pointer lets it change."""
    holders = {"function_definition", "lambda_expression"}
    function = next((one for one in reversed(use.stack[: use.place]) if one.type in holders), None)
    if function is None or function.type == "lambda_expression":
        declarator = function.child_by_field_name("declarator") if function is not None else None
        return _trailing(use, declarator) or "pointed"
    declarator = function.child_by_field_name("declarator")
    refers = declarator is not None and declarator.type in {
        "pointer_declarator",
        "reference_declarator",
    }
    if refers and not _is_constant(use.source, function):
        return "altered"
    kind = function.child_by_field_name("type")
    if kind is not None and b"decltype" in (kind.text or b""):
        return "altered"
    is_deduced = kind is not None and kind.type == "placeholder_type_specifier"
    return _trailing(use, declarator) or ("pointed" if is_deduced else None)


def _trailing(use: Use, declarator: Node | None) -> Answer:
    """Return what a return type behind the parameters makes of a value."""
    children = declarator.children if declarator is not None else []
    last = next((one for one in children if one.type == "trailing_return_type"), None)
    text = use.text(last)
    loose = any(sign in text for sign in ("&", "*", "decltype")) and "const" not in text
    return "altered" if loose else None
