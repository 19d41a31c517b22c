from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from namegen.text.words import convert, follows, join, split

CASED = st.text("abcdefghijklmnopqrstuvwxyzéñøдж", min_size=2, max_size=6)
WORDS = st.lists(
    st.builds(
        lambda word, digits: word + digits, CASED, st.from_regex(r"[0-9]{0,2}", fullmatch=True)
    ),
    min_size=1,
    max_size=4,
)


@pytest.mark.parametrize(
    ("name", "words"),
    [
        ("bowThruster", ["bow", "Thruster"]),
        ("bow_thruster", ["bow", "thruster"]),
        ("tank-test", ["tank", "test"]),
        ("Net Winch", ["Net", "Winch"]),
        ("IMUHeading", ["IMU", "Heading"]),
        ("bowIMU", ["bow", "IMU"]),
        ("IMU2Heading", ["IMU2", "Heading"]),
        ("arm2Motor10", ["arm2", "Motor10"]),
        ("motorX", ["motor", "X"]),
        ("motorX2", ["motor", "X2"]),
        ("hull_temp_3", ["hull", "temp", "3"]),
        ("2ndWinch", ["2", "nd", "Winch"]),
        ("héllo", ["héllo"]),
        ("ÉcranGauche", ["Écran", "Gauche"]),
        ("écranÉtrave", ["écran", "Étrave"]),
        ("моторЛевый", ["мотор", "Левый"]),
        ("水温", ["水温"]),
        ("水温2Sensor", ["水温2", "Sensor"]),
        ("cafe\u0301Lamp", ["cafe\u0301", "Lamp"]),
        ("", []),
        ("__", []),
    ],
)
def test_names_are_split_at_capitals_and_separators(name, words):
    assert split(name) == words


def test_words_are_joined_in_every_case():
    words = ["bow", "Thruster2"]
    assert [
        join(words, case)
        for case in (
            "camelCase",
            "PascalCase",
            "snake_case",
            "UPPER_SNAKE",
            "kebab-case",
            "kPascal",
        )
    ] == [
        "bowThruster2",
        "BowThruster2",
        "bow_thruster2",
        "BOW_THRUSTER2",
        "bow-thruster2",
        "kBowThruster2",
    ]
    assert join([], "camelCase") == ""


@given(WORDS)
def test_a_camel_case_name_survives_the_way_through_snake_case(words):
    camel = join(words, "camelCase")
    assert convert(convert(camel, "snake_case"), "camelCase") == camel


@given(WORDS)
def test_digits_stay_with_the_word_before_them_in_every_style(words):
    for case in ("camelCase", "PascalCase", "snake_case", "kebab-case"):
        assert [word.lower() for word in split(join(words, case))] == words


@given(st.text())
def test_no_letter_and_no_digit_is_lost(name):
    kept = "".join(split(name))
    assert [c for c in kept if c.isalnum()] == [c for c in name if c.isalnum()]


@given(st.text(st.characters(max_codepoint=0x24F)))
def test_splitting_what_was_joined_with_underscores_gives_the_words_again(name):
    words = split(name)
    assert [piece for word in words for piece in split(word)] == split("_".join(words))


@pytest.mark.parametrize(
    ("name", "styles"),
    [
        ("bow", {"camelCase", "snake_case", "kebab-case"}),
        ("bowThruster2", {"camelCase"}),
        ("bowIMU", {"camelCase"}),
        ("BowThruster", {"PascalCase"}),
        ("IMUHeading", {"PascalCase"}),
        ("bow_thruster_2", {"snake_case"}),
        ("bow-thruster", {"kebab-case"}),
        ("bow_Thruster", set()),
        ("bow__thruster", set()),
        ("_bow", set()),
        ("bow_", set()),
        ("2bow", set()),
        ("bow thruster", set()),
        ("écranÉtrave", {"camelCase"}),
        ("水温", {"camelCase", "PascalCase", "snake_case", "kebab-case"}),
        ("", set()),
    ],
)
def test_a_name_follows_its_styles_and_no_other(name, styles):
    every = ("camelCase", "snake_case", "PascalCase", "kebab-case")
    assert {style for style in every if follows(name, style)} == styles
    assert follows(name, "any")


@given(WORDS.filter(lambda words: words[0][0].isalpha()))
def test_what_is_joined_in_a_style_follows_it(words):
    for style in ("camelCase", "snake_case", "PascalCase", "kebab-case"):
        assert follows(join(words, style), style)
