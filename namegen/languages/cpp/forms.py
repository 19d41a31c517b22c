"""What each form of C++ code does with a variable that stands in it.

A use counts as a change unless it is one of the forms that only read: so a form that nobody
thought of makes a name not known.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping

from tree_sitter import Node

from namegen.languages.cpp.arguments import argument, bare_argument
from namegen.languages.cpp.library import CASTS, ELEMENT_METHODS, INSIDE_METHODS, READING_METHODS
from namegen.languages.cpp.names import dotted, is_constant
from namegen.languages.cpp.taking import captured, constructed, held, member, put, returned
from namegen.languages.cpp.variable_uses import Answer, Up, Use
from namegen.languages.sources import same

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


def answer_of(use: Use) -> Answer:
    """Return what becomes of the variable by what it stands in."""
    kind = use.above.type
    if kind in _READING:
        return None
    rule = _RULES.get(kind)
    return rule(use) if rule is not None else "altered"


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
    "argument_list": argument,
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
