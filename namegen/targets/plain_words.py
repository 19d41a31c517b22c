"""Plain words for what Python and Jinja2 say of a template that goes wrong."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator

from namegen.targets.wording import Sayings, called

_JOIN = "Put texts and numbers together with ~: {{ ... ~ ... }}."
_QUOTES = ('"', "'")
_LOOP = "Write {% for one in ... %} with one name."
_BRACKETS = "A value ends with }}}}, and a {{% ends with %}}."

_Says = Callable[["re.Match[str]"], Sayings]


def _both(what: str) -> _Says:
    """Return a saying of an operator between two values."""
    return lambda m: Sayings(what.format(m[1], called(m[2]), called(m[3])), _JOIN)


def _fixed(what: str, remedy: str = "") -> _Says:
    """Return a saying with what was found between the braces."""
    return lambda m: Sayings(what.format(*m.groups()), remedy.format(*m.groups()))


def _typed(what: str, remedy: str = "") -> _Says:
    """Return a saying of the one value whose type is found."""
    return lambda m: Sayings(what.format(called(m[1])), remedy)


def _filter(name: str) -> str:
    """Return what a function of Python is to the author of a template."""
    if name.startswith("do_"):
        return f'the filter "{name.removeprefix("do_")}"'
    return "an escape" if "unwrapp" in name else f'"{name}"'


def _wants(m: re.Match[str]) -> Sayings:
    names = m[2].replace("'", "").replace(" and ", ", ")
    how = f"Write {{{{ ... | {m[1].removeprefix('do_')}({names}) }}}}."
    return Sayings(f"{_filter(m[1])} wants to be told more: {names}", how)


def _too_many(m: re.Match[str]) -> Sayings:
    most, given = int(m[2]) - 1, int(m[3]) - 1  # the value before the bar is one of them
    what = f"{_filter(m[1])} is told {given} thing{'s' * (given > 1)} in brackets"
    return Sayings(f"{what} and takes {most or 'none'}")


def _letter(m: re.Match[str]) -> Sayings:
    if m[1] in _QUOTES:
        return Sayings("a quotation mark is not closed", f"Write {m[1]} where the text ends.")
    return Sayings(f'the sign "{m[1]}" cannot stand here')


def _sign(m: re.Match[str]) -> Sayings:
    return Sayings(f'"{m[1]}" does not go before {called(m[2])}')


def _lacks(m: re.Match[str]) -> Sayings:
    return Sayings(f'{called(m[1])} has no "{m[2]}"')


def _percent(m: re.Match[str]) -> Sayings:
    return Sayings(f'"%{m[1]}" wants a number, and gets {called(m[2])}')


_SAYINGS: tuple[tuple[str, _Says], ...] = (
    # What Jinja2 says of the shape of a template.
    (r"unexpected '(\W+)', expected '(\W+)'", _fixed('"{}" stands where "{}" should')),
    (r"unexpected '(%}|}})'", _fixed('something is missing before "{}"')),
    (r"unexpected '(\W+)'", _fixed('"{}" cannot stand here', _BRACKETS)),
    (r"unexpected char [\"'](.+)[\"'] at \d+", _letter),
    (r"expected name or number", _fixed("a name or a number is missing here")),
    (r"Missing end of comment tag", _fixed("a {{# is not closed", "Write #}} where it ends.")),
    (r"block '(\w+)' defined twice", _fixed('the block "{}" stands here twice')),
    (
        r"cannot assign attribute on non-namespace object",
        _fixed(
            "only a namespace can be changed",
            "Write {{% set it = namespace(count=0) %}} first, then {{% set it.count = 1 %}}.",
        ),
    ),
    (
        r"macro '(\w+)' takes not more than (\d+) argument",
        _fixed('the macro "{}" is told more than the {} it takes'),
    ),
    (r"macro '(\w+)' takes no keyword argument '?(\w+)", _fixed('the macro "{}" takes no "{}"')),
    # What Python says of values.
    (r"(?:integer )?(?:division|modulo).* by zero", _fixed("a number is divided by zero")),
    (
        r"can only concatenate (\w+) \(not \"(\w+)\"\)",
        lambda m: Sayings(f'"+" does not join {called(m[1])} and {called(m[2])}', _JOIN),
    ),
    (
        r"unsupported operand type\(s\) for (\S+?)=?: '(\w+)' and '(\w+)'",
        _both('"{}" does not go with {} and {}'),
    ),
    (
        r"'(\S+)' not supported between instances of '(\w+)' and '(\w+)'",
        lambda m: Sayings(f'"{m[1]}" does not compare {called(m[2])} with {called(m[3])}'),
    ),
    (r"bad operand type for unary (\S): '(\w+)'", _sign),
    (r"'(\w+)' object is not callable", _typed("{} cannot be called", "Take the brackets away.")),
    (r"cannot unpack non-iterable (\w+) object", _typed("{} is one thing, not several", _LOOP)),
    (r"(?:not enough|too many) values to unpack", _fixed("there are not so many names", _LOOP)),
    (
        r"(?:argument of type )?'(\w+)'(?: object)? is not (?:iterable|a container.*)",
        _typed("{} is no list", "`namegen explain target` tells what is a list."),
    ),
    (r"Object of type (\w+) is not JSON serializable", _typed("{} cannot be written as JSON")),
    (r"type (\w+) doesn't define __round__ method", _typed("{} cannot be rounded")),
    (r"'(\w+)' object has no attribute '(\w+)'", _lacks),
    (r"slice indices must be", _fixed("in [from:to] stand whole numbers")),
    (
        r"not (?:all|enough) arguments (?:converted|for)",
        _fixed("the text before % or `format` has another number of %s than there are values"),
    ),
    (r"%(\w) format: .* required, not (\w+)", _percent),
    (r"invalid width", _fixed("a width is at least 1")),
    (
        r"([\w.<>]+)\(\) missing \d+ required positional arguments?: (.*)",
        _wants,
    ),
    (
        r"([\w.<>]+)\(\) takes (?:from \d+ to )?(\d+) positional arguments? but (\d+) were given",
        _too_many,
    ),
    (
        r"([\w.<>]+)\(\) got an unexpected keyword argument '(\w+)'",
        lambda m: Sayings(f'{_filter(m[1])} takes no "{m[2]}"'),
    ),
)
"""What is said, as a pattern for its beginning, and the plain words for it."""


def plainly(message: str) -> Sayings:
    """Return a message in plain words; what is not known here keeps its own behind them."""
    found = next(_found(message), None)
    if found is not None:
        return found
    return Sayings(f"this cannot be done: {message.rstrip('.')}")


def _found(message: str) -> Iterator[Sayings]:
    for pattern, says in _SAYINGS:
        match = re.match(pattern, message)
        if match is not None:
            yield says(match)
