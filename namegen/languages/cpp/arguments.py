"""What becomes of a variable of C++ that is an argument: of a function, a macro, a constructor."""

from __future__ import annotations

from tree_sitter import Node

from namegen.languages.cpp import library
from namegen.languages.cpp.declarators import PARAMETERS, arguments_as_parameters
from namegen.languages.cpp.names import dotted
from namegen.languages.cpp.openings import std_words
from namegen.languages.cpp.taking import held
from namegen.languages.cpp.variable_uses import Answer, Up, Use
from namegen.languages.sources import elements, same
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
