"""What the YAML reader complains about, in words for people who never wrote YAML."""

from __future__ import annotations

import re
from collections.abc import Callable

import yaml

from namegen.loading.sources import Source
from namegen.model.findings import Fault
from namegen.model.places import Related

_QUOTE_IT = "put quotes around the whole text"
_COLUMN = (
    "This line is not in one column with the fields above it. Give fields of one group the same "
    "number of blanks in front."
)
_KEY_ONLY = re.compile(r"\s*(?:- +)*[\w.-]+")
_NO_BLANK = re.compile(r"\s*(?:- +)*([\w.-]+):([^\s/:].*)")
_FIELD = re.compile(r"\s*(?:- +)*([\w.-]+): +(.*?)(?: +#.*)?\s*")
_BRACE_TEXT = re.compile(r":\s+([{\[].*)")


def explained(error: yaml.YAMLError, source: Source) -> Fault:
    """Return the fault for an error of the YAML reader."""
    if not isinstance(error, yaml.MarkedYAMLError) or error.problem_mark is None:
        return Fault("bad-yaml", "This cannot be read as YAML.", source.place(0, 0))
    at = min(error.problem_mark.index, len(source.text))
    problem = error.problem or ""
    message = next(
        (tell(source, at) for part, tell in _TOLD if part in problem),
        f"This cannot be read as YAML here ({problem}). Look for a missing quote, bracket or "
        "colon here or on the line above.",
    )
    related: tuple[Related, ...] = ()
    start = error.context_mark
    if start is not None and start.index < at and _opens(source, start.index):
        related = (Related(source.place(start.index, start.index + 1), "opened here"),)
    end = min(at + 1, len(source.text)) if source.rest_of_line(at) else at
    return Fault("bad-yaml", message, source.place(at, end), related=related)


def unclosed(error: yaml.YAMLError) -> bool:
    """Whether the error is a bracket or brace that is never closed."""
    return "did not find expected ',' or" in (getattr(error, "problem", None) or "")


def _opens(source: Source, index: int) -> bool:
    return source.text[index : index + 1] in {"[", "{", '"', "'"}


def _cannot_start(source: Source, at: int) -> str:
    sign = source.text[at : at + 1]
    if sign == "\t":
        return "A tab stands here, which YAML does not allow. Use blanks."
    return f"A text cannot start with `{sign}` in YAML: {_QUOTE_IT}."


def _second_colon(source: Source, at: int) -> str:
    line, *above = _lines_before(source, at)
    before = line[: len(line) - len(source.rest_of_line(at))]
    glued = _NO_BLANK.fullmatch(above[0]) if above else None
    if _KEY_ONLY.fullmatch(before) and glued:
        return f"A colon needs a blank after it: write `{glued[1]}: {glued[2]}` in the line above."
    if _KEY_ONLY.fullmatch(before):
        return (
            "A field cannot stand here: the line is not in one column with the fields it belongs "
            "to, or the line above has a value already. Give fields of one group the same "
            "number of blanks in front."
        )
    field = _FIELD.fullmatch(line)
    shown = f': `{field[1]}: "{field[2]}"`' if field and '"' not in field[2] else ""
    return f"A text with a colon and a blank in it needs quotes. P{_QUOTE_IT[1:]}{shown}."


def _no_colon(source: Source, at: int) -> str:
    for line in _lines_before(source, at):
        found = _NO_BLANK.match(line)
        if found:
            return f"A colon needs a blank after it: write `{found[1]}: ...`."
        if " #" in line and ":" in line.partition(" #")[2]:
            return (
                "A `#` after a blank starts a comment, so the colon after it is lost. "
                "Put quotes around the name before the colon."
            )
    return (
        "A line without a colon stands here. A field is written `name: value`; a text that goes "
        "on from the line above must be indented further than the field's name."
    )


def _lines_before(source: Source, at: int) -> list[str]:
    """Return the line of an index and the two before it, nearest first."""
    number = source.lines.position(at)[0]
    return [source.lines.line(line) for line in range(number, max(0, number - 3), -1)]


def _stray(source: Source, at: int) -> str:
    line = source.line_at(at)
    if _FIELD.fullmatch(line) and line.startswith(" "):
        return _COLUMN
    return _no_colon(source, at)


def _no_key(source: Source, at: int) -> str:
    line = source.line_at(at)
    column = len(line) - len(source.rest_of_line(at))
    if line[:column].strip():
        braces = _BRACE_TEXT.search(line)
        if braces:
            return f"A text that starts with `{braces[1][0]}` needs quotes: {_QUOTE_IT}."
        field = _FIELD.fullmatch(line)
        shown = f": `{field[1]}: '{field[2]}'`" if field and "'" not in field[2] else ""
        return (
            f"Something follows after the end of a value. If it belongs to it, {_QUOTE_IT}{shown}."
        )
    if line[column:].startswith("- "):
        return "A list item (`-`) stands among fields. Put it below the field it belongs to."
    return _COLUMN


def _unclosed(sign: str, name: str) -> Callable[[Source, int], str]:
    def tell(source: Source, at: int) -> str:
        lines = _lines_before(source, at)
        if any(" #" in line for line in lines):
            return (
                f"The {name} is not closed: a `#` after a blank starts a comment and hides the "
                f"rest of its line. Put quotes around the text with the `#`, or add `{sign}`."
            )
        return f"The {name} is not closed: a comma or `{sign}` is missing before this place."

    return tell


def _always(message: str) -> Callable[[Source, int], str]:
    return lambda source, at: message


_TOLD: tuple[tuple[str, Callable[[Source, int], str]], ...] = (
    ("cannot start any token", _cannot_start),
    ("mapping values are not allowed", _second_colon),
    ("could not find expected ':'", _no_colon),
    ("did not find expected <document start>", _stray),
    ("did not find expected key", _no_key),
    ("did not find expected ',' or ']'", _unclosed("]", "list in [ ]")),
    ("did not find expected ',' or '}'", _unclosed("}", "group in { }")),
    (
        "did not find expected '-' indicator",
        _always("A field stands among list items. Put it in one column with its own group."),
    ),
    (
        "block sequence entries are not allowed",
        _always("A list item (`-`) cannot stand here. Start the list on the next line, indented."),
    ),
    (
        "unexpected end of stream",
        _always("A quote is opened and never closed. Add the closing quote."),
    ),
    ("unexpected document indicator", _always("A quote is opened and never closed.")),
    (
        "unknown escape character",
        _always("In double quotes a `\\` has a meaning of its own. Use single quotes instead."),
    ),
    (
        "escape code",
        _always("This `\\` code does not stand for a character. Use single quotes instead."),
    ),
    (
        "did not find expected hexdecimal number",
        _always("In double quotes a `\\` has a meaning of its own. Use single quotes instead."),
    ),
    ("undefined alias", _always("A text that starts with `*` needs quotes.")),
    (
        "incompatible YAML document",
        _always("Delete this `%YAML` line; namegen's files need none."),
    ),
)
