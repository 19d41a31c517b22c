"""What a dotted path of a Python file stands for."""

from __future__ import annotations

from collections.abc import Sequence

from tree_sitter import Node

from namegen.languages.definitions import CHANGED, DefinitionFinder, reason
from namegen.languages.expressions import RUN_TIME
from namegen.languages.python.binding import Binding
from namegen.languages.python.bindings import bindings_of
from namegen.languages.python.chains import EACH, KEYS, VALUES, chain
from namegen.languages.python.changes import changed_outside
from namegen.languages.python.expressions import TAKEN, dotted, expression, is_wrapper
from namegen.languages.python.following import Following
from namegen.languages.python.functions import CALLED, is_property, returned
from namegen.languages.python.imports import origin
from namegen.languages.python.instances import GIVEN, Given, Maker
from namegen.languages.python.loops import run_over
from namegen.languages.python.scopes import Scope, scope_at, tries
from namegen.languages.python.tables import TABLES, taken
from namegen.languages.sources import Source, elements, span_of
from namegen.model.facts import MADE, Definition, Each, Expression, Path, Ref, Unknown, Wrapper
from namegen.model.places import Span


class Definitions(DefinitionFinder[Binding]):
    """Finds the definitions of a file on demand, and remembers what was asked."""

    def __init__(self, source: Source) -> None:
        super().__init__(source)
        self._following = Following(source)
        self._makers: dict[int, Maker] = {}
        self._outside: dict[str, Node | None] = {}

    def _bindings_of(self, word: str) -> list[Binding]:
        return bindings_of(self.source, word, self._following)

    def find(self, path: Path) -> list[Definition]:
        """Return every binding of a path."""
        where = -1
        if path and path[0].startswith("@"):
            where, path = int(path[0][1:]), path[1:]
        if not path:
            return []
        bound = [
            binding
            for binding in self.bindings(path[0].removesuffix(CALLED))
            if not binding.attribute and _start(binding.scope) == where
        ]
        found = self._valued(bound or self._in_loop(where, path[0]), path)
        if not found and path == ("str",) and where < 0 and not bound:
            return [Definition(path, Wrapper(Span(0, 0)), Span(0, 0))]
        return found

    def _in_loop(self, start: int, word: str) -> list[Binding]:
        """Return the binding by the ``for`` at a byte, if nothing else gives a value in it."""
        own = [
            one
            for one in self.bindings(word)
            if one.loop is not None and one.loop.start_byte == start and not one.attribute
        ]
        if len(own) != 1 or (loop := own[0].loop) is None:
            return []
        scope, within = own[0].scope.node, own[0].within.node
        others = (one for one in self.bindings(word) if one.scope.node == scope)
        is_alone = all(
            one.within.node == within and not loop.start_byte <= one.name.start_byte < loop.end_byte
            for one in others
            if one.name != own[0].name
        )
        return own if is_alone else []

    def bound_at(self, path: Path) -> list[Binding]:
        """Return the bindings of a word in a function, a class or the module."""
        return [one for one in self.bindings(path[-1]) if one.scope.path == path[:-1]]

    def _valued(self, bound: list[Binding], path: Path) -> list[Definition]:
        """Return definitions of ``path`` from the bindings of its first word."""
        assigned = [binding for binding in bound if binding.way not in {"import", "declared"}]
        if not assigned:
            why, where = self._doubt(path) if bound else ("", None)
            return [Definition(path, Unknown(why, where), where)] if where is not None else []
        return [one for binding in bound for one in self._defined(binding, path)]

    def _doubt(self, path: Path) -> tuple[str, Span | None]:
        """Return why what is imported is not known for what the other file says of it."""
        changed = next(filter(None, map(self._changed_outside, path[1:])), None)
        if changed is not None:
            return CHANGED, span_of(changed)
        imports = [
            one for one in self.bindings(path[0].removesuffix(CALLED)) if one.way == "import"
        ]
        several = imports if len(imports) > 1 else []
        sources = {origin(self.source, one.name) for one in several}
        # Of two imports in a `try` the second stands in for the first where that fails.
        differ = len(sources) > 1 and None not in sources
        return "it is imported from several places", span_of(imports[-1].name) if differ else None

    def _changed_outside(self, word: str) -> Node | None:
        """Return where this file changes an attribute of what it imports."""
        if word not in self._outside and word.isidentifier():
            self._outside[word] = changed_outside(self.source, word)
        return self._outside.get(word)

    def _defined(self, binding: Binding, path: Path) -> list[Definition]:
        """Return what a binding of the first word of ``path`` gives for all of it."""
        called, rest = path[0].endswith(CALLED), path[1:]
        if binding.way == "declared":
            return []
        if binding.way == "class" and rest and not called:
            return self._members(self._class_scope(binding), rest, path)
        if binding.way == "function":
            value = self._given_back(binding, rest, called)
        elif called and binding.value is not None:
            value = Unknown(f"{RUN_TIME} by `{path[0]}`", span_of(binding.name))
        else:
            value = self._value(binding, rest)
        return [Definition(path, value, span_of(binding.name))]

    def _given_back(self, binding: Binding, rest: Path, called: bool) -> Expression:
        """Return what a function gives, or a property, of which ``rest`` is taken."""
        assert binding.value is not None
        span = span_of(binding.name)
        function = scope_at(self.source, binding.scope, binding.value, binding.value.parent)
        if called == is_property(function):
            return Unknown(binding.why, span)
        value = returned(function)
        if value is None:
            return Unknown(f"{RUN_TIME} by `{function.name}()`", span)
        return self._at(function, value, rest)

    def _class_scope(self, binding: Binding) -> Scope:
        assert binding.value is not None
        return scope_at(self.source, binding.scope, binding.value)

    def _members(self, owner: Scope, words: Path, path: Path) -> list[Definition]:
        """Return the definitions of a class's member, or where it is inherited from."""
        made = words[:1] if words[0] == MADE else ()
        words = words[len(made) :]
        if made and (
            not words or self._maker(owner).parameter_of(words[0], self.bindings) != "own"
        ):
            return [Definition(path, Unknown(GIVEN, span_of(owner.node)), span_of(owner.node))]
        bases = self._bases(owner)
        enum = any(base[-1].endswith(("Enum", "Flag")) for base in bases)
        if words[0].startswith("["):
            if not enum:
                return [Definition(path, Unknown(TAKEN, span_of(owner.node)), span_of(owner.node))]
            words = (words[0][2:-2], *words[1:])  # a member by its name
        bound = [
            binding
            for binding in self.bindings(words[0].removesuffix(CALLED))
            if binding.scope.node.id == owner.node.id
        ]
        if enum and bound:
            return self._enum_member(bound, words, path, bases)
        if bound:
            found = self._valued(bound, words)
            return [Definition(path, one.value, one.span) for one in found]
        inherited = [
            attempt
            for base in bases
            for attempt in tries(self.source, owner.outer or owner, (*base, *made, *words))
        ]
        if not inherited:
            return []
        span = span_of(owner.node)
        return [Definition(path, Ref(tuple(inherited), span), span, inherited=True)]

    def _enum_member(
        self, bound: list[Binding], words: Path, path: Path, bases: list[Path]
    ) -> list[Definition]:
        """Return the text of ``Names.BOW.value``, or of the member itself in a text enum."""
        textual = any(base[-1] in {"str", "StrEnum"} for base in bases)
        if words[1:] == ("value",) or (not words[1:] and textual):
            found = self._valued(bound, words[:1])
            return [Definition(path, one.value, one.span) for one in found]
        span = span_of(bound[0].name)
        why = "an enum member is not text itself; its `.value` is"
        return [Definition(path, Unknown(why, span), span)]

    def _bases(self, owner: Scope) -> list[Path]:
        superclasses = owner.node.child_by_field_name("superclasses")
        if superclasses is None:
            return []
        bases = (dotted(self.source, base) for base in elements(superclasses))
        return [base for base in bases if base is not None]

    def _value(self, binding: Binding, rest: Path) -> Expression:
        """Return what a binding gives, or what ``rest`` below that stands for."""
        source, value = self.source, binding.value
        span = span_of(binding.name)
        if binding.way == "class" and value is not None:
            bases = self._bases(scope_at(source, binding.scope, value))
            wraps = ("str",) in bases and "__new__" not in source.text(value)
            return Wrapper(span) if wraps else Unknown(binding.why, span)
        if value is None:
            return reason(binding)
        if binding.way == "each":
            return self._each(binding, value, rest)
        return self._at(binding.within, value, (*binding.taking, *rest))

    def _each(self, binding: Binding, value: Node, rest: Path) -> Expression:
        """Return what a loop takes for a name, one element after the other."""
        span = span_of(binding.name)
        found = run_over(
            self.source, value, (*binding.taking, *rest), lambda word: bool(self.bindings(word))
        )
        if found is None:
            return Unknown(RUN_TIME, span)
        listed, words = found
        if words[-1] == EACH:
            return Each(self._at(binding.within, listed, words[:-1]), span)
        return self._at(binding.within, listed, words)

    def _at(self, scope: Scope, value: Node, rest: Path) -> Expression:
        """Return what a value gives, or what ``rest`` takes out of it: of a table, an object."""
        if not rest:
            wraps = is_wrapper(self.source, value)
            return Wrapper(span_of(value)) if wraps else expression(self.source, scope, value)
        is_method = rest[0].endswith(CALLED) and rest[0] not in {KEYS, VALUES, MADE}
        if value.type in TABLES and not is_method:
            return taken(self.source, scope, value, rest, self._at)
        if value.type == "call":
            return self._of_object(scope, value, rest)
        words = chain(self.source, value)
        if words is None and is_method:
            return Unknown(f"{RUN_TIME} by `{rest[0]}`", span_of(value))
        if words is None:
            return Unknown(RUN_TIME, span_of(value))
        return Ref(tries(self.source, scope, (*words, *rest)), span_of(value))

    def _of_object(self, scope: Scope, call: Node, rest: Path) -> Expression:
        """Return ``rest`` of what a call makes: of an object, if it calls a class."""
        function, span = call.child_by_field_name("function"), span_of(call)
        words = chain(self.source, call) or chain(self.source, function)
        if words is None:
            return Unknown(RUN_TIME, span)
        if words[-1] in {KEYS, VALUES}:
            return Ref(tries(self.source, scope, (*words, *rest)), span)
        if rest[0].startswith("["):
            return Unknown(f"{RUN_TIME} by `{words[-1]}()`", span)
        listed = call.child_by_field_name("arguments")
        made = (MADE,) if listed is not None and elements(listed) else ()
        owner = self._class_meant(tries(self.source, scope, words))
        if owner is not None and rest[0] != MADE:
            maker = self._maker(owner)
            given = maker.given(call, scope, rest[0], self.bindings)
            if isinstance(given, Given):
                return self._at(given.within, given.value, rest[1:])
            if given == "unsure":
                return Unknown(GIVEN, span)
            made = (MADE,) if maker.has_init else made
        return Ref(tries(self.source, scope, (*words, *made, *rest)), span)

    def _class_meant(self, attempts: Sequence[Path]) -> Scope | None:
        """Return the class of this file that a name means, if nothing else bears the name."""
        bound = next(filter(None, map(self.bound_at, attempts)), [])
        is_class = len(bound) == 1 and bound[0].way == "class"
        return self._class_scope(bound[0]) if is_class else None

    def _maker(self, owner: Scope) -> Maker:
        if owner.node.id not in self._makers:
            self._makers[owner.node.id] = Maker(self.source, owner)
        return self._makers[owner.node.id]


def _start(scope: Scope) -> int:
    """Return what ``@`` words of this scope hold: its byte, or -1 for the module."""
    return -1 if scope.sort == "module" else scope.node.start_byte
