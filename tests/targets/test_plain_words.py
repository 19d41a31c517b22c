"""Whatever goes wrong in a template is told with its line, without the words of Python."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from namegen.errors import UnusableTarget
from namegen.targets.rendering import render
from namegen.targets.scene import Scene
from namegen.targets.shelf import load
from targets.boats import CATALOGUE, HERON

DESCRIPTION = (
    "model: 1\ndescription: A list.\nper: robot\ntemplate: list.j2\nescapes: [plain_line]\n"
)
WRONG = (
    "{{ x }}",
    "{{ robot.nam | plain_line }}",
    "{{ robot['nam'] }}",
    "{{ robot.name | plainline }}",
    "{{ robot.name }}",
    "{% for d in robot.devices %}{{ d.name|plain_line }}",
    "{% for d of robot.devices %}{% endfor %}",
    "{{ 1/0 }}",
    "{{ 'a' + 1 }}",
    "{{ robot.devices[99].name }}",
    "{{ robot.devices.name }}",
    "{{ robot.name.upper() | plain_line }}",
    "{{ robot() }}",
    "{{ robot.name | plain_line | replace }}",
    "{{ robot.devices | map(attribute='nme') | list }}",
    "{{ robot.devices | sort(attribute='foo') | length }}",
    "{% for a, b in robot.devices %}{% endfor %}",
    "{% for a in 5 %}{% endfor %}",
    "{% for a in robot %}{% endfor %}",
    "{{ robot.devices | first.name }}",
    "{{ robot.devices[0].name | plain_line(3) }}",
    "{% include 'foo.j2' %}",
    "{% if robot.name == %}x{% endif %}",
    "{{ robot.name | plain_line }",
    "{% endfor %}",
    "{% set x = 1 %}{{ x.y }}",
    "{{ 'abc'.foo }}",
    "{{ 'abc'.format(1,2) }}{{ '%d' % 'a' }}",
    "{{ options.crew }}",
    "{{ robot.devices | length + 'a' }}",
    "{{ loop.index }}",
    "{% macro m(a) %}{{ a }}{% endmacro %}{{ m(1,2,3) }}",
    "{% macro m(a) %}{{ a.b }}{% endmacro %}{{ m() }}",
    "{{ range(9999999) }}",
    "{{ robot.devices|groupby('kindd') }}",
    "{{ robot.devices|selectattr('optional','foo')|list }}",
    "{{ robot.devices|sum }}",
    "{% raise 'x' %}",
    "{{ [1,2 }}",
    "{{ robot.devices|batch }}",
    "{{ robot.mark|round }}",
    "{{ 5|first }}",
    "{{ robot.devices|dictsort }}",
    "{{ None.x }}",
    "{{ robot|tojson }}",
    "{{ 'a'|format(1) }}",
    "{{ robot.devices|max(attribute='x') }}",
    "{{ self.foo() }}",
    "{{ 2**99999 }}",
    "{{ robot.devices|random }}",
    "{% import 'x' as %}",
    "{{ robot.name|attr('nam') }}",
    "{% extends 'nope' %}",
    "{% block a %}{% endblock %}{% block a %}{% endblock %}",
    "{{ robot.devices < 3 }}",
    "{{ 'a' is divisibleby 2 }}",
    "{% if robot.devices[0].kind is in 3 %}{% endif %}",
    "{{ - 'a' }}",
    "{{ robot.devices|unique(attribute='q')|list }}",
    "{{ cycler() }}",
    "{{ 'x'|indent('a', 3, 4, 5) }}",
    "{{ 'x' if }}",
    "{{ robot.devices[:'a'] }}",
    "{{ dict(1) }}",
    "{{ namespace(a=1).b }}",
    "{{ caller() }}",
    "{# open",
    "\n\n{{ x",
    " {{ 'abc }}",
    "{{ a b }}",
    "{{ a..b }}",
    "{{ robot.devices|slice(0)|list }}",
    "{{ 'a'|truncate('b') }}",
    "{{ varargs }}",
    "{{ super() }}",
    "{{ robot.devices|tojson }}",
    "{{ robot.devices|xmlattr }}",
    "{{ 'a'|wordwrap(0) }}",
    "{{ robot.name ~ 1 }}",
    "{{ robot.name in robot.devices[0] }}",
    "{% with %}",
    "{% do 1 %}",
    "{{ 1 | filesizeformat('x','y','z') }}",
)
OF_PYTHON = re.compile(
    r"object|argument|iterable|subscript|attribute|operand|positional|__|do_\w|"
    r"NoneType|\b(str|int|tuple|dict|Device|Robot|Unescaped|Namespace|TemplateReference)\b"
)


def fault(folder: Path, template: str) -> str:
    (folder / "trial").mkdir()
    (folder / "trial/target.yaml").write_text(DESCRIPTION)
    (folder / "trial/list.j2").write_text(template)
    with pytest.raises(UnusableTarget) as caught:
        render(load([folder])["trial"], Scene((HERON,), CATALOGUE, {}), "out/heron.txt")
    return str(caught.value)


@pytest.mark.parametrize("template", WRONG)
def test_what_is_wrong_is_told_with_its_line_and_in_plain_words(tmp_path: Path, template: str):
    said = fault(tmp_path, f"\n{template}")
    what, excerpt = said.split("\n")[:2]
    line = len(template.split("\n")) + 1
    assert what.startswith(f"trial/list.j2:{line}: target trial, robot heron: ")
    assert excerpt == f"  {line:>3} | {template.strip().split(chr(10))[-1]}"
    told = what.partition("robot heron: ")[2]
    assert not OF_PYTHON.search(re.sub(r'"[^"]*"|{[%{#].*?[%}#]}', "", told)), told
    assert "this cannot be done" not in told
    near = re.search('did you mean "?(\\w+)', told)
    assert near is None or near[1] not in re.findall(r"\w+", template)


@pytest.mark.parametrize(
    ("template", "told"),
    [
        ("{{ 1 / 0 }}", "a number is divided by zero"),
        ("{{ 'a' + 1 }}", "Put texts and numbers together with ~: {{ ... ~ ... }}."),
        ("{{ 'a' | replace }}", "Write {{ ... | replace(old, new) }}."),
        ("{{ robot.mark | indent(1, 2, 3, 4) }}", "told 4 things in brackets and takes 3"),
        ("{{ robot.name.upper() }}", "write {{ ... | plain_line | upper }}"),
        ("{{ (robot.devices | first.name) }}", "Write {{ (... | first).name }}, with brackets."),
        ("{{ robot.devices | first.name }}", "Write {{ (... | first).name }}, with brackets."),
        ("{% set robot.x = 1 %}", "only a namespace can be changed"),
        ("{% endif %}", "{% endif %} stands where nothing is open"),
        ("{{ 'a }}", "a quotation mark is not closed\n    1 | {{ 'a }}\n  Write ' where"),
        ("{{ none.x }}", 'none has no "x"'),
        ("{{ robot.name | random }}", "gives another file in each run"),
        ("{{ robot.name } }}", "A value ends with }}, and a {% ends with %}."),
        ("{# open", "a {# is not closed\n    1 | {# open\n  Write #} where it ends."),
        ("{{ 5 | slice(0, 1, 2, 3) | list }}", "takes 2"),
    ],
)
def test_the_way_out_is_told(tmp_path: Path, template: str, told: str):
    assert told in fault(tmp_path, template)
