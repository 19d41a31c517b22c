"""What becomes of a variable of C++ that is an argument: of a function, a macro, a constructor."""

from __future__ import annotations

from tree_sitter import Node

from namegen.languages.cpp import library
from namegen.languages.cpp.declarators import PARAMETERS, arguments_as_parameters
from namegen.languages.cpp.names import dotted, is_constant
from namegen.languages.cpp.openings import std_words
from namegen.languages.cpp.scopes import function_declarator
from namegen.languages.cpp.takers import taken, takers
from namegen.languages.cpp.taking import held, is_text
from namegen.languages.cpp.variable_uses import Answer, Up, Use
from namegen.languages.sources import elements, field_of, place_in
from namegen.model.facts import Path


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
        return _of_method(use, use.text(function.child_by_field_name("field")))
    words = dotted(use.source, function)
    if words is None:
        return None
    if words[-1] in library.CASTS:
        return "altered" if "&&" in use.text(function) else Up(2)
    return _given(use, words, place_in(use.above, use.node))


def _of_method(use: Use, method: str) -> Answer:
    """Return what a method does with an argument; those of the file's classes tell it."""
    if method in library.FILLING_METHODS:
        return "altered"
    if use.inside and not is_text(use):
        return None if method in library.READING_ARGUMENTS else "altered"
    if method in library.FILLING_LETTERS and len(elements(use.above)) > 1:
        return "pointed"
    return taken(use, method, place_in(use.above, use.node))


def _given(use: Use, words: Path, place: int) -> Answer:
    """Return what the function of this name does with the argument at a place."""
    word, known = words[-1], std_words(use.source, words)
    if word in library.FILLING_FIRST and (known or len(words) == 1):
        return None if place else "altered"
    if len(words) == 1 and (word in library.FILLING or word == library.MOVING):
        return "moved" if word == library.MOVING else "altered"
    if len(words) == 1 and word in library.INSIDE_METHODS:  # `begin(names)`, by its argument
        return Up(2, inside=True)
    if known is None:
        return _of_file(use, words, place)
    return _of_library(use, known, place)


def _of_file(use: Use, words: Path, place: int) -> Answer:
    """Return what a function that is not known to be the library's does with an argument."""
    word = words[-1]
    if takers(use.file or use.source, word):
        return taken(use, word, place)
    if word in library.SOURCES and place < library.SOURCES[word]:
        return "altered" if use.inside and _may_alter_elements(use) else None
    if word in library.FILLING_AT and len(elements(use.above)) > 1:
        return "altered" if use.inside else "pointed"
    if use.inside and not is_text(use):
        is_read = len(words) == 1 and word in library.READING_FUNCTIONS
        return None if is_read else "altered"
    return None


def _of_library(use: Use, known: Path, place: int) -> Answer:
    """Return what a function of ``std::`` does with an argument."""
    word = known[-1]
    if known[0] == "filesystem":
        return None
    if word == library.MOVING and len(known) == 1 and not use.inside:
        return "moved"
    if word in library.PASSING_FUNCTIONS:
        return Up(2, inside=True)
    if word in library.PAIRING_FUNCTIONS or (use.inside and _may_alter_elements(use)):
        return "altered" if use.inside else "pointed"
    is_read = word in library.READING_FUNCTIONS | library.VALUE_TYPES
    is_read = is_read or place < library.SOURCES.get(word, 0)
    return None if is_read and len(known) == 1 else "altered"


def _may_alter_elements(use: Use) -> bool:
    """Whether a function beside what leads into a list gets its elements themselves."""
    call = use.beyond
    words = dotted(use.source, call.child_by_field_name("function")) if call is not None else None
    given = elements(use.above)
    if words and words[-1] in library.CALLING and given[-1].type != "lambda_expression":
        return True
    for one in given:
        declarator = function_declarator(one) if one.type == "lambda_expression" else None
        for parameter in elements(field_of(declarator, "parameters")):
            inner = parameter.child_by_field_name("declarator")
            refers = inner is not None and "reference" in inner.type
            if refers and not is_constant(use.source, parameter):
                return True
    return False


def bare_argument(use: Use) -> Answer:
    """Return what becomes of ``name`` in ``T other(name)``, which reads like a parameter."""
    if not use.is_in("type") or use.place < 4:
        return None
    taker, around = use.stack[use.place - 3], use.stack[use.place - 4]
    if taker.type == "abstract_function_declarator" and around.type in PARAMETERS:
        called = dotted(use.source, around.child_by_field_name("type"))
        return _given(use, called, 0) if called else None
    if not arguments_as_parameters(taker):
        return None
    place = use.place - 4
    while place and use.stack[place].type.endswith("declarator"):
        place -= 1
    return held(use, use.stack[place], use.stack[place + 1])
