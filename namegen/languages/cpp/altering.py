"""Where C++ changes what a variable holds without assigning to it.

Other names for it are followed, and what macros of the file get. Functions of other files
count as if they only read.
"""

from __future__ import annotations

from functools import lru_cache
from itertools import takewhile

from tree_sitter import Node

from namegen.languages.cpp.forms import answer_of
from namegen.languages.cpp.macros import macro_of
from namegen.languages.cpp.variable_uses import Alteration, Answer, Follow, Up, Use
from namegen.languages.sources import Source, Stack, occurrences, place_in
from namegen.model.places import Span

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
        answer = _argument(use) if use.above.type == "argument_list" else answer_of(use)
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


def _argument(use: Use) -> Answer:
    """Return what becomes of an argument; of a macro of the file, that tells its text."""
    answer, call = answer_of(use), use.beyond
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
