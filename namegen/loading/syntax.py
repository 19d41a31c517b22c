"""What the YAML reader complains about, in words for people who never wrote YAML."""

from __future__ import annotations

import re
from collections.abc import Callable

import yaml

from namegen.loading.nodes import TextNode
from namegen.loading.quotes import QUOTE_IT, cannot_start, never_closed, sign_alone, swallowed
from namegen.loading.sources import Source
from namegen.loading.trouble import Told, Trouble, field_in, in_quotes, indent, stretch_of
from namegen.model.findings import Fault

_ALIGN = "Give fields of one group the same number of blanks in front."
_COLUMN = f"This line is not in one column with the fields above it. {_ALIGN}"
_COLON_BLANK = "A colon needs a blank after it: write"
_NO_COLON = "A line without a colon stands here. A field is written `name: value`"
_KEY_ONLY = re.compile(r"\s*(?:- +)*[\w.-]+")
_NO_BLANK = re.compile(r"\s*(?:- +)*([\w.-]+):([^\s/:].*)")
_EQUALS = re.compile(r"\s*(?:- +)*([\w.-]+) *= *(\S.*)")
_BRACE_TEXT = re.compile(r":\s+([{\[].*)")


def explained(error: yaml.YAMLError, source: Source, last: TextNode | None = None) -> Fault:
    """Return the fault for an error of the YAML reader; ``last`` is the text it read last."""
    if not isinstance(error, yaml.MarkedYAMLError) or error.problem_mark is None:
        return Fault("bad-yaml", "This cannot be read as YAML.", source.place(0, 0))
    at = min(error.problem_mark.index, len(source.text))
    opened = error.context_mark.index if error.context_mark else None
    trouble = Trouble(source, at, opened, last)
    problem = error.problem or ""
    told = swallowed(trouble) or next(
        (tell(trouble) for part, tell in _TOLD if part in problem), None
    )
    if told is None:
        told = Told(
            f"This cannot be read as YAML here ({problem}). Look for a missing quote, bracket or "
            "colon here or on the line above."
        )
    end = min(at + 1, len(source.text)) if source.rest_of_line(at) else at
    start, end = told.stretch or (at, end)
    return Fault("bad-yaml", told.message, source.place(start, end), related=told.related(source))


def unclosed(error: yaml.YAMLError) -> bool:
    """Whether the error is a bracket or brace that is never closed."""
    return "did not find expected ',' or" in (getattr(error, "problem", None) or "")


def _second_colon(trouble: Trouble) -> Told:
    below = _list_below_value(trouble)
    if below is not None:
        return below
    if not _KEY_ONLY.fullmatch(trouble.before):
        shown = in_quotes(trouble.line)
        return Told(f"A text with a colon and a blank in it needs quotes. P{QUOTE_IT[1:]}{shown}.")
    told = _amiss_above(trouble)
    if told or trouble.above is None:
        return told or Told(_COLUMN)
    above = trouble.above[1]
    here = stretch_of(trouble.at - len(trouble.before), trouble.before)
    if indent(trouble.line) > indent(above) and field_in(above):
        return Told(
            "This line is indented further than the line above it, which has a value already. "
            + _ALIGN,
            here,
        )
    return Told(
        "A field cannot stand here: the line is not in one column with the fields it belongs "
        f"to, or the line above has a value already. {_ALIGN}",
        here,
    )


def _list_below_value(trouble: Trouble) -> Told | None:
    """Tell of a list below a field that has a value on its own line already."""
    field = field_in(trouble.above[1]) if trouble.above else None
    if trouble.above is None or not field or not trouble.line.lstrip().startswith("- "):
        return None
    if indent(trouble.line) < indent(trouble.above[1]) or trouble.above[1].lstrip()[0] == "-":
        return None
    start, above = trouble.above
    return Told(
        f"Below `{above.strip()}` stands a list, and the field has a value already. Take that "
        f"value out, so that `{field[0]}:` stands alone above the list, or take the list out.",
        stretch_of(start, above),
    )


def _amiss_above(trouble: Trouble) -> Told | None:
    """Tell of the line above, which was meant as a field and is none."""
    if trouble.above is None:
        return None
    start, line = trouble.above
    amiss = _amiss(line)
    return Told(amiss, stretch_of(start, line)) if amiss else None


def _amiss(line: str) -> str | None:
    """Return what to say of a line that was meant as a field and is none."""
    glued, equals = _NO_BLANK.fullmatch(line), _EQUALS.fullmatch(line)
    if glued:
        return f"{_COLON_BLANK} `{glued[1]}: {glued[2].rstrip()}`."
    if equals:
        written = f"`{equals[1]}: {equals[2].rstrip()}`"
        return f"A field is written with a colon and a blank: write {written}."
    return None if ":" in line else f"{_NO_COLON}."


def _no_colon(trouble: Trouble) -> Told:
    source = trouble.source
    start = source.start_of_line(trouble.at if trouble.opened is None else trouble.opened)
    line = source.line_at(start)
    if " #" in line and ":" in line.partition(" #")[2]:
        message = (
            "A `#` after a blank starts a comment, so the colon after it is lost. "
            "Put quotes around the name before the colon."
        )
    else:
        message = _amiss(line) or f"{_NO_COLON}."
    if message == f"{_NO_COLON}.":
        message = (
            f"{_NO_COLON}; a text that goes on from the line above must be indented further than "
            "the field's name."
        )
    return Told(message, stretch_of(start, line))


def _stray(trouble: Trouble) -> Told:
    if not field_in(trouble.line):
        return _no_colon(trouble)
    return _amiss_above(trouble) or Told(_COLUMN)


def _no_key(trouble: Trouble) -> Told:
    line = trouble.line
    if trouble.sign and trouble.sign in "]}":
        return Told(f"One `{trouble.sign}` too many stands here. Delete it.")
    if not trouble.before.strip():
        if trouble.source.rest_of_line(trouble.at).startswith("- "):
            return Told(
                "A list item (`-`) stands among fields. Leave the `-` out and write `name: ...`, "
                "or put it below the field that the list belongs to."
            )
        return Told(_COLUMN)
    braces, field = _BRACE_TEXT.search(line), field_in(line)
    if braces:
        shown = in_quotes(line)
        return Told(f"A text that starts with `{braces[1][0]}` needs quotes: {QUOTE_IT}{shown}.")
    if field and field[1][:1] == field[1][-1:] == "'" and '"' not in field[1]:
        return Told(
            "An apostrophe ends a text in single quotes. Write it in double quotes: "
            f'`{field[0]}: "{field[1][1:-1]}"`.'
        )
    shown = in_quotes(line, "'" if '"' in line else '"')
    return Told(
        f"Something follows after the end of a value. If it belongs to it, {QUOTE_IT}{shown}."
    )


def _unclosed(sign: str, name: str) -> Callable[[Trouble], Told]:
    def tell(trouble: Trouble) -> Told:
        lines = [trouble.line, *([trouble.above[1]] if trouble.above else [])]
        if any(" #" in line for line in lines):
            return Told(
                f"The {name} is not closed: a `#` after a blank starts a comment and hides the "
                f"rest of its line. Put quotes around the text with the `#`, or add `{sign}`."
            )
        opened = trouble.opened
        if opened is None or trouble.same_line(opened):
            return Told(
                f"The {name} is not closed: a comma or `{sign}` is missing before this place."
            )
        line = trouble.source.lines.position(trouble.at)[0]
        where = f"before line {line}" if trouble.line.strip() else "up to the end of the file"
        also = (trouble.at, "not closed up to here") if trouble.line.strip() else None
        message = f"The {name} that starts here is not closed: a comma or `{sign}` is missing "
        return Told(f"{message}{where}.", (opened, opened + 1), also)

    return tell


def _always(message: str) -> Callable[[Trouble], Told]:
    return lambda trouble: Told(message)


def _backslash(trouble: Trouble) -> Told:
    field = field_in(trouble.line)
    shown = ""
    if field and field[1][:1] == field[1][-1:] == '"' and "'" not in field[1]:
        shown = f": `{field[0]}: '{field[1][1:-1]}'`"
    message = "In double quotes a `\\` has a meaning of its own. Use single quotes instead"
    return Told(f"{message}{shown}.")


_TOLD: tuple[tuple[str, Callable[[Trouble], Told]], ...] = (
    ("cannot start any token", cannot_start),
    ("did not find expected alphabetic or numeric character", sign_alone),
    ("mapping values are not allowed", _second_colon),
    ("could not find expected ':'", _no_colon),
    ("did not find expected <document start>", _stray),
    ("did not find expected key", _no_key),
    ("did not find expected ',' or ']'", _unclosed("]", "list in [ ]")),
    ("did not find expected ',' or '}'", _unclosed("}", "group in { }")),
    (
        "did not find expected node content",
        _always(
            "A value is missing here, or a bracket is not closed by its own sort: `[ ]` stands "
            "around a list, `{ }` around a group of fields."
        ),
    ),
    (
        "did not find expected '-' indicator",
        _always(
            "A field stands among list items. The fields of one item stand in one column, two "
            "blanks further right than its `-`."
        ),
    ),
    (
        "block sequence entries are not allowed",
        _always("A list item (`-`) cannot stand here. Start the list on the next line, indented."),
    ),
    ("unexpected end of stream", never_closed),
    ("unexpected document indicator", never_closed),
    ("unknown escape character", _backslash),
    (
        "escape code",
        _always("This `\\` code does not stand for a character. Use single quotes instead."),
    ),
    ("did not find expected hexdecimal number", _backslash),
    ("undefined alias", _always("A text that starts with `*` needs quotes.")),
    (
        "incompatible YAML document",
        _always("Delete this `%YAML` line; namegen's files need none."),
    ),
)
