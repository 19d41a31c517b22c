"""Whatever stands in a template: a text comes of it or a fault is told, and soon."""

from __future__ import annotations

import time
from collections.abc import Iterator
from pathlib import Path

import pytest
from hypothesis import HealthCheck, example, given, settings
from hypothesis import strategies as st

from namegen.errors import UnusableTarget
from namegen.targets import rendering
from namegen.targets.scene import Scene
from namegen.targets.shelf import read_target
from targets.boats import CATALOGUE, HERON

MARKS = (
    "{{", "}}", "{%", "%}", "{#", "#}", " for one in robot.devices ", " endfor ", " if ", " else ",
    " endif ", " set x = ", " macro m(a) ", " endmacro ", " call ", " block b ", " recursive ",
    " extends 'it.j2' ", " include 'it.j2' ", " import 'it.j2' as i ", "{% for a in ",
    "{% endfor %}", "robot.kinds %}", "{{ one.name|json_value }}", "\n",
)  # fmt: skip
WORDS = (
    "robot", "robot.devices", "robot.setups", "device", "one", "one.name", "one.reversed", "m(m)",
    "loop", "loop(robot.devices)", "range(99999)", "range(10 ** 9)", "10 ** 9", "'x' * 10 ** 9",
    "|json_value", "|plain_line", "|lines(0)", "|lines(9)", "|map('upper')", "|groupby('kind')",
    "|batch(0)", "|slice(0)", "|sum", "|pprint", "|tojson", "|attr('__class__')", ".__class__",
    "self", " is foo", " is none", "none", "true", "1 // 0", "|", "~", "*", "**", "(", ")", "[",
    "]", ".", ",", " ", "'", '"', "\\", "\0", "\u2028", "é",
)  # fmt: skip
EXPRESSIONS = st.lists(st.sampled_from(WORDS), max_size=6).map(
    lambda words: ["{% for one in robot.devices %}{{ ", *words, " }}{% endfor %}"]
)


@pytest.fixture(scope="module")
def folder(tmp_path_factory) -> Iterator[Path]:
    folder = tmp_path_factory.mktemp("fuzz") / "trial"
    folder.mkdir()
    (folder / "target.yaml").write_text(
        "model: 1\ndescription: A trial.\nper: robot\ntemplate: it.j2\nescapes: [json_value]\n"
    )
    yield folder


@settings(
    max_examples=300,
    deadline=None,
    suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow],
)
@example(["{% for a in ", "range(99999)", "%}"] * 3 + ["{% endfor %}"] * 3)
@example(["{{"] + ["("] * 3000 + [")"] * 3000 + ["}}"])
@example(["{%", " if ", "true", "%}"] * 60 + ["{%", " endif ", "%}"] * 60)
@example(["{%", " include 'it.j2' ", "%}"])
@given(st.lists(st.sampled_from(MARKS + WORDS), max_size=25) | EXPRESSIONS)
def test_a_text_or_a_fault(folder: Path, pieces: list[str]):
    (folder / "it.j2").write_text("".join(pieces), encoding="utf-8", newline="")
    target = read_target(folder)
    rendering._environment.cache_clear()
    start = time.process_time()
    try:
        text = rendering.render(target, Scene((HERON,), CATALOGUE), "out/heron.txt").text
    except UnusableTarget as error:
        assert error.where.startswith("trial/")
        assert "namegen.targets" not in str(error) and " object at 0x" not in str(error)
    else:
        assert text.endswith("\n")
    assert time.process_time() - start < 5
