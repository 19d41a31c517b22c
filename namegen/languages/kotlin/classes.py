"""Of which class the objects are that Kotlin code names, as far as it is written."""

from __future__ import annotations

from collections.abc import Callable

from tree_sitter import Node

from namegen.languages.kotlin.expressions import dotted, opened
from namegen.languages.kotlin.scopes import tries
from namegen.languages.kotlin.trees import after_sign, called_of, child_of, last_name
from namegen.languages.kotlin.types import type_words
from namegen.languages.owned_names import Binding
from namegen.languages.scopes import Scope
from namegen.languages.sources import Source, named_child
from namegen.model.facts import Path

UNTOLD: Path = ()
"""The name of a class that is written nowhere."""
_MOST_NAMES = 5
"""Names of names that are followed to the class of an object."""
_LITERALS = {"string_literal": "String", "multiline_string_literal": "String"}
_LITERALS |= {"number_literal": "Int", "float_literal": "Double", "character_literal": "Char"}


class Classes:
    """Tells the classes of objects in one file.

    ``bindings`` and ``bound_at`` give the bindings of a word, and of a path, in it.
    """

    def __init__(
        self,
        source: Source,
        bindings: Callable[[str], list[Binding]],
        bound_at: Callable[[Path], list[Binding]],
    ) -> None:
        self.source = source
        self._bindings = bindings
        self._bound_at = bound_at

    def members(self, scope: Scope, words: Path, rest: Path) -> tuple[Path, ...] | None:
        """Return the paths of a member of a class, or of the class of what a name holds.

        A name that holds what another name does is followed a few times. None where its class
        is not told.
        """
        for _ in range(_MOST_NAMES):
            words = words[1:] if words[0] == "this" and len(words) > 1 else words
            bound = self._bound(scope, words)
            head = [] if bound or len(words) == 1 else self._bound(scope, words[:1])
            if not (bound or head) or (bound or head)[0].way in {"constant", "type"}:
                return tries(scope, (*words, *rest))
            first = (bound or head)[0]
            known = self.words_of(first)
            if known is None:
                return None
            words, scope = (known if bound else (*known, *words[1:])), first.within
        return None

    def _bound(self, scope: Scope, words: Path) -> list[Binding]:
        """Return what a dotted name means in a scope: with brackets, a function."""
        is_called = words[-1].endswith("()")
        plain = (*words[:-1], words[-1].removesuffix("()"))
        found = next(filter(None, map(self._bound_at, tries(scope, plain))), [])
        return [one for one in found if (one.way == "method") == is_called]

    def words_of(self, binding: Binding) -> Path | None:
        """Return the name of the class of what a name holds or gives, or of another such name."""
        words = type_words(self.source, binding.declared)
        if words is not None or binding.value is None or binding.way == "each":
            return words
        if binding.way == "alias":
            return type_words(self.source, binding.value)
        if binding.way == "method":
            return self._given_by(binding.value)
        return self.words_of_value(binding.value) or None

    def _given_by(self, function: Node) -> Path | None:
        """Return the name of the class of what a function gives."""
        declared = after_sign(function, ":")
        body = child_of(function, "function_body")
        value = after_sign(body, "=") if body is not None and declared is None else None
        if value is not None:
            return self.words_of_value(value) or None
        return type_words(self.source, declared)

    def words_of_value(self, value: Node) -> Path:
        """Return the class of a value, or the name or call that gives it, with brackets.

        What gets its value by functions that this file does not have counts as of their class.
        """
        if value.type == "as_expression":
            return type_words(self.source, named_child(value, 1)) or UNTOLD
        value = opened(value)
        if value.type in _LITERALS:
            return (_LITERALS[value.type],)
        if value.type != "call_expression":
            return dotted(self.source, value) or UNTOLD
        callee = called_of(value)
        words = dotted(self.source, callee)
        if words is None:
            name = last_name(callee)
            known = name is None or bool(self._bindings(self.source.text(name)))
            return UNTOLD if known or name is None else (f"{self.source.text(name)}()",)
        return words if words[-1][:1].isupper() else (*words[:-1], f"{words[-1]}()")
