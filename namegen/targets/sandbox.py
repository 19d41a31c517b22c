"""The sandbox that templates run in. Imports Jinja2, so it is itself imported only to render."""

from __future__ import annotations

from collections.abc import Mapping, Sized
from typing import Any

from jinja2 import StrictUndefined, Undefined, UndefinedError, nodes
from jinja2.compiler import CodeGenerator, Frame
from jinja2.runtime import Context, Macro
from jinja2.sandbox import ImmutableSandboxedEnvironment
from jinja2.utils import missing

from namegen.targets import template_model
from namegen.targets.unescaped import NotText, Unescaped, UnescapedText
from namegen.targets.wording import kind_of

MOST_TURNS = 1_000_000
"""Turns that the loops of one file may take: a thousand times what a large robot needs."""
MOST_CHARACTERS = 10_000_000
"""The longest text that a template may make."""
LARGEST_POWER = 64
_COUNTED = "counted_by_namegen"

_FIELDS = {data: frozenset(template_model.readable(data)) for data in template_model.CLASSES}
_CLASSES = {  # which classes have a field of that name
    field: frozenset(data for data, its in _FIELDS.items() if field in its)
    for field in frozenset().union(*_FIELDS.values())
}


class TooMuch(Exception):
    """A template would not come to an end, or not before the machine is full."""


class NotThere(UndefinedError):
    """A template asks for a name, field or element that is not there.

    ``owner`` is what was asked, of no account where the name stands ``alone``;
    ``hint`` is what Jinja2 has to say instead, where it knows more.
    """

    def __init__(self, message: str, owner: object, asked: object, hint: str | None) -> None:
        super().__init__(message)
        self.alone = owner is missing
        self.owner = owner
        self.asked = asked
        self.hint = hint


class Nothing(StrictUndefined):
    """An undefined value that fails at every use, and remembers what was asked for."""

    __slots__ = ()

    def __init__(
        self,
        hint: str | None = None,
        obj: Any = missing,  # noqa: ANN401 - as Jinja2 has it
        name: str | None = None,
        exc: type[Exception] = UndefinedError,
    ) -> None:
        def not_there(message: str | None = None) -> Exception:
            return NotThere(message or "", obj, name, hint)

        super().__init__(hint, obj, name, not_there if exc is UndefinedError else exc)  # type: ignore[arg-type]


class _Compiler(CodeGenerator):
    """Compiles loops so that their turns are counted, and a short way to the template data."""

    def visit_For(self, node: nodes.For, frame: Frame) -> None:
        setattr(node.iter, _COUNTED, True)
        super().visit_For(node, frame)

    def visit_Getattr(self, node: nodes.Getattr, frame: Frame) -> None:
        """Take a field of the template data without a call; ask the sandbox for all else."""
        if node.attr not in _CLASSES:
            super().visit_Getattr(node, frame)
            return
        self.write(f"(owner.{node.attr} if type(owner := ")
        self.visit(node.node, frame)
        self.write(f") in environment.owners[{node.attr!r}]")
        self.write(f" else environment.getattr(owner, {node.attr!r}))")

    def visit(self, node: nodes.Node, *args: Any, **named: Any) -> Any:  # noqa: ANN401
        """Write the code of a node, and around what a loop goes through the call that counts."""
        counted = getattr(node, _COUNTED, False)
        if counted:
            self.write("environment.counted(")
        super().visit(node, *args, **named)
        if counted:
            self.write(")")


class Sandbox(ImmutableSandboxedEnvironment):
    """Jinja2's sandbox with an end to every template and a short way to the template data.

    The data is frozen and holds nothing that runs, so it needs none of the
    checks that take the sandbox most of its time.
    """

    code_generator_class = _Compiler
    owners = _CLASSES
    intercepted_binops = frozenset(["*", "**"])
    turns = 0

    def text_of(self, template: str, data: Mapping[str, object]) -> str:
        """Return what a template makes of its data.

        Raises:
            TooMuch: it does not come to an end, or makes more than any file should hold.
        """
        self.turns = 0
        text = self.get_template(template).render(data)
        checked_length(len(text))
        return text

    def getattr(self, obj: Any, attribute: str) -> Any:  # noqa: ANN401 - as Jinja2 has it
        """Return an attribute of an object, or an undefined value where it may not be had."""
        if attribute in _FIELDS.get(type(obj), ()):
            return getattr(obj, attribute)
        return super().getattr(obj, attribute)

    def getitem(self, obj: Any, argument: Any) -> Any:  # noqa: ANN401 - as Jinja2 has it
        """Return an item or field: filters such as ``selectattr`` ask for fields this way."""
        if argument in _FIELDS.get(type(obj), ()):
            return getattr(obj, argument)
        return super().getitem(obj, argument)

    def call(__self, __context: Context, __obj: Any, *args: Any, **named: Any) -> Any:  # noqa: ANN401 - as Jinja2 has it
        """Call what a template calls. A macro is a template's own, so it is never unsafe."""
        if type(__obj) is not Macro:
            return super().call(__context, __obj, *args, **named)
        # These two are for functions that ask for the context, which a macro does not.
        named.pop("_loop_vars", None)
        named.pop("_block_vars", None)
        return __obj(__context.eval_ctx, *args, **named)

    def counted(self, values: Any) -> Any:  # noqa: ANN401 - anything that a loop may go through
        """Return what a loop goes through, its length taken from the turns that are left.

        Raises:
            TooMuch: there are not so many left.
        """
        if type(values) is not tuple:  # as nearly all are
            if isinstance(values, Undefined):
                return values
            if not isinstance(values, Sized):
                values = list(values)
        self.turns += len(values)
        if self.turns > MOST_TURNS:
            raise TooMuch(f"loops take more than {MOST_TURNS:,} turns")
        return values

    def call_binop(self, context: Context, operator: str, left: Any, right: Any) -> Any:  # noqa: ANN401
        """Multiply, or raise to a power, where the result has a reasonable size.

        Raises:
            TooMuch: it has not.
        """
        if operator == "**" and isinstance(right, int | float) and abs(right) > LARGEST_POWER:
            raise TooMuch(f"a power is larger than {LARGEST_POWER}")
        for text, times in ((left, right), (right, left)):
            if isinstance(text, str | list | tuple) and isinstance(times, int):
                checked_length(len(text) * times)
        return super().call_binop(context, operator, left, right)


def checked_length(length: int) -> None:
    """Refuse a text that is too long to be a file of anybody's.

    Raises:
        TooMuch: it is.
    """
    if length > MOST_CHARACTERS:
        raise TooMuch(f"a text has more than {MOST_CHARACTERS:,} characters")


def finished(value: object) -> object:
    """Let through what may stand in a file as it is: strings that namegen spelled, and numbers.

    Raises:
        UnescapedText: the value is manifest text that no escape has seen.
        NotText: the value is another object, or true, false or none.
    """
    if type(value) is str:  # nearly always; asked for every piece of every file
        return value
    if isinstance(value, str | int | float | Undefined) and not isinstance(value, bool):
        return value
    if isinstance(value, Unescaped):
        raise UnescapedText
    if isinstance(value, bool):
        how = 'write {{ "yes" if ... else "no" }}, with the words that the file wants'
    else:
        how = "say which part of it to put out"
    raise NotText(f"{kind_of(value)} has no spelling of its own: {how}")
