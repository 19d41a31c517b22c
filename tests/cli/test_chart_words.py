"""What a person is asked about a chart, and what the answers lead to."""

from __future__ import annotations

import click
import pytest

from namegen.cli.chart_words import ask_kind
from namegen.loading.charts.chart import UnsureKind

PROP = UnsureKind("prop", ("line 2",), "motor")


@pytest.mark.parametrize(
    ("typed", "sure", "kind"),
    [
        ("motor", None, "motor"),
        ("-", None, None),
        ("net winch", None, "net-winch"),
        ("moter", False, "motor"),
        ("moter", True, "moter"),
    ],
)
def test_an_answer_that_is_near_a_kind_is_asked_back(
    monkeypatch: pytest.MonkeyPatch, typed: str, sure: bool | None, kind: str | None
):
    asked = []
    monkeypatch.setattr(click, "prompt", lambda *_, **__: typed)
    monkeypatch.setattr(click, "confirm", lambda text, **_: asked.append(text) or sure)
    assert ask_kind(PROP) == kind
    assert bool(asked) == (sure is not None)


def test_an_option_that_makes_a_new_kind_says_so(namegen, tmp_path):
    (tmp_path / "heron.csv").write_text("Name,Port,Kind\nbow,M1,prop\nnet,M2,reel\n")
    options = ("--kind", "prop=moter", "--kind", "reel=winder")
    done = namegen("new", "boats", "--from", "heron.csv", *options, cwd=tmp_path)
    assert (
        '"prop" is taken for the kind moter, a kind of its own (was "motor" meant?)' in done.stdout
    )
    assert '"reel" is taken for the kind winder, a kind of its own\n' in done.stdout
