"""A template gets nothing out unescaped, and its faults are told with their place."""

from __future__ import annotations

from pathlib import Path

import pytest

from namegen.errors import UnusableTarget
from namegen.targets.rendering import render
from namegen.targets.scene import Scene
from namegen.targets.shelf import load
from targets.boats import CATALOGUE, HERON, robot

HEAD = "model: 1\ndescription: A trial.\ntemplate: it.j2\n"


@pytest.fixture
def rendered(tmp_path: Path):
    """Return a function that renders a template given as text."""

    def text_of(template: str, more: str = "per: robot\n", **options: object) -> str:
        folder = tmp_path / "trial"
        folder.mkdir(exist_ok=True)
        (folder / "target.yaml").write_text(HEAD + more)
        (folder / "it.j2").write_text(template)
        scene = Scene((HERON,), CATALOGUE, options)
        return render(load([tmp_path])["trial"], scene, "out/heron.txt").text

    return text_of


ESCAPED = "per: robot\nescapes: [json_value]\n"


@pytest.mark.parametrize(
    "leak",
    [
        "{{ robot.name }}",
        "{{ robot.name ~ 'x' }}",
        "{{ 'x' ~ robot.name }}",
        "{{ '%s' % robot.name }}",
        "{{ '%s' | format(robot.name) }}",
        "{{ '{}'.format(robot.name) }}",
        "{{ robot.name | string }}",
        "{{ robot.name | upper }}",
        "{{ robot.name | trim }}",
        "{{ robot.name | replace('a', 'b') }}",
        "{{ [robot.name] | join }}",
        "{{ robot.name | list }}",
        "{{ robot.name | tojson }}",
        "{{ robot.name | escape }}",
        "{{ robot.name | e | safe }}",
        "{{ {'x': robot.name} | xmlattr }}",
        "{{ robot.name | urlencode }}",
        "{{ robot.name | wordwrap }}",
        "{{ robot.name._text }}",
        "{{ robot.name['_text'] }}",
        "{{ robot.name | attr('_text') }}",
        "{{ robot._parts.manifest.robot }}",
        "{{ robot.devices | map(attribute='name') | join(' ') }}",
        "{% for letter in robot.name %}{{ letter }}{% endfor %}",
        "{% set x %}{{ robot.name }}{% endset %}{{ x }}",
        "{% macro m(x) %}{{ x }}{% endmacro %}{{ m(robot.name) }}",
        "{% filter upper %}{{ robot.name }}{% endfilter %}",
    ],
)
def test_manifest_text_cannot_leak(rendered, leak):
    with pytest.raises(UnusableTarget) as caught:
        rendered(leak)
    assert "trial" in str(caught.value)
    assert "heron" not in str(caught.value).replace("robot heron", "")


def test_showing_a_whole_device_shows_no_manifest_text(rendered):
    text = rendered("{{ robot.devices[0] | pprint }}")
    assert "BOW" not in text.upper()


def test_escaped_text_comes_through(rendered):
    assert rendered("{{ robot.name | json_value }}", ESCAPED) == '"heron"\n'


def test_text_may_be_compared_counted_and_sorted(rendered):
    template = (
        "{% if robot.name == 'heron' and robot.title %}{{ robot.name | length }}{% endif %} \n"
        "{{ (robot.devices | sort(attribute='name') | first).name | json_value }}\n"
    )
    assert rendered(template, ESCAPED) == '5 \n"bilgeLevel"\n'


@pytest.mark.parametrize("value", ["true", "none", "1 > 0", "robot", "robot.devices", "range"])
def test_values_without_a_spelling_are_refused(rendered, value):
    with pytest.raises(UnusableTarget, match="has no spelling of its own"):
        rendered("{{ " + value + " }}")


TURNS, END = "{% for one in range(99999) %}", "{% endfor %}"


@pytest.mark.parametrize(
    ("template", "place", "complaint"),
    [
        ("one\n{% if %}\n", "trial/it.j2:2", "Expected an expression"),
        ("one\n\n{{ gone }}\n", "trial/it.j2:3", '"gone" is not defined here'),
        ("one\n{{ robot.colour }}\n", "trial/it.j2:2", 'a robot has no "colour"'),
        ("one\n{{ robot.mark | python_strng }}\n", "trial/it.j2:2", "did you mean python_string?"),
        ("one\n{{ robot.name }}\n", "trial/it.j2:2", "without an escape"),
        ("one\n{{ robot.name + 'x' }}\n", "trial/it.j2:2", "without an escape"),
        ("one\n{{ 1 // 0 }}\n", "trial/it.j2:2", "a number is divided by zero"),
        ("{% include 'gone.j2' %}\n", "trial/", "gone.j2"),
        ("{% include '../../secret' %}\n", "trial/", "secret"),
        ("{{ ''.__class__.__mro__ }}\n", "trial/it.j2:1", "__class__"),
        ("{{ robot.devices.append(1) }}\n", "trial/it.j2:1", "append"),
        ("{{ range(10000000) | length }}\n", "trial/it.j2:1", "too big"),
        ("{{ range(10 ** 30) | length }}\n", "trial/it.j2:1", "too big"),
        ("{% macro m() %}{{ m() }}{% endmacro %}{{ m() }}\n", "trial/it.j2:1", "without end"),
        (f"{TURNS}{TURNS}x{END}{END}", "trial/it.j2:1", "loops take more than"),
        (f"{TURNS}{{% set a = 1 %}}{TURNS}{END}{END}", "trial/it.j2:1", "loops take more than"),
        ("{{ 'x' * 10 ** 9 }}\n", "trial/it.j2:1", "more than 10,000,000 characters"),
        ("{{ 10 ** (10 ** 10) }}\n", "trial/it.j2:1", "a power is larger"),
        (f"{TURNS}{{{{ 'x' * 1000 }}}}{END}", "trial/", "more than 10,000,000 characters"),
    ],
)
def test_a_fault_is_told_with_template_line_target_and_robot(rendered, template, place, complaint):
    with pytest.raises(UnusableTarget) as caught:
        rendered(template)
    assert caught.value.where.startswith(place)
    assert complaint in caught.value.what
    assert caught.value.what.startswith("target trial, robot heron: ")


@pytest.mark.parametrize(
    ("wrong", "what", "remedy"),
    [
        ("{{ device.nmae | json_value }}", 'a device has no "nmae"; did you mean "name"?',
         "It has: name, spelling, kind,"),
        ("{{ device.ports[0].lable }}", 'did you mean "label"?', "It has: controller, type,"),
        ("{{ devise.name | json_value }}", 'did you mean "device"?', "Defined here: device,"),
        ("{{ kind.name | json_value }}", '"kind" is not defined here',
         "Write {% for kind in robot.kinds %} before."),
        ("{{ device.name.text }}", 'text of the manifest has no "text"', "explain target"),
        ("{{ options.crow }}", 'no option "crow"; did you mean "crew"?',
         "target.yaml declares: crew."),
        ("{{ robot.kinds['motor'] }}", 'a list has no "motor"', "Go through it with {% for"),
        ("{{ robot.kinds[99] }}", "a list of 7 has no element 99", ""),
        ("{{ device.name | plain_line }}", 'the escape "plain_line" is not listed in target.yaml',
         "Write `escapes: [json_value, plain_line]` into trial/target.yaml."),
        ("{{ device.name | json }}", 'there is no filter "json"; did you mean json_value?',
         "target.yaml lists json_value."),
        ("{{ device.name | uper }}", "did you mean upper?", ""),
        ("{% if device is defned %}{% endif %}", 'did you mean "defined"?', ""),
        ("{% fro one in robot.kinds %}", 'there is no tag "fro"', "The tags: for,"),
        ("{% endfro %}", 'did you mean "endfor"?', "The tags: for,"),
        ("{{ device name }}", '"name" stands where "}}" should', ""),
        ("{% for one robot.kinds %}{% endfor %}", '"robot" stands where "in" should', ""),
        ("{{ }}", "Expected an expression, got '}}'", ""),
        ("{{ device.name ", "a {{ is not closed", "Write }} where it ends."),
        ("{% if device", "a {% is not closed", "Write %} where it ends."),
        ("{% if device %}", "a {% if %} is not closed", "Write {% endif %} where it ends."),
        ("{{ device.name }}", "put out without an escape", "such as {{ ... | json_value }}."),
        ("{{ device.reversed }}", "true or false has no spelling of its own", ""),
        ("{% include 'iit.j2' %}", 'did you mean "it.j2"?', "It has: it.j2."),
        ("{% from 'it.j2' import gone %}", '"robot" is not defined in a template that is imported',
         "with context"),
    ],
)  # fmt: skip
def test_what_is_wrong_is_told_with_the_right_word_and_the_line(rendered, wrong, what, remedy):
    crew = ESCAPED + 'options: {crew: {type: text, help: "Who sails.", default: ""}}\n'
    end = "" if "is not closed" in what else END
    with pytest.raises(UnusableTarget) as caught:
        rendered(f"{{% for device in robot.devices %}}\n{wrong}\n{end}", crew)
    assert what in caught.value.what
    assert remedy in caught.value.remedy
    if end and "imported" not in what:
        assert caught.value.remedy.startswith(f"  2 | {wrong}".rstrip())
    assert not any(word in str(caught.value) for word in ("object", "namegen.targets", "Jinja"))


def test_a_loop_goes_through_what_jinja2_lets_it_go_through(rendered):
    template = (
        "{% for one in range(3) if one %}{{ loop.index }}/{{ loop.length }}{% else %}no{% endfor %}"
        "{% for key, value in {'a': 2}.items() %}{{ key }}{{ value }}{% endfor %}"
        "{% for part in [[[], []], []] recursive %}<{{ loop(part) }}>{% endfor %}"
        "{% for kind in robot.kinds | map(attribute='type_name') %}{{ loop.index0 }}{% endfor %}"
        "{% for nil in [] %}{% else %}none{% endfor %}{{ 3 * 2 }}{{ 'ab' * 2 }}{{ 2 ** 10 }}\n"
    )
    assert rendered(template) == "1/22/2a2<<><>><>0123456none6abab1024\n"


def test_a_fault_in_an_included_template_is_told_there(rendered, tmp_path):
    (tmp_path / "trial").mkdir()
    (tmp_path / "trial" / "part.j2").write_text("\n{{ gone }}\n")
    with pytest.raises(UnusableTarget) as caught:
        rendered("{% include 'part.j2' %}")
    assert caught.value.where == "trial/part.j2:2"


def test_a_fault_in_a_folder_of_templates_is_told_there(rendered, tmp_path):
    (tmp_path / "trial" / "parts").mkdir(parents=True)
    (tmp_path / "trial" / "parts" / "part.j2").write_text("\n{{ gone }}\n")
    with pytest.raises(UnusableTarget) as caught:
        rendered("{% include 'parts/part.j2' %}")
    assert caught.value.where == "trial/parts/part.j2:2"
    assert caught.value.remedy.startswith("  2 | {{ gone }}")


def test_a_template_that_is_not_utf_8_is_told(rendered, tmp_path):
    (tmp_path / "trial").mkdir()
    (tmp_path / "trial" / "part.j2").write_bytes(b"caf\xe9")
    with pytest.raises(UnusableTarget, match="is not saved as UTF-8") as caught:
        rendered("{% include 'part.j2' %}")
    assert caught.value.remedy.endswith("Save it as UTF-8 in your editor.")


def test_a_byte_order_mark_of_a_template_does_not_reach_the_file(rendered, tmp_path):
    """Some editors put one in front; javac takes no file that begins with it."""
    (tmp_path / "trial").mkdir()
    (tmp_path / "trial" / "part.j2").write_bytes(b"\xef\xbb\xbfpart\n")
    assert rendered("{% include 'part.j2' %}\n") == "part\n"


def test_an_unknown_escape(rendered):
    with pytest.raises(UnusableTarget, match="there is no escape java_nonsense"):
        rendered("", "per: robot\nescapes: [java_nonsense]\n")


OPTIONS = """\
per: robot
escapes: [json_value]
options:
  crew: {type: text, help: "Who sails.", default: "{robot} {Robot} {stem} {else}"}
  code: {type: text, help: "A word.", default: "{Robot}", pattern: "[A-Z][a-z]+"}
  deck: {type: number, help: "Which deck."}
  flag: {type: boolean, help: "Whether.", default: false}
"""
SHOW = (
    "{{ options.crew | json_value }} {{ options.code }} {{ options.deck }} {{ 1 if options.flag }}"
)


def test_options_have_defaults_and_words(rendered):
    assert rendered(SHOW, OPTIONS, deck=2) == '"heron Heron heron {else}" Heron 2 \n'
    assert rendered(SHOW, OPTIONS, deck=2, crew="Ann", code="Bow", flag=True) == '"Ann" Bow 2 1\n'


def test_an_option_without_a_pattern_wants_an_escape(rendered):
    with pytest.raises(UnusableTarget, match="without an escape"):
        rendered("{{ options.crew }}", OPTIONS, deck=1)


@pytest.mark.parametrize(
    ("options", "complaint"),
    [
        ({}, "target trial, option deck: must be given under `with:`"),
        ({"deck": "2"}, "'2' is not a number"),
        ({"deck": True}, "True is not a number"),
        ({"deck": 2, "flag": "yes"}, "'yes' is not a boolean"),
        ({"deck": 2, "code": "bow"}, "'bow' cannot be used"),
        ({"deck": 2, "crow": "Ann"}, "Did you mean crew?"),
    ],
)
def test_options_that_cannot_be_used(rendered, options, complaint):
    with pytest.raises(UnusableTarget) as caught:
        rendered(SHOW, OPTIONS, **options)
    assert complaint in str(caught.value)


def test_one_file_for_the_workspace_sees_all_robots(tmp_path):
    (tmp_path / "fleet").mkdir()
    (tmp_path / "fleet" / "target.yaml").write_text(
        HEAD + "per: workspace\nlanguage: python\nescapes: [python_string]\n"
    )
    (tmp_path / "fleet" / "it.j2").write_text(
        "{% for robot in robots %}\n"
        "{{ robot.type_name }} = {{ robot.name | python_string }}\n"
        "{% endfor %}\n"
    )
    scene = Scene((HERON, robot(name="little-grebe")), CATALOGUE)
    artifact = render(load([tmp_path])["fleet"], scene, "fleet.py")
    assert artifact.text == 'Heron = "heron"\nLittleGrebe = "little-grebe"\n'
    assert artifact.robot is None


def test_the_artifact_says_what_it_is():
    artifact = render(load()["config-csv"], Scene((HERON,), CATALOGUE), "config/heron.csv")
    assert (artifact.path, artifact.target, artifact.robot) == (
        "config/heron.csv",
        "config-csv",
        "heron",
    )


def test_windows_line_ends_in_a_template_do_not_reach_the_file(rendered):
    assert rendered("one\r\ntwo\r\n\r\n\r\n") == "one\ntwo\n"
