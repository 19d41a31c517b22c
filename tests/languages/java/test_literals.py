"""Literals of Java: their value and their spelling, judged by javac and a run of the program."""

from __future__ import annotations

import random
import subprocess

import pytest
from hypothesis import given
from hypothesis import strategies as st

from namegen import languages
from namegen.errors import UnusableInput
from namegen.languages.java.literals import value_of
from namegen.model.facts import Text
from namegen.model.places import Span
from namegen.model.workspaces import LookupRule

JAVA = languages.named("java")
RULES = (LookupRule("call", "motor"),)
PLAIN = Text("", Span(0, 0), '"')

WRITTEN = [
    r'"\b\s\t\n\f\r\"\'\\"',
    r'"\0 \7 \07 \101 \377 \400 \78 \1011"',
    r'"\u0041 \\u0041 \\\u0043 \ud83d\ude00"',
    '"é字😀"',
    '"""\n  a\n    b\n  """',
    '"""   \n  a  \n\n \tb\\\n  c\\s \n"""',
    '"""\n  a""\\"b\n  c"""',
    '"""\r\n  a\r\n   b\r\n  """',
    '"""\n\ta\n\t b\\u0041\\101\n"""',
    '"""\n    a\n  """',
    '"""\n"""',
]
PROGRAM = """
class Main {{
  static void motor(String name) {{
    StringBuilder line = new StringBuilder();
    for (char unit : name.toCharArray()) line.append(String.format("%04x", (int) unit));
    System.out.println(line);
  }}
  public static void main(String[] arguments) {{
{calls}
  }}
}}
"""


def random_texts() -> list[str]:
    """Return texts of every kind of character, the same ones every time."""
    chance = random.Random(20)
    letters = [
        *map(chr, range(256)),
        *"éяﾊ字אعœ\u2028\u202e\ufeff",
        *map(chr, range(0x1F600, 0x1F640)),
    ]
    return ["".join(chance.choices(letters, k=chance.randrange(12))) for _ in range(300)]


def heard(calls: list[str], folder, tool) -> list[str]:
    """Return the texts that a Java program with these literals really gets."""
    file = folder / "Main.java"
    source = PROGRAM.format(calls="\n".join(f"motor({literal});" for literal in calls))
    file.write_bytes(source.encode())
    subprocess.run([tool("javac"), "-encoding", "UTF-8", "-d", str(folder), str(file)], check=True)
    run = [tool("java"), "-cp", str(folder), "Main"]
    lines = subprocess.run(run, check=True, capture_output=True, text=True).stdout.splitlines()
    return [bytes.fromhex(line).decode("utf-16-be", "surrogatepass") for line in lines]


def test_literals_mean_what_the_program_gets(tmp_path, tool):
    texts = random_texts()
    spelt = [JAVA.spell(text, PLAIN) for text in texts]
    assert None not in spelt
    calls = [*(f'"{one}"' for one in spelt), *WRITTEN]
    got = heard(calls, tmp_path, tool)
    assert got[: len(texts)] == texts
    reading = JAVA.read((tmp_path / "Main.java").read_bytes(), RULES)
    read = [site.name.value for site in reading.lookups if isinstance(site.name, Text)]
    assert read == got


def test_unicode_escape_with_several_letters_u():
    assert value_of(r"\uuu0041", '"') == "A"  # JLS 17, section 3.3


@given(st.text(alphabet=st.characters(exclude_categories=["Cs"])))
def test_spelling_reads_back(value):
    spelling = JAVA.spell(value, PLAIN)
    assert spelling is not None
    code = f'class A {{ void f() {{ motor("{spelling}"); }} }}'
    (site,) = JAVA.read(code.encode(), RULES).lookups
    assert isinstance(site.name, Text)
    assert site.name.value == value


@pytest.mark.parametrize("opening", ["'", '"""'])
def test_other_quotes_are_not_rewritten(opening):
    assert JAVA.spell("bow", Text("", Span(0, 0), opening)) is None


@pytest.mark.parametrize("body", [r"\u0022", r"\u005cn", r"\u000a", r"\u12", r"\q", r"\u"])
def test_escapes_that_change_the_literal_itself_have_no_value(body):
    assert value_of(body, '"') is None


def test_latin_1_is_read_where_utf_8_fails():
    data = 'class A { void f() { motor("é"); } }'.encode("latin-1")
    decoded = JAVA.decode(data)
    (site,) = JAVA.read(decoded.utf8, RULES).lookups
    assert isinstance(site.name, Text)
    assert (site.name.value, decoded.encoding, decoded.survives(data)) == ("é", "latin-1", True)


def test_a_binary_file_is_refused():
    with pytest.raises(UnusableInput, match="NUL"):
        JAVA.decode(b"\xca\xfe\xba\xbe\0\0")
