"""Quotes in YAML: those that are never closed, closed too late, or missing around a text."""

from __future__ import annotations

import re

from namegen.loading.sources import Source
from namegen.loading.trouble import Told, Trouble, field_in, in_quotes

QUOTE_IT = "put quotes around the whole text"
_ITEM = re.compile(r"[^\s,\]}#'\"]+")
_NAMES = {"`": "a backtick"}


def swallowed(trouble: Trouble) -> Told | None:
    """Tell of a quote that another text's quote closed, lines later."""
    last, text = trouble.last, trouble.source.text
    if last is None or last.style not in {"'", '"'} or not trouble.same_line(last.end):
        return None
    if "\n" not in text[last.start : last.end] and "\r" not in text[last.start : last.end]:
        return None
    line = trouble.source.lines.position(last.end)[0]
    message = (
        f"A quote is opened here and closed only in line {line}, so that all between was read as "
        f"one text. Add the closing `{last.style}` where the text ends."
    )
    return Told(message, _rest(trouble.source, last.start), (last.end - 1, "closed here"))


def never_closed(trouble: Trouble) -> Told:
    """Tell of a quote that no other closes."""
    opened = trouble.at if trouble.opened is None else trouble.opened
    source = trouble.source
    sign = source.text[opened : opened + 1]
    stretch = _rest(source, opened)
    line = source.text[source.start_of_line(opened) : stretch[1]]
    other = "'" if sign == '"' else '"'
    shown = in_quotes(line.removesuffix(other).replace(sign, "", 1), sign)
    how = f"Add the closing `{sign}` at the end of the text{shown}."
    if line.endswith(other):
        how = f"The `{other}` at its end is a quote of another sort: write `{sign}`{shown}."
    return Told(f"A quote is opened here and never closed. {how}", stretch)


def _rest(source: Source, start: int) -> tuple[int, int]:
    return start, start + len(source.rest_of_line(start).rstrip())


def cannot_start(trouble: Trouble) -> Told:
    """Tell of a text whose first sign has a meaning of its own."""
    if trouble.sign == "\t":
        return Told("A tab stands here, which YAML does not allow. Use blanks.")
    sign = _NAMES.get(trouble.sign, f"`{trouble.sign}`")
    found = field_in(trouble.line)
    whole = found and trouble.source.rest_of_line(trouble.at).startswith(found[1])
    shown = in_quotes(trouble.line) if whole else _item(trouble.source.rest_of_line(trouble.at))
    return Told(f"A text cannot start with {sign} in YAML: {QUOTE_IT}{shown}.")


def _item(rest: str) -> str:
    """Return an item of a list as it is to be written."""
    found = _ITEM.match(rest)
    return f': `"{found[0]}"`' if found else ""


def sign_alone(trouble: Trouble) -> Told:
    """Tell of an ``*`` or ``&`` without a name after it."""
    opened = trouble.at if trouble.opened is None else trouble.opened
    told = cannot_start(Trouble(trouble.source, opened))
    return Told(told.message, (opened, opened + 1))
