"""What takes the value of a C++ variable: another variable, a member, what a function gives."""

from __future__ import annotations

from tree_sitter import Node

from namegen.languages.cpp import library
from namegen.languages.cpp.classes import classes_of
from namegen.languages.cpp.declarators import INDIRECT, nested, value_after
from namegen.languages.cpp.names import dotted, is_constant, is_of_letters
from namegen.languages.cpp.openings import std_words
from namegen.languages.cpp.scopes import CLASSES
from namegen.languages.cpp.takers import taken
from namegen.languages.cpp.variable_uses import Answer, Follow, Use
from namegen.languages.sources import Source, field_of, same

_REGIONS = frozenset({"compound_statement", "for_range_loop", "for_statement"})
"""What a local variable is seen in, that is followed there."""


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
    inner = [*nested(declarator, {"reference_declarator"})]
    ways, name = [one.type for one in inner], inner[-1] if inner else None
    pointers, refers = ways.count("pointer_declarator"), "reference_declarator" in ways
    kind, is_loose = statement.child_by_field_name("type"), not is_constant(use.source, statement)
    if pointers + refers > 1:
        return "altered"
    if (pointers or refers) and (is_loose or b"const_cast" in use.source.data):
        return _by_other_name(use, statement, name, inside=bool(pointers) or use.inside)
    if kind is not None and kind.type == "placeholder_type_specifier" and is_loose:
        return _by_other_name(use, statement, name, inside=True) if use.inside else "pointed"
    words = dotted(use.source, kind)
    if words and use.inside and words[-1] in library.ITERATORS and len(words) > 1:
        return _by_other_name(use, statement, name, inside=True)
    return _copied(use, kind)


def _by_other_name(use: Use, statement: Node, name: Node | None, *, inside: bool) -> Answer:
    """Return that a variable decides which is another name of it, or leads into it."""
    if use.source is not (use.file or use.source) or name is None or name.type != "identifier":
        return "altered"
    region = statement if statement.type == "for_range_loop" else statement.parent
    if region is None or region.type not in _REGIONS:
        return "altered"
    return Follow(((name, region),), inside)


def is_text(use: Use) -> bool:
    """Whether what leads into the variable is its text: ``name.data()``."""
    call = use.node.child_by_field_name("function")
    field = field_of(call, "field")
    return use.text(field) == "data"


def _copied(use: Use, kind: Node | None) -> Answer:
    """Return what an object of a type makes of what it is given: a copy, or another name of it."""
    source, words = use.source, dotted(use.source, kind)
    known = std_words(source, words) if words else None
    if known is not None and known[-1] not in library.VALUE_TYPES | library.READING_FUNCTIONS:
        return None if known[0] == "filesystem" else "altered"
    if use.inside and not is_text(use):
        is_copy = known is not None and known[-1] in library.VALUE_TYPES - library.SHARING_TYPES
        return None if is_copy else "altered"
    if kind is not None and (kind.type in CLASSES or _is_another_name(source, kind)):
        return "altered"
    if not words:
        return None
    return _kept_by_member(source, words[-1]) or taken(use, words[-1], None)


def _is_another_name(source: Source, kind: Node) -> bool:
    """Whether a type has in its arguments what is another name of something, and may change it."""
    pending = [kind]
    while pending:
        one = pending.pop()
        pending += one.named_children
        words = dotted(source, one)
        if words and words[-1] in library.VIEWS:
            return True
        loose = {"abstract_reference_declarator", "abstract_pointer_declarator"}
        if one.type == "type_descriptor" and not is_constant(source, one):
            declarator = one.child_by_field_name("declarator")
            if declarator is not None and declarator.type in loose:
                return True
    return False


def _kept_by_member(source: Source, word: str) -> Answer:
    """Return what an object makes of a text that it is given: a member may be a name of it."""
    for one in classes_of(source, word):
        for statement in one.body:
            kind = statement.child_by_field_name("type")
            words = dotted(source, kind)
            known = std_words(source, words) if words else None
            if statement.type != "field_declaration" or is_constant(source, statement):
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
    return _copied(use, use.above.child_by_field_name("type"))


def member(use: Use) -> Answer:
    """Return what a constructor's list makes of a value: a reference, if the member is one."""
    name = use.text(use.above.named_children[0])
    for stack in use.source.stacks([name]):
        if len(stack) > 2 and stack[-2].type == "reference_declarator":
            statement = stack[-3]
            if statement.type == "field_declaration" and not is_constant(use.source, statement):
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
        declarator = field_of(function, "declarator")
        return _trailing(use, declarator) or "pointed"
    declarator = function.child_by_field_name("declarator")
    refers = declarator is not None and declarator.type in INDIRECT
    if refers and not is_constant(use.source, function):
        return "altered"
    kind = function.child_by_field_name("type")
    if kind is not None and b"decltype" in (kind.text or b""):
        return "altered"
    if use.node.type == "initializer_list":
        return _copied(use, kind)
    is_deduced = kind is not None and kind.type == "placeholder_type_specifier"
    return _trailing(use, declarator) or ("pointed" if is_deduced else None)


def _trailing(use: Use, declarator: Node | None) -> Answer:
    """Return what a return type behind the parameters makes of a value."""
    children = declarator.children if declarator is not None else []
    last = next((one for one in children if one.type == "trailing_return_type"), None)
    text = use.text(last)
    loose = any(sign in text for sign in ("&", "*", "decltype")) and "const" not in text
    return "altered" if loose else None
