"""What a path of a C++ file stands for."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec.structs import replace

from namegen.languages.cpp.binding import Binding
from namegen.languages.cpp.bindings import bindings_of
from namegen.languages.cpp.branches import of_branches
from namegen.languages.cpp.chains import ELEMENT, LED_TO, is_element
from namegen.languages.cpp.iterators import goal, is_step
from namegen.languages.cpp.members import has_one_maker, is_same_for_all
from namegen.languages.cpp.objects import LISTED, mark_of, of_marked, without_mark
from namegen.languages.cpp.openings import tries
from namegen.languages.cpp.other_paths import inherited, opened
from namegen.languages.cpp.tables import is_written_out, numbered
from namegen.languages.cpp.types import EXACT, keeps_text
from namegen.languages.cpp.values import typed_value
from namegen.languages.definitions import DefinitionFinder
from namegen.languages.expressions import RUN_TIME
from namegen.languages.sources import Source, span_of
from namegen.model.facts import Definition, Each, Expression, Path, Ref, Unknown, Wrapper
from namegen.model.places import Span


class Definitions(DefinitionFinder[Binding]):
    """Finds the definitions of a file on demand, and remembers what was asked."""

    def __init__(self, source: Source) -> None:
        super().__init__(source)
        self._values: dict[Path, list[Definition]] = {}
        self._paths: dict[str, dict[Path, list[Binding]]] = {}

    def _bindings_of(self, word: str) -> list[Binding]:
        return bindings_of(self.source, word)

    def find(self, path: Path) -> list[Definition]:
        """Return every binding of a path."""
        if not path:
            return []
        exact = path[0] == EXACT
        plain, mark = without_mark(path[1:] if exact else path), mark_of(path)
        found = self._bound_as(plain, mark)
        found = found or (opened(self.source, plain, mark) if not exact else [])
        found = found or inherited(self, plain, mark)
        span = Span(0, 0)
        return found or ([Definition(path, Wrapper(span), span)] if keeps_text(path) else [])

    def _found(self, path: Path) -> list[Definition]:
        """Return what is bound under just this path; nothing where it is only declared."""
        if path not in self._values:
            self._values[path] = self._valued(path)
        return self._values[path]

    def _valued(self, path: Path) -> list[Definition]:
        every = self._bound(path)
        bound = [one for one in every if one.way != "declared"]
        bound = [one for one in bound if not self._is_filled_first(one, bound)] or bound
        typed = next((one for one in every if one.declared is not None), None)
        found = [
            Definition(path, typed_value(self.source, one, typed), span_of(one.name))
            for one in bound
        ]
        return of_branches(found, bound)

    def _bound_as(self, path: Path, mark: str) -> list[Definition]:
        """Return what is bound under a path, or, for an element, what is taken out of that."""
        if is_element(path[-1]):
            return self._element(path, mark)
        found = self._found(path)
        return self._of_any(found, mark) if mark else found

    def _is_filled_first(self, one: Binding, bound: Sequence[Binding]) -> bool:
        """Whether a variable without a value has one before anybody can ask for it.

        A text of the standard library is empty until then: it counts where it may be asked for.
        """
        if one.way != "empty":
            return False
        others = [other for other in bound if other is not one]
        if one.points or one.array or not others:
            return bool(others)
        if not one.shared and not has_one_maker(self.source, one):
            return False
        return all(_fills_first(one, other) for other in others)

    def _of_any(self, found: list[Definition], mark: str) -> list[Definition]:
        """Return what is bound where that is the same for each object of a class."""
        bound = self.bound_at(found[0].path) if found else []
        if not bound or all(one.shared and one.way != "function" for one in bound):
            is_local = bool(bound) and bound[0].path[0][:1] == "@"
            return [_as_marked(one, mark) for one in found] if is_local else found
        if all(one.way == "function" for one in bound):
            return [_as_marked(one, mark) for one in found]
        if len(found) > 1:  # not known, for a reason that says more
            return found
        if is_same_for_all(self.source, bound, listed=mark == LISTED):
            return [_as_marked(found[0], mark)]
        path, span = found[0].path, span_of(bound[0].name)
        return [Definition(path, Unknown("each object has one of its own", span), span)]

    def _element(self, path: Path, mark: str) -> list[Definition]:
        """Return what an element of a list is: the one of that number, or any of them."""
        if path[-1] == LED_TO:
            return self._led_to(path)
        place = next(at for at in range(len(path), 0, -1) if not is_element(path[at - 1]))
        found = self._bound_as(path[:place], mark)
        if len(found) != 1 or isinstance(found[0].value, Unknown):
            return [replace(one, path=path) for one in found]
        span = found[0].span
        value: Expression = found[0].value
        bound = [one for one in self._bound(path[:place]) if one.many and one.value is not None]
        indices = path[place:]
        if not bound:
            value = Unknown("it is taken out of a table", span)
        elif len(bound) == 1 and ELEMENT not in indices and is_written_out(bound[0]):
            node = numbered(self.source, bound[0], indices)
            one = replace(bound[0], value=node, many=False)
            value = Unknown("it is taken out of a table", span)
            value = typed_value(self.source, one, bound[0]) if node is not None else value
            value = of_marked(value, mark) if mark and not one.shared else value
        else:
            for _ in indices:
                value = Each(value, span)
        return [Definition(path, value, span)]

    def _led_to(self, path: Path) -> list[Definition]:
        """Return what an iterator or a pointer leads to, which is declared with what it is of."""
        bound = self._bound(path[:-1])
        if not bound:
            return []
        first, span = bound[0], span_of(bound[0].name)
        of = goal(self.source, first) if all(map(is_step, bound[1:])) else None
        if of is None or (not of.several and len(bound) > 1):
            return [Definition(path, Unknown(RUN_TIME, span), span)]
        value: Expression = Ref(tries(self.source, first.within, of.words), span)
        return [Definition(path, Each(value, span) if of.several else value, span)]

    def bound_at(self, path: Path) -> list[Binding]:
        """Return the bindings of a path as it is written out: ("@120", "name")."""
        return [one for one in self._bound(path) if one.way != "elsewhere"]

    def _bound(self, path: Path) -> list[Binding]:
        """Return the bindings of a path, those of what another file declares too."""
        word = path[-1].removesuffix("()")
        if word not in self._paths:
            self._paths[word] = by_path = dict[Path, list[Binding]]()
            for one in self.bindings(word):
                by_path.setdefault(one.path, []).append(one)
        return self._paths[word].get(path, [])


def _as_marked(one: Definition, mark: str) -> Definition:
    return replace(one, value=of_marked(one.value, mark))


def _fills_first(one: Binding, other: Binding) -> bool:
    """Whether a value is given in the block of the declaration, or as an object is made."""
    if one.path[0][:1] == "@":
        return other.within.path == one.path[:-1]
    statement, function = other.name.parent, other.within.outer
    in_list = statement is not None and statement.type == "field_initializer"
    return in_list or (function is not None and (function.name,) == one.path[-2:-1])
