"""Where C++ changes what a variable holds without assigning to it.

A use counts as a change unless it is one of the forms that only read: so a form that nobody
thought of makes a name not known. Functions of other files count as if they only read.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import lru_cache
from itertools import takewhile

from tree_sitter import Node

from namegen.languages.cpp.arguments import argument, bare_argument
from namegen.languages.cpp.library import CASTS, ELEMENT_METHODS, INSIDE_METHODS, READING_METHODS
from namegen.languages.cpp.macros import macro_of
from namegen.languages.cpp.names import dotted, is_constant
from namegen.languages.cpp.taking import captured, constructed, held, member, put, returned
from namegen.languages.cpp.variable_uses import Alteration, Answer, Follow, Up, Use
from namegen.languages.sources import Source, Stack, occurrences, place_in, same
from namegen.model.places import Span

_READING_SIGNS = frozenset(
    {"!=", "&&", "<", "<<", "<=", "<=>", "==", ">", ">=", "and", "not_eq", "or", "||"}
)
_READING = frozenset(
    {"abstract_array_declarator", "alignof_expression", "array_declarator", "attribute"}
    | {"attributed_declarator", "bitfield_clause", "case_statement", "concatenated_string"}
    | {"concept_definition", "condition_clause", "decltype", "destructor_name", "do_statement"}
    | {"enumerator", "expression_statement", "for_statement", "function_declarator"}
    | {"lambda_capture_specifier", "new_declarator", "noexcept", "pointer_declarator"}
    | {"preproc_call", "preproc_def", "preproc_defined", "preproc_elif", "preproc_elifdef"}
    | {"preproc_function_def", "preproc_if", "preproc_ifdef", "preproc_include"}
    | {"preproc_params", "reference_declarator", "requires_clause", "sizeof_expression"}
    | {"static_assert_declaration", "subscript_argument_list", "template_argument_list"}
    | {"throw_statement", "unary_expression", "using_declaration", "variadic_declarator"}
    | {"while_statement"}
)
"""Nodes that only read what stands right below them, or where it is no use of a variable."""

_BODIES = frozenset(
    {"compound_statement", "declaration_list", "field_declaration_list", "translation_unit"}
)
_NAMES = frozenset({"identifier", "type_identifier"})
_DEEPEST = 5
"""Other names of other names, and macros in the text of macros, that are followed."""


def alteration(source: Source, stack: Stack, file: Source | None = None) -> Alteration | None:
    """Return how the use of a variable that the stack leads to may change what it holds.

    None where it only reads. What functions of other files do with a reference that they
    are given is not seen. ``file`` is given where the source is the text of one of its macros.
    """
    if _is_unsound(stack):
        return "altered"
    return _alteration(Use(source, stack, len(stack) - 1, file=file))


def _is_unsound(stack: Stack) -> bool:
    """Whether the innermost statement was not parsed: what it does is not known."""
    within = takewhile(lambda node: node.type not in _BODIES, reversed(stack))
    return any(node.has_error and (node.is_error or _holds_error(node)) for node in within)


def _holds_error(node: Node) -> bool:
    """Whether a part of an expression was passed over, as in ``name.operator=("bow")``."""
    return any(child.is_error for child in node.children)


def _alteration(use: Use) -> Alteration | None:
    while use.place > 0:
        answer = _answer(use)
        if isinstance(answer, Follow):
            return _followed(use, answer)
        if not isinstance(answer, Up):
            return "altered" if answer == "pointed" and use.inside else answer
        inside = (use.inside or answer.inside) and not answer.outside
        use = use._replace(place=use.place - answer.steps, inside=inside)
    return "altered"


def _followed(use: Use, by: Follow) -> Alteration | None:
    """Return what becomes of a variable by other names for it."""
    if use.depth > _DEEPEST:
        return "altered"
    source = use.file or use.source
    for name, region in by.names:
        if _is_changed_as(source, name, region, by.inside, use.depth + 1):
            return "altered"
    return "pointed" if by.pointed else None


@lru_cache(maxsize=256)  # one function is asked about for each of its calls
def _is_changed_as(source: Source, name: Node, region: Node, inside: bool, depth: int) -> bool:
    """Whether a variable is changed by another name for it, in a stretch of the code."""
    start, word = region.start_byte, source.text(name)
    places = occurrences(source.data[start : region.end_byte], word)
    inner = (Span(start + place.start, start + place.end) for place in places)
    for stack in source.above(one for one in inner if one.start != name.start_byte):
        use = Use(source, stack, len(stack) - 1, inside, depth)
        if stack[-1].type in _NAMES and _alteration(use) is not None:
            return True
    return False


def _answer(use: Use) -> Answer:
    kind = use.above.type
    if kind in _READING:
        return None
    rule = _RULES.get(kind)
    return rule(use) if rule is not None else "altered"


def _argument(use: Use) -> Answer:
    """Return what becomes of an argument; of a macro of the file, that tells its text."""
    answer, call = argument(use), use.beyond
    if answer is not None or call is None or call.type != "call_expression":
        return answer
    called = call.child_by_field_name("function")
    file = use.file or use.source
    macro = macro_of(file, use.text(called))
    place = place_in(use.above, use.node)
    if macro is None or not 0 <= place < len(macro.parameters):
        return None
    if use.depth > _DEEPEST:
        return "altered"
    for stack in macro.body.stacks([macro.parameters[place]]):
        one = Use(macro.body, stack, len(stack) - 1, depth=use.depth + 1, file=file)
        if _alteration(one) is not None:
            return "altered"
    return None


def _same_value(use: Use) -> Answer:
    return Up()


def _chosen(use: Use) -> Answer:
    return None if use.is_in("condition") else Up()


def _last_of_several(use: Use) -> Answer:
    return Up() if use.is_in("right") else None


def _element(use: Use) -> Answer:
    return Up(outside=True) if use.is_in("argument") else None


def _stepped(use: Use) -> Answer:
    return None if use.inside else "altered"


def _pointed(use: Use) -> Answer:
    """Return what ``*name`` and ``&name`` do; the latter may fill a pointer."""
    if use.sign == "*":
        return Up(outside=True)
    filled = use.beyond
    if filled is None or filled.type != "init_declarator":
        return "altered"
    if use.node.type == "qualified_identifier":  # perhaps a pointer to a member of any object
        return "altered"
    return put(use._replace(place=use.place - 1, inside=True))


def _calculated(use: Use) -> Answer:
    """Return what ``+`` (of a pointer too), ``==``, ``>>`` and the like do."""
    if use.sign in {"+", "-"}:
        return Up()
    if use.sign == ">>":
        return "altered" if use.is_in("right") else None
    return None if use.sign in _READING_SIGNS else "altered"


def _assigned(use: Use) -> Answer:
    if use.is_in("left"):
        return None if use.inside else "altered"  # an iterator itself may go on
    return "pointed" if use.sign == "=" else None


def _accessed(use: Use) -> Answer:
    """Return what ``name.size()`` does; in ``boat.name`` the object says nothing."""
    if use.is_in("field"):
        return Up()
    call = use.beyond
    if call is None or call.type != "call_expression":
        return None
    if not same(call.child_by_field_name("function"), use.above):
        return None
    method = use.text(use.above.child_by_field_name("field"))
    if method in READING_METHODS:
        return Up(2, inside=True) if method == "c_str" and _is_cast(use, call) else None
    if method in ELEMENT_METHODS | INSIDE_METHODS:
        return Up(2, inside=method in INSIDE_METHODS)
    return "called"


def _is_cast(use: Use, call: Node) -> bool:
    """Whether what a method gives is taken for something that may be changed."""
    around = call.parent
    while around is not None and around.type == "parenthesized_expression":
        around = around.parent
    if around is not None and around.type == "argument_list" and around.parent is not None:
        words = dotted(use.source, around.parent.child_by_field_name("function"))
        return words is not None and words[-1] in CASTS - {"static_cast"}
    if around is None or around.type != "cast_expression":
        return False
    return not is_constant(use.source, around.child_by_field_name("type"))


def _qualified(use: Use) -> Answer:
    return Up() if use.is_in("name") else None


def _function(use: Use) -> Answer:
    return None  # what is called or named here is a function


def _looped(use: Use) -> Answer:
    """Return what a loop over a list does with it: a reference to each element may change them."""
    if not use.is_in("right"):
        return None
    answer = held(use, use.above, use.above.child_by_field_name("declarator"))
    return answer if answer != "pointed" or use.inside else None


_RULES: Mapping[str, Callable[[Use], Answer]] = {
    "argument_list": _argument,
    "assignment_expression": _assigned,
    "binary_expression": _calculated,
    "call_expression": _function,
    "cast_expression": _same_value,
    "comma_expression": _last_of_several,
    "compound_literal_expression": constructed,
    "conditional_expression": _chosen,
    "declaration": put,
    "dependent_name": _same_value,
    "field_declaration": put,
    "field_expression": _accessed,
    "field_initializer": member,
    "for_range_loop": _looped,
    "init_declarator": put,
    "initializer_list": _same_value,
    "initializer_pair": _same_value,
    "new_expression": constructed,
    "lambda_capture_initializer": captured,
    "optional_parameter_declaration": put,
    "parameter_pack_expansion": _same_value,
    "parameter_declaration": bare_argument,
    "parenthesized_expression": _same_value,
    "pointer_expression": _pointed,
    "qualified_identifier": _qualified,
    "return_statement": returned,
    "subscript_expression": _element,
    "template_function": _function,
    "template_method": _function,
    "update_expression": _stepped,
}
