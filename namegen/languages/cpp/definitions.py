"""What a path of a C++ file stands for."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec.structs import replace

from namegen.languages.cpp.aggregates import may_be_listed
from namegen.languages.cpp.binding import Binding
from namegen.languages.cpp.bindings import FILLED, bindings_of
from namegen.languages.cpp.branches import of_branches
from namegen.languages.cpp.chains import ELEMENT, LED_TO, is_element
from namegen.languages.cpp.classes import classes_of
from namegen.languages.cpp.expressions import expression
from namegen.languages.cpp.functions import returned
from namegen.languages.cpp.iterators import goal, is_step
from namegen.languages.cpp.lists import GIVEN
from namegen.languages.cpp.members import has_one_maker, is_same_for_all
from namegen.languages.cpp.object_types import below
from namegen.languages.cpp.objects import (
    ANY,
    LISTED,
    is_plain,
    mark_of,
    marked,
    of_marked,
    without_mark,
)
from namegen.languages.cpp.openings import openings, tries
from namegen.languages.cpp.scopes import Scope
from namegen.languages.cpp.tables import is_written_out, numbered
from namegen.languages.cpp.types import EXACT, keeps_text, kept
from namegen.languages.definitions import CHANGED, DefinitionFinder, reason
from namegen.languages.expressions import RUN_TIME
from namegen.languages.sources import Source, same, span_of
from namegen.model.facts import (
    Definition,
    Each,
    Expression,
    Path,
    Ref,
    Unknown,
    Wrapper,
)
from namegen.model.places import Span

_NO_TEXT = {"class": "it is a type, not text", "namespace": "it is a namespace, not text"}
_NO_OBJECTS = frozenset({"class", "macro", "namespace"})


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
        found = found or (self._opened(plain, mark) if not exact else [])
        found = found or self._inherited(plain, mark)
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
        found = [Definition(path, self._typed(one, typed), span_of(one.name)) for one in bound]
        return of_branches(found, bound)

    def _bound_as(self, path: Path, mark: str) -> list[Definition]:
        """Return what is bound under a path, or, for an element, what is taken out of that."""
        if is_element(path[-1]):
            return self._element(path, mark)
        found = self._found(path)
        return self._of_any(found, mark) if mark else found

    def _reason(self, binding: Binding) -> Unknown:
        """Return why it is not known what a name stands for; a change of it is told by its line."""
        span = span_of(binding.name)
        if binding.why == CHANGED and binding.way != "elsewhere":
            line = self.source.data.count(b"\n", 0, span.start) + 1
            name = self.source.text(binding.name)
            return Unknown(f"`{name}` is changed in line {line}", span, weighs=True)
        return Unknown(FILLED, span, weighs=True) if binding.why == FILLED else reason(binding)

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
            value = self._typed(one, bound[0]) if node is not None else value
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

    def _opened(self, path: Path, mark: str) -> list[Definition]:
        """Return what a path stands for through ``using``, for a file that includes this one."""
        known = openings(self.source) if path[0][:1] != "@" else {}
        found: list[Path] = []
        for place in range(len(path)):
            opened = known.get(path[:place], ())
            if opened and all(one.target[0] != path[place] for one in opened):
                root = self.source.root
                scope = Scope("namespace", root, Scope("file", root), path[:place])
                mine = tries(self.source, scope, path[place:])
                found += [(EXACT, *one) for one in mine if one != path]
        span = Span(0, 0)
        found += [(EXACT, *path)] if found and len(path) > 1 else []  # a base may have it
        tried = tuple(marked(one, mark) for one in found)
        return [Definition(path, Ref(tried, span), span, inherited=True)] if found else []

    def _inherited(self, path: Path, mark: str) -> list[Definition]:
        """Return the definitions of a member that a base class or a variable's type may have."""
        for place in range(len(path) - 1, 0, -1):
            bound = self.bound_at(path[:place])
            found = self._of_bases(bound, path, place, mark)
            found = found or self._of_object(bound, path, path[place:], mark)
            found = found or self._of_made(path, place)
            if found is not None:
                return [found]
        return []

    def _of_bases(
        self, bound: Sequence[Binding], path: Path, place: int, mark: str
    ) -> Definition | None:
        """Return the definition of a path below a class, if one of its bases may have it."""
        for one in bound if any(one.way == "class" for one in bound) else ():
            classes = classes_of(self.source, path[place - 1])
            own = next((each for each in classes if same(each.node, one.value)), None)
            names = [(*base, *path[place:]) for base in own.bases] if own is not None else []
            found = [each for words in names for each in tries(self.source, one.within, words)]
            if found:
                if mark and own is not None and any(map(self._may_list, own.bases)):
                    mark = LISTED
                span, tried = span_of(one.name), tuple(marked(each, mark) for each in found)
                return Definition(path, Ref(tried, span), span, inherited=True)
        return None

    def _of_made(self, path: Path, place: int) -> Definition | None:
        """Return the definition of a path below ``Boat()``, an object that is made there."""
        name = (*path[: place - 1], path[place - 1].removesuffix("()"))
        bound = self.bound_at(name) if name != path[:place] else []
        if not any(one.way == "class" for one in bound):
            return None
        span = span_of(bound[0].name)
        return Definition(path, Ref((marked((*name, *path[place:]), ANY),), span), span)

    def _of_object(
        self, bound: Sequence[Binding], path: Path, after: Path, mark: str
    ) -> Definition | None:
        """Return the definition of a path below a variable, from the class that it is of."""
        made = [one for one in bound if one.way not in {"declared", *_NO_OBJECTS}]
        if not made:
            return None
        one = next((one for one in made if one.declared is not None), made[0])
        words, span = below(self.source, one, after), span_of(one.name)
        if (
            words is None
            or len({below(self.source, each, after) for each in made if each.way == "function"}) > 1
        ):
            return Definition(path, Unknown(RUN_TIME, span), span)
        found = tries(self.source, one.within, words)
        if not mark and not is_plain(self.source, made):
            mark = ANY
        if mark == ANY and self._may_list(words[:-1] or words):
            mark = LISTED
        return Definition(path, Ref(tuple(marked(each, mark) for each in found), span), span)

    def _may_list(self, words: Path) -> bool:
        """Whether a list here may make an object of a class that another file has."""
        if classes_of(self.source, words[-1]) or self.bindings(words[-1]):
            return False
        return may_be_listed(self.source, words[-1])

    def _typed(self, one: Binding, typed: Binding | None) -> Expression:
        """Return what a binding gives to a variable of the type that it is declared with."""
        value = self._value(one)
        if one.way == "each":
            return kept(self.source, one.within, one.declared, value, brackets=True)
        if typed is None or one.way not in {"assigned", "value"}:
            return value
        points = typed.points or typed.array
        return kept(self.source, typed.within, typed.declared, value, brackets=points)

    def _value(self, binding: Binding) -> Expression:
        span = span_of(binding.name)
        if binding.way == "each" and binding.value is not None:
            return Each(expression(self.source, binding.within, binding.value), span)
        if binding.way in _NO_TEXT:
            return Unknown(_NO_TEXT[binding.way], span)
        if binding.way == "function" and binding.value is not None:
            return returned(self.source, binding, binding.value)
        if binding.value is None or binding.way == "enumerator":
            return self._reason(binding)
        value = binding.value
        if value.type in GIVEN and not binding.many:
            return Unknown("it is put together from several values", span)
        return expression(self.source, binding.within, value)


def _as_marked(one: Definition, mark: str) -> Definition:
    return replace(one, value=of_marked(one.value, mark))


def _fills_first(one: Binding, other: Binding) -> bool:
    """Whether a value is given in the block of the declaration, or as an object is made."""
    if one.path[0][:1] == "@":
        return other.within.path == one.path[:-1]
    statement, function = other.name.parent, other.within.outer
    in_list = statement is not None and statement.type == "field_initializer"
    return in_list or (function is not None and (function.name,) == one.path[-2:-1])
