"""Functions that Kotlin code hands on without calling them: ``boat::motor``."""

from __future__ import annotations

from tree_sitter import Node

from namegen.languages.kotlin.definitions import Definitions
from namegen.languages.kotlin.trees import last_name
from namegen.languages.owned_names import NO_VARIABLES
from namegen.languages.sources import Source, Stack, named_child, same

_OF_PROPERTIES = frozenset({"isInitialized"})
"""What Kotlin's library tells of a property alone."""


def is_reference(source: Source, definitions: Definitions, stack: Stack) -> bool:
    """Whether the last of the stack is the function in ``boat::motor`` or ``::motor``.

    Properties are written alike: a word that this file gives to these alone is no function where
    nothing, or ``this``, stands before it.
    """
    leaf, whole = stack[-1], stack[-2]
    signs = [child.type for child in whole.children]
    if "::" not in signs or not same(whole.children[-1], leaf):
        return False
    above = stack[-3]
    asked = last_name(above) if above.type == "navigation_expression" else None
    if asked is not None and source.text(asked) in _OF_PROPERTIES:
        return False
    if signs[0] != "::" and signs[0] != "this_expression":
        return True
    bound = definitions.bindings(source.text(leaf))
    return not bound or any(one.way in NO_VARIABLES for one in bound)


def receiver_of(whole: Node) -> Node | None:
    """Return what stands before the ``::`` of a reference."""
    return named_child(whole, 0) if whole.children[0].type != "::" else None
