"""What takes the value of a C++ variable: another variable, a member, what a function gives."""

from __future__ import annotations

import re

from tree_sitter import Node

from namegen.languages.cpp import library
from namegen.languages.cpp.classes import classes_of
from namegen.languages.cpp.declarators import value_after
from namegen.languages.cpp.names import dotted, is_of_letters
from namegen.languages.cpp.openings import std_words
from namegen.languages.cpp.variable_uses import Answer, Use
from namegen.languages.sources import Source, same


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
