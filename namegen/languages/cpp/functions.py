"""What functions of a C++ file give: those that always return one value."""

from __future__ import annotations

from collections.abc import Iterator

from tree_sitter import Node

from namegen.languages.cpp.classes import Class, classes_of
from namegen.languages.cpp.declarations import Binding
from namegen.languages.cpp.expressions import expression
from namegen.languages.cpp.openings import tries
from namegen.languages.cpp.scopes import Scope, function_declarator
from namegen.languages.cpp.types import kept
from namegen.languages.sources import Source, elements, span_of
from namegen.model.facts import Expression, Path, Unknown


def returned(source: Source, binding: Binding, function: Node) -> Expression:
    """Return what a function always gives, if nothing can override it."""
    value = _only_return(function)
    if value is None or _may_be_overridden(source, binding, function):
        called = source.text(binding.name)
        return Unknown(f"it is made at run time by `{called}()`", span_of(binding.name))
    within = Scope("region", function, binding.within)
    if binding.path[: len(binding.within.path)] == binding.within.path:
        classes = binding.path[len(binding.within.path) : -1]
        within = Scope("type", function, binding.within, classes) if classes else within
    kind, declarator = function.child_by_field_name("type"), function_declarator(function)
    outer = function.child_by_field_name("declarator")
    points = outer is not None and outer.type in {"pointer_declarator", "reference_declarator"}
    for one in declarator.children if declarator is not None else ():
        behind = elements(one) if one.type == "trailing_return_type" else []
        kind = behind[0] if behind else kind
    return kept(source, within, kind, expression(source, within, value), brackets=points)


def _only_return(function: Node) -> Node | None:
    """Return the value of a function whose body is one ``return``."""
    body = function.child_by_field_name("body")
    statements = elements(body) if body is not None else []
    if len(statements) != 1 or statements[0].type != "return_statement":
        return None
    return next(iter(elements(statements[0])), None)


def _may_be_overridden(source: Source, binding: Binding, function: Node) -> bool:
    """Whether a derived class may give the function another body, as far as the file tells.

    The class says ``virtual``, and not a body that stands outside of it; a function is
    virtual without the word too, if one of this name is in a base class.
    """
    owner, name = binding.path[:-1], source.text(binding.name)
    classes = [one for one in classes_of(source, owner[-1]) if one.path == owner] if owner else []
    if not classes:
        scope = binding.within.path
        return owner != scope and not _is_space(source, owner)
    words = {word for one in (*_declaring(classes, name), function) for word in _head(source, one)}
    if words & {"static", "final"} or any("final" in _head(source, one.node) for one in classes):
        return False
    return bool(words & {"virtual", "override"}) or _in_base(source, binding, classes, name)


def _declaring(classes: list[Class], name: str) -> Iterator[Node]:
    """Yield the statements of classes that declare a function of a name."""
    for one in classes:
        for statement in one.body:
            declarator = function_declarator(statement)
            named = declarator.child_by_field_name("declarator") if declarator is not None else None
            if named is not None and named.text == name.encode():
                yield statement


def _head(source: Source, node: Node) -> set[str]:
    """Return the words of a function or class before its body."""
    body = node.child_by_field_name("body")
    end = body.start_byte if body is not None else node.end_byte
    text = source.data[node.start_byte : end].decode("utf-8", "replace")
    return {*text.replace(")", " ").replace(";", " ").replace(":", " ").split()}


def _in_base(source: Source, binding: Binding, classes: list[Class], name: str) -> bool:
    """Whether a base class has a function of a name, or may have one because it is not known."""
    pending, seen = [*classes], set[Path]()
    while pending:
        one = pending.pop()
        if one.dependent:
            return True
        for base in one.bases:
            paths = {*tries(source, binding.within, base)}
            known = [each for each in classes_of(source, base[-1]) if each.path in paths]
            if not known or next(_declaring(known, name), None) is not None:
                return True
            pending += [each for each in known if each.path not in seen]
            seen |= {each.path for each in known}
    return False


def _is_space(source: Source, path: Path) -> bool:
    """Whether the last word of a path is a namespace in the file."""
    kinds = {"namespace_definition", "nested_namespace_specifier"}
    return any(stack[-2].type in kinds for stack in source.stacks([path[-1]]) if len(stack) > 1)
