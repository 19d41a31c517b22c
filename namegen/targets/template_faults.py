"""Template faults: what went wrong in a template, for the one who writes it.

Says the target, the robot, the template with its line, what is wrong and what
to do about it. Jinja2 is loaded by then.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from pathlib import Path
from types import TracebackType

from msgspec import Struct

from namegen.errors import UnusableTarget
from namegen.targets import absences
from namegen.targets.plain_words import plainly
from namegen.targets.target import Target
from namegen.targets.unescaped import NotText, UnescapedText
from namegen.targets.wording import Sayings, excerpt

_PARTS = {"end of print statement": ("{{", "}}"), "end of statement block": ("{%", "%}")}
"""How Jinja2 calls the ends of its marks, and the marks."""
_OF_PYTHON = (ArithmeticError, AttributeError, LookupError, TypeError, ValueError)
"""What Python itself raises of values that do not go together."""
_SAVE = "Save it as UTF-8 in your editor."


class _Spot(Struct, frozen=True):
    """A line of a template, and the names that could be used there."""

    file: str
    line: int | None = None
    names: tuple[str, ...] = ()


def template_fault(
    error: Exception, target: Target, robot: str | None, data: Mapping[str, object]
) -> UnusableTarget:
    """Return the error to tell of what a template of ``target`` raised, given its ``data``."""
    spot = _spot(target, error)
    said = _said(error, target, spot, data)
    for_robot = f", robot {robot}" if robot else ""
    line = f":{spot.line}" if spot.line else ""
    return UnusableTarget(
        f"target {target.name}{for_robot}: {said.what}",
        where=f"{target.shown}/{spot.file}{line}",
        remedy="\n  ".join(filter(None, (_excerpt(target, spot), said.remedy))),
    )


def _said(error: Exception, target: Target, spot: _Spot, data: Mapping[str, object]) -> Sayings:
    """Return what to say of an error; one that nobody foresaw speaks for itself."""
    from jinja2 import TemplateNotFound, TemplateSyntaxError

    from namegen.targets.sandbox import NotThere

    message = str(getattr(error, "message", None) or error or type(error).__name__)
    if isinstance(error, NotThere):
        return absences.not_there(error, spot.names, data)
    if isinstance(error, TemplateNotFound):
        return absences.no_template(str(error.name), target)
    if found := re.match(r"No filter named '([^']*)'", message):
        return absences.no_filter(found[1], target)
    if found := re.match(r"No test named '([^']*)'", message):
        return absences.no_test(found[1])
    if isinstance(error, TemplateSyntaxError):
        return _shape(message)
    return _raised(error, message, target)


def _shape(message: str) -> Sayings:
    """Return what is wrong with the shape of a template, in plainer words than Jinja2's."""
    if found := re.match(r"Encountered unknown tag '(\w+)'", message):
        return absences.no_tag(found[1])
    if found := re.search(r"innermost block that needs to be closed is '(\w+)'", message):
        return Sayings(
            f"a {{% {found[1]} %}} is not closed", f"Write {{% end{found[1]} %}} where it ends."
        )
    for what, (begins, ends) in _PARTS.items():
        if "unexpected end of template" in message and what in message:
            return Sayings(f"a {begins} is not closed", f"Write {ends} where it ends.")
        message = message.replace(what, ends)
    if found := re.match(r"expected token '(.+)', got '(.+)'", message):
        return Sayings(f'"{found[2]}" stands where "{found[1]}" should')
    return plainly(message)


def _raised(error: Exception, message: str, target: Target) -> Sayings:
    """Return what to say of a template that is well written and still fails."""
    from jinja2 import TemplateError

    from namegen.targets.sandbox import TooMuch

    sayings: Mapping[type[Exception], Callable[[], Sayings]] = {
        UnescapedText: lambda: Sayings(message, _to_escape(target)),
        UnusableTarget: lambda: Sayings(message, getattr(error, "remedy", "")),
        TooMuch: lambda: Sayings(f"it does too much: {message}"),
        OverflowError: lambda: Sayings("a number is too big; a range has 100,000 at most"),
        RecursionError: lambda: Sayings("a macro or a template uses itself without end"),
        UnicodeDecodeError: lambda: Sayings("a template is not saved as UTF-8", _SAVE),
        UnicodeEncodeError: lambda: Sayings("half a letter is put out: a lone surrogate"),
    }
    for sort, say in sayings.items():
        if isinstance(error, sort):
            return say()
    foreign = isinstance(error, (*_OF_PYTHON, TemplateError)) and not isinstance(error, NotText)
    return plainly(message) if foreign else Sayings(message.rstrip("."))


def _to_escape(target: Target) -> str:
    if target.escapes:
        return f"Pipe it through one, such as {{{{ ... | {target.escapes[0]} }}}}."
    return (
        f"List one under `escapes` in {target.shown}/target.yaml, such as [plain_line], and "
        "pipe the text through it: {{ ... | plain_line }}. `namegen explain target` tells them all."
    )


def _spot(target: Target, error: Exception) -> _Spot:
    """Return the line of the template that raised, as far as it is known."""
    line = getattr(error, "lineno", None)
    if line is not None:
        return _Spot(_inside(target, error) or target.template, line)
    last, frame = _Spot(target.template), error.__traceback__
    while frame is not None:
        last = _spot_of(target, frame) or last
        frame = frame.tb_next
    return last


def _inside(target: Target, error: Exception) -> str:
    """Return which of the target's templates cannot be read, as its folder has it."""
    file = Path(target.folder / str(getattr(error, "name", None) or error.filename or ""))  # type: ignore[attr-defined]
    return file.relative_to(target.folder).as_posix() if file.is_relative_to(target.folder) else ""


def _spot_of(target: Target, frame: TracebackType) -> _Spot | None:
    source = Path(frame.tb_frame.f_code.co_filename)
    if not source.is_relative_to(target.folder):
        return None
    names = (name for name in frame.tb_frame.f_locals if not name.startswith("_"))
    file = source.relative_to(target.folder).as_posix()
    return _Spot(file, frame.tb_lineno, tuple(sorted(names)))


def _excerpt(target: Target, spot: _Spot) -> str:
    """Return the template's line as it is written, or nothing where it is not known."""
    if spot.line is None:
        return ""
    try:
        text = (target.folder / spot.file).read_text(encoding="utf-8-sig")
    except (OSError, UnicodeDecodeError):
        return ""
    return excerpt(text, spot.line)
