"""Literals of Python: their value and their spelling, judged by `ast.literal_eval`."""

from __future__ import annotations

import ast
import warnings

import pytest
from hypothesis import given
from hypothesis import strategies as st

from namegen import languages
from namegen.languages.python.literals import value_of
from namegen.model.facts import Text
from namegen.model.places import Span
from namegen.model.workspaces import LookupRule

PYTHON = languages.named("python")
RULES = (LookupRule("call", "motor"),)
OPENINGS = ["'", '"', "'''", '"""', "u'", 'U"']
ESCAPES = r"""
\a \b \f \n \r \t \v \\ \' \" \0 \07 \101 \400 \8 \1a \1234
\x41 \u0041 \U0001F600 \N{BULLET} \d \\n \\\n é \é
"""
BODIES = [
    *ESCAPES.split(),
    "a\\ b",
    "a\\\nb",
    "a\\\r\nb",
]


def evaluated(text: str) -> object:
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        return ast.literal_eval(text)


@pytest.mark.parametrize("body", BODIES)
@pytest.mark.parametrize("opening", ["'", "r'", "'''", "rb'"])
def test_escapes_mean_what_python_says(opening, body):
    quoted = opening + body + opening.lstrip("rb")
    try:
        wanted = evaluated(quoted)
    except (SyntaxError, ValueError):
        return
    assert value_of(body, opening) == (wanted if isinstance(wanted, str) else None)


@pytest.mark.parametrize(
    "body", [r"\x4", r"\u12", r"\U00110000", r"\N{NO SUCH NAME}", r"\N", r"\u"]
)
def test_escapes_that_python_refuses_have_no_value(body):
    with pytest.raises(SyntaxError):
        evaluated(f"'{body}'")
    assert value_of(body, "'") is None


@given(st.text(), st.sampled_from(OPENINGS))
def test_spelling_means_the_value_to_python(value, opening):
    spelling = PYTHON.spell(value, Text("", Span(0, 0), opening))
    assert spelling is not None
    assert evaluated(opening + spelling + opening.lstrip("uU")) == value


@given(st.text(), st.sampled_from(["r'", 'R"', "r'''"]))
def test_raw_spelling_means_the_value_or_is_refused(value, opening):
    spelling = PYTHON.spell(value, Text("", Span(0, 0), opening))
    if spelling is None:
        assert not value.isprintable() or "\\" in value or opening[1] in value
    else:
        assert evaluated(opening + spelling + opening[1:]) == value


@given(st.text())
def test_spelling_in_a_formatted_literal(value):
    spelling = PYTHON.spell(value, Text("", Span(0, 0), "f'"))
    assert spelling is not None
    assert eval(f"f'{spelling}'") == value


@pytest.mark.parametrize("opening", ["b'", "rb'", "Br'", "?"])
def test_bytes_cannot_be_a_name(opening):
    assert PYTHON.spell("bow", Text("", Span(0, 0), opening)) is None


@given(st.text(alphabet=st.characters(exclude_categories=["Cs"])))
def test_reading_gives_the_value_that_repr_wrote(value):
    written = f"motor({value!r})\n"
    (site,) = PYTHON.read(written.encode(), RULES).lookups
    assert isinstance(site.name, Text)
    assert site.name.value == value
    span = site.name.span
    assert written.encode()[span.start : span.end].decode() == repr(value)[1:-1]


@pytest.mark.parametrize(
    ("written", "value"),
    [
        ('motor("""a\r\nb""")', "a\nb"),
        ('motor("""a\rb""")\n', "a\nb"),
        ("x = 1\rmotor('a')\ry = 2\r", "a"),
    ],
)
def test_line_ends_inside_a_literal(written, value):
    namespace: dict[str, object] = {}
    exec(written, {"motor": lambda name: namespace.update(name=name)})
    assert namespace["name"] == value
    (site,) = PYTHON.read(written.encode(), RULES).lookups
    assert isinstance(site.name, Text)
    assert site.name.value == value
