"""Absences: names, fields, filters and files that a template asks for and that there are not.

Each is told with the nearest right word and with what there is. Jinja2 is loaded by then.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Mapping
from typing import TYPE_CHECKING

from namegen.targets import template_model
from namegen.targets.escaping import all_escapes
from namegen.targets.target import Target
from namegen.targets.unescaped import Unescaped
from namegen.targets.wording import Sayings, kind_of
from namegen.text.likeness import nearest

if TYPE_CHECKING:
    from namegen.targets.sandbox import NotThere

ALL_FIELDS = "`namegen explain target` tells what every template sees."
_TAGS = (
    *("for", "else", "endfor", "if", "elif", "endif", "set", "endset", "macro", "endmacro"),
    *("call", "endcall", "filter", "endfilter", "with", "endwith", "raw", "endraw"),
    *("include", "import", "from", "extends", "block", "endblock"),
)
_EVERYWHERE = ("range", "dict", "cycler", "joiner", "namespace")
"""Names that Jinja2 itself gives to every template: worth a hint, not worth a list."""


def no_word(
    what: str, word: str, words: Collection[str], lead: str, also: Collection[str] = ()
) -> Sayings:
    """Return that there is no such word, the nearest one, and a list of what there is.

    Words that are there ``also`` may be meant, and are not listed.
    """
    near = nearest(word, [*words, *also])
    meant = f'; did you mean "{near}"?' if near else ""
    return Sayings(what + meant, f"{lead}: {', '.join(words) or 'none'}.")


def not_there(error: NotThere, names: Collection[str], data: Mapping[str, object]) -> Sayings:
    """Return what to say of a name, a field or an element; ``names`` are those in scope."""
    owner, asked = error.owner, error.asked
    if error.hint:
        lacking = re.match(r"parameter '(\w+)' was not provided", error.hint)
        return Sayings(
            f'the macro is not told its "{lacking[1]}"' if lacking else error.hint,
            "" if lacking else ALL_FIELDS,
        )
    if error.alone:
        return _no_name(str(asked), names or data, data)
    if isinstance(owner, dict) and owner is data.get("options"):
        what = f'the target has no option "{asked}"'
        return no_word(what, str(asked), owner, "target.yaml declares")
    if type(owner) in template_model.CLASSES:
        fields = template_model.readable(type(owner))
        return no_word(f'{kind_of(owner)} has no "{asked}"', str(asked), fields, "It has")
    if isinstance(owner, tuple | list):
        return _no_element(len(owner), asked)
    return Sayings(f'{kind_of(owner)} has no "{asked}"', _by_filter(owner, str(asked)))


def _by_filter(owner: object, asked: str) -> str:
    """Return what to do where somebody calls a text's method, as Python does."""
    from jinja2 import filters

    if asked not in filters.FILTERS:
        return ALL_FIELDS
    escaped = "plain_line | " if isinstance(owner, Unescaped) else ""
    fits = ", with the escape that fits" if escaped else ""
    return f"It is a filter: write {{{{ ... | {escaped}{asked} }}}}{fits}."


def _no_name(asked: str, names: Collection[str], data: Collection[str]) -> Sayings:
    if asked in data:
        return Sayings(
            f'"{asked}" is not defined in a template that is imported',
            "Give it to the macro as an argument, or import the template `with context`.",
        )
    seen = [name for name in names if name not in _EVERYWHERE]
    said = no_word(f'"{asked}" is not defined here', asked, seen, "Defined here", _EVERYWHERE)
    every = f"{asked}s"
    if every not in template_model.readable(template_model.Robot):
        return said
    return Sayings(said.what, f"Write {{% for {asked} in robot.{every} %}} before. {said.remedy}")


def _no_element(length: int, asked: object) -> Sayings:
    if isinstance(asked, int):
        return Sayings(f"a list of {length} has no element {asked}, counted from 0")
    return Sayings(
        f'a list has no "{asked}"',
        "Go through it with {% for one in ... %}, or take its first with `| first`.",
    )


def no_filter(name: str, target: Target) -> Sayings:
    """Return what to say of a filter that there is not, or that target.yaml does not list."""
    from jinja2 import filters

    escapes = list(all_escapes())
    if name in escapes:
        return Sayings(
            f'the escape "{name}" is not listed in target.yaml',
            f"Write `escapes: [{', '.join([*target.escapes, name])}]` into "
            f"{target.shown}/target.yaml.",
        )
    if name in filters.FILTERS:
        return Sayings(f'the filter "{name}" is not for targets: it gives another file in each run')
    if "." in name:
        what, _, field = name.partition(".")
        return Sayings(
            f'there is no filter "{name}"',
            f"Write {{{{ (... | {what}).{field} }}}}, with brackets.",
        )
    near = nearest(name, [*escapes, "lines", "sentence"])
    alike = [one for one in escapes if one.partition("_")[0] == name.partition("_")[0]]
    meant = near or " or ".join(alike) or nearest(name, filters.FILTERS)
    return Sayings(
        f'there is no filter "{name}"' + (f"; did you mean {meant}?" if meant else ""),
        f"{target.shown}/target.yaml lists {', '.join(target.escapes) or 'no escapes'}. "
        "`namegen explain target` tells all that there are.",
    )


def no_test(name: str) -> Sayings:
    """Return what to say of a test that there is not: ``{% if one is smal %}``."""
    from jinja2 import tests

    there = [one for one in tests.TESTS if one.isalpha()]
    return no_word(f'there is no test "{name}"', name, there, "The tests")


def no_tag(name: str) -> Sayings:
    """Return what to say of a tag that there is not: ``{% fro one in ... %}``."""
    if name in _TAGS:
        return Sayings(f"{{% {name} %}} stands where nothing is open that it could belong to")
    return no_word(f'there is no tag "{name}"', name, _TAGS, "The tags")


def no_template(name: str, target: Target) -> Sayings:
    """Return what to say of a template that a target's folder does not hold."""
    files = (one for one in target.folder.rglob("*") if one.is_file())
    there = sorted({one.relative_to(target.folder).as_posix() for one in files} - {"target.yaml"})
    what = f'there is no template "{name}" in the target\'s folder'
    return no_word(what, name, there, "It has")
