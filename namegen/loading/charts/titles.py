"""What the bare titles of a chart's sections name: controllers, robots, or groups for people."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from msgspec.structs import replace

from namegen.loading.charts.columns import field_called
from namegen.loading.charts.entries import Entry, entries_of, one_word
from namegen.loading.charts.kinds import kind_of
from namegen.loading.charts.ports import type_of
from namegen.loading.charts.sections import Section

WISH = "titles"
"""Stands for the titles where a person says which column is what."""
_GROUPS = frozenset(
    {"sensor", "sensors", "actuator", "actuators", "input", "inputs", "output", "outputs"}
    | {"other", "others", "misc", "various", "spare", "spares", "wiring", "devices", "ports"}
)


def wished_title(wished: Mapping[str, str]) -> str | None:
    """Return the field that a person says the titles name, or None."""
    meant = [field for field, text in wished.items() if text.casefold() == WISH]
    return meant[0] if meant else None


def named_by_titles(sections: Sequence[Section]) -> str:
    """Return ``robot`` or ``controller``, or the empty text where the titles only group rows.

    Rows speak for robots where a device's name comes again below another title,
    and for controllers where a port does: one robot has no two of a name, and one
    board no two of a label.
    """
    titles = {section.title for section in sections if section.title}
    if not titles or any(_groups(title) for title in titles):
        return ""
    said = {field for title in titles for field in _field_words(title)}
    if len(said) == 1:
        return said.pop()
    entries = [(one.title, entry) for one in sections for entry in entries_of([one], "")]
    controllers = {
        name.casefold()
        for _, entry in entries
        for name in (
            one_word(entry.cell("controller")),
            *(port.controller for port in entry.ports(kind_of(entry.cell("kind")), ()).ports),
        )
        if name
    }
    if {one_word(title).casefold() for title in titles} <= controllers:
        return "controller"
    if any(entry.cell("robot") for _, entry in entries):
        return "" if controllers else "controller"
    if _again((title, (entry.cell("name"),)) for title, entry in entries):
        return "robot"
    where = ((title, _port_cells(entry)) for title, entry in entries)
    return ("robot" if controllers else "controller") if _again(where) else ""


def stripped(title: str) -> str:
    """Return a title without the word for what it names.

    >>> stripped("Board bridge"), stripped("Stern controller"), stripped("Heron II")
    ('bridge', 'Stern', 'Heron II')
    """
    words = title.split()
    if len(words) == 2 and _field_words(title):
        words = [word for word in words if field_called(word) not in {"robot", "controller"}]
    return " ".join(words) or title


def titled(sections: Iterable[Section]) -> list[Section]:
    """Return the sections with the words for what they name taken out of their titles."""
    return [replace(one, title=stripped(one.title)) for one in sections]


def _groups(title: str) -> bool:
    return title.casefold() in _GROUPS or bool(type_of(title)) or kind_of(title) is not None


def _field_words(title: str) -> set[str]:
    words = title.split()
    found = {field_called(word) for word in words} if len(words) == 2 else set()
    return {field for field in ("robot", "controller") if field in found}


def _port_cells(entry: Entry) -> tuple[str, ...]:
    return tuple(entry.cell(field).casefold() for field in ("controller", "type", "port", "label"))


def _again(found: Iterable[tuple[str, tuple[str, ...]]]) -> bool:
    """Whether something comes again below another title."""
    seen: dict[tuple[str, ...], str] = {}
    return any(any(what) and seen.setdefault(what, title) != title for title, what in found)
