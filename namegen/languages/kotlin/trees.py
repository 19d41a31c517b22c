"""Parts of nodes that the grammar of Kotlin gives no names to."""

from __future__ import annotations

from tree_sitter import Node

from namegen.languages.sources import Source, elements, named_child

BODIES = frozenset({"class_body", "enum_class_body"})


def child_of(node: Node | None, *types: str) -> Node | None:
    """Return the first child of one of the types."""
    children = node.named_children if node is not None else ()
    return next((child for child in children if child.type in types), None)


def body_of(declaration: Node) -> Node | None:
    """Return what a class or an object has between its braces."""
    return child_of(declaration, *BODIES)


def after_sign(node: Node, sign: str) -> Node | None:
    """Return the node that follows a sign among the children: the value after ``=``."""
    children = node.children
    for place, child in enumerate(children):
        if child.type == sign:
            return next((one for one in children[place + 1 :] if one.is_named), None)
    return None


def called_of(call: Node) -> Node | None:
    """Return what a call calls: ``a.b`` of ``a.b(1)``."""
    return named_child(call, 0)


def arguments_of(call: Node) -> Node | None:
    """Return the brackets of a call with what they hold; a lambda after them is no part."""
    return child_of(call, "value_arguments")


def last_name(node: Node | None) -> Node | None:
    """Return the identifier that ``a.b`` or ``b`` ends in."""
    while node is not None and node.type == "navigation_expression":
        node = named_child(node, node.named_child_count - 1)
    return node if node is not None and node.type == "identifier" else None


def key_of(argument: Node) -> Node | None:
    """Return the name in ``name = value``, an argument of a call."""
    named = any(child.type == "=" for child in argument.children)
    return named_child(argument, 0) if named and argument.type == "value_argument" else None


def argument_value(argument: Node) -> Node | None:
    """Return the value of an argument, with or without a name."""
    return after_sign(argument, "=") or next(iter(elements(argument)), None)


def statements(block: Node) -> list[Node]:
    """Return what a block or a lambda does, one after another."""
    return [one for one in elements(block) if one.type != "lambda_parameters"]


def lambda_of(call: Node) -> Node | None:
    """Return the lambda that stands behind a call."""
    return child_of(child_of(call, "annotated_lambda"), "lambda_literal")


def modifiers_of(source: Source, declaration: Node) -> set[str]:
    """Return the words that stand before a declaration: ``private``, ``open``."""
    found = child_of(declaration, "modifiers")
    return {source.text(one) for one in found.named_children} if found is not None else set()


def default_of(listed: Node, parameter: Node) -> Node | None:
    """Return the default of a function's parameter, which stands behind it in the list."""
    children = listed.children
    place = next((at for at, child in enumerate(children) if child.id == parameter.id), 0)
    behind = children[place + 1 : place + 3]
    return behind[1] if len(behind) == 2 and behind[0].type == "=" else None


def word_of(source: Source, node: Node | None) -> str:
    """Return the word that ``a.b`` or ``b`` ends in; empty for anything else."""
    return source.text(last_name(node))


def infix_word(source: Source, call: Node) -> str:
    """Return the name of the function in ``n put "bow"``."""
    parts = elements(call)
    return source.text(parts[1]) if len(parts) == 3 else ""
