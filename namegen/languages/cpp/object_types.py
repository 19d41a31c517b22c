"""Of which class an object of C++ is: as it is declared, made, copied or given by a function."""

from __future__ import annotations

from tree_sitter import Node

from namegen.languages.cpp.binding import Binding
from namegen.languages.cpp.chains import ELEMENT, chain, is_element
from namegen.languages.cpp.classes import classes_of
from namegen.languages.cpp.library import SAME_VALUE, SMART_MAKERS, SMART_POINTERS
from namegen.languages.cpp.names import dotted, type_arguments, type_words
from namegen.languages.cpp.openings import std_words
from namegen.languages.cpp.types import is_list
from namegen.languages.sources import Source, elements
from namegen.model.facts import Path


def below(source: Source, one: Binding, after: Path) -> Path | None:
    """Return the name of what is ``after`` an object: a class or another object, and the rest.

    None where it is not known what the object is.
    """
    kind = one.declared
    if one.way == "function" and one.value is not None:
        kind = one.value.child_by_field_name("type")
    if kind is None:
        return None
    if kind.type != "placeholder_type_specifier":
        several = one.many and not is_list(source, kind)
        return _of_type(source, kind, after[1:] if several and is_element(after[0]) else after)
    value = one.value
    if one.way == "each":
        words = chain(source, value)
        return (*words, ELEMENT, *after) if words else None
    return _of_value(source, value, after) if one.way == "value" and value is not None else None


def _of_type(source: Source, kind: Node | None, after: Path) -> Path | None:
    """Return the class of a type, of its elements, or of what a smart pointer leads to."""
    while after and is_element(after[0]):
        if not is_list(source, kind):
            return None
        kind, after = _first_argument(kind), after[1:]
    words = type_words(source, kind)
    known = std_words(source, words) if words else None
    if known is not None and known[-1] in SMART_POINTERS:
        words = type_words(source, _first_argument(kind))
    return (*words, *after) if words and after else None


def _first_argument(kind: Node | None) -> Node | None:
    if kind is not None and kind.type == "type_descriptor":
        kind = kind.child_by_field_name("type")
    given = type_arguments(kind)
    return next(iter(elements(given)), None) if given is not None else None


def _of_value(source: Source, value: Node, after: Path) -> Path | None:
    """Return what ``auto`` takes from a value: a class, or the other name that the value is."""
    if value.type in {"compound_literal_expression", "new_expression"}:
        return _of_type(source, value.child_by_field_name("type"), after)
    if value.type == "pointer_expression":
        words = chain(source, value.child_by_field_name("argument"))
        return (*words, *after) if words else None
    if value.type == "call_expression":
        called, given = (value.child_by_field_name(one) for one in ("function", "arguments"))
        words = dotted(source, called)
        word = words[-1] if words else ""
        if word in SMART_MAKERS:
            return _of_type(source, _first_argument(called), after)
        arguments = elements(given)
        if word in SAME_VALUE and len(arguments) == 1:
            value = arguments[0]
        elif words and classes_of(source, word):
            return (*words, *after)
        elif words and len(words) == 1 and not _is_function(source, word):
            return None
    words = chain(source, value)
    return (*words, *after) if words else None


def _is_function(source: Source, word: str) -> bool:
    """Whether the file declares a function of this name."""
    above = (stack[-2] for stack in source.stacks([word]) if len(stack) > 1)
    return any(one.type == "function_declarator" for one in above)
