"""String literals of Kotlin: read as kotlinc reads them, spelt so that kotlinc reads the name.

The values are what a program prints that kotlinc compiled, in one compilation.
"""

from __future__ import annotations

import subprocess
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from namegen import languages
from namegen.errors import UnusableInput
from namegen.languages.kotlin.literals import spell, value_of
from namegen.model.facts import Text
from namegen.model.places import Span
from tests.languages.asking import MOTOR, kotlin

pytestmark = pytest.mark.xdist_group("kotlinc")  # one worker, so that one compiles at a time
WORDS = st.text(alphabet=st.characters(exclude_categories=["Cs"]), max_size=12)
LITERALS = [
    '"bow"',
    '""',
    r'"a\tb\b\n\r\'\"\\\$x"',
    r'"\u0041\u00e9\uD83D\uDEA4"',
    '"é🚤 $ 5 $"',
    r'"\\$five"',
    '"$five"',
    '"${five}x$five.y"',
    '"${"in" + five}"',
    '"${if (five == "5") "yes" else "no"}"',
    '"""a "b" \\n $ 5"""',
    '"""$five\\$five"""',
    '"""a\nb"""',
    '"""a""""',
    '"""${\'$\'}five"""',
    '"a" + \'b\' + """c"""',
    "\"x\" + '\\u0041' + '\\'' + '\"'",
]
SPELT = [
    "bow",
    'a"b',
    "a\\b",
    "$five",
    "${five}",
    "$",
    "5$",
    "é🚤",
    "a\tb\x00\x7f",
    "\u2028",
    "`a`",
]


def test_the_values_are_those_of_kotlinc(tmp_path: Path, tool):
    spelt = [spell(value, literal('"')) for value in SPELT]
    texts = [*LITERALS, *(f'"{one}"' for one in spelt)]
    shown = "".join(f"  show({one})\n" for one in texts)
    shows = 'fun show(t: String) = println(t.map { it.toInt() }.joinToString(","))\n'
    code = f'{shows}const val five = "5"\nfun main() {{\n{shown}}}\n'
    (tmp_path / "Main.kt").write_text(code)
    jar = tmp_path / "all.jar"
    command = [tool("kotlinc"), tmp_path / "Main.kt", "-include-runtime", "-d", jar]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    run = subprocess.run(
        [tool("java"), "-cp", jar, "MainKt"], capture_output=True, text=True, check=True
    )
    printed = [_text(line) for line in run.stdout.splitlines()]
    asked = "".join(f"  motor({one})\n" for one in texts)
    answers = kotlin(f'const val five = "5"\nfun main() {{\n{asked}}}\n')
    several = LITERALS.index('"${if (five == "5") "yes" else "no"}"')
    assert answers[several : several + 2] == ["yes", "no"]
    del answers[several + 1]
    assert answers == printed
    assert printed[len(LITERALS) :] == SPELT


def _text(numbers: str) -> str:
    units = [int(one) for one in numbers.split(",")] if numbers else []
    return b"".join(one.to_bytes(2, "little") for one in units).decode("utf-16-le")


def literal(opening: str) -> Text:
    return Text("x", Span(0, 1), opening)


@given(WORDS)
def test_what_is_spelt_reads_back(value: str):
    for opening in ('"', '"""'):
        spelt = spell(value, literal(opening))
        if opening == '"':
            assert spelt is not None
        assert spelt is None or value_of(spelt, opening) == value
        if spelt is not None:
            code = f"fun f() {{ motor({opening}{spelt}{opening}) }}\n"
            (site,) = languages.named("kotlin").read(code.encode(), [MOTOR]).lookups
            assert isinstance(site.name, Text) and site.name.value == value


@pytest.mark.parametrize("value", ['a"b', "$x", "a\nb", "${x}", "5$"])
def test_three_quotes_cannot_say_everything(value: str):
    assert spell(value, literal('"""')) is None
    assert spell(value, literal("'")) is None


@pytest.mark.parametrize("body", [r"\x", r"\u12", "\\", "a\nb", "$x", "${x}", r"\0"])
def test_what_is_no_literal_has_no_value(body: str):
    """Kotlin language specification, grammar, LineString: these are errors or templates."""
    assert value_of(body, '"') is None


def test_a_file_is_utf8_or_not_read():
    """kotlinc takes no other encoding; a byte order mark it passes over."""
    own = languages.named("kotlin")
    decoded = own.decode(b"\xef\xbb\xbfval x = 1\r\n")
    assert decoded.text == "val x = 1\r\n" and decoded.survives(b"\xef\xbb\xbfval x = 1\r\n")
    with pytest.raises(UnusableInput, match="not text in UTF-8"):
        own.decode(b'val x = "\xe9"')
