import pytest

from namegen.targets.unescaped import Unescaped, UnescapedText, raw


@pytest.mark.parametrize(
    "use",
    [
        str,
        lambda text: f"{text}",
        lambda text: "%s" % text,  # noqa: UP031
        "{}".format,
        "".__add__,
        lambda text: "".join([text]),
        list,
    ],
)
def test_nothing_makes_a_string_of_it(use):
    with pytest.raises((UnescapedText, TypeError)):
        use(Unescaped("bowThruster"))


def test_its_representation_does_not_show_it():
    assert "bow" not in repr([Unescaped("bow")])


def test_it_compares_with_texts_and_its_like():
    bow = Unescaped("bow")
    assert bow == "bow" == raw(bow)
    assert bow == Unescaped("bow") and hash(bow) == hash("bow")
    assert sorted([Unescaped("b"), Unescaped("a")]) == ["a", "b"]
    assert bow and not Unescaped("") and len(bow) == 3


def test_an_escape_takes_text_alone():
    with pytest.raises(TypeError, match="an escape takes text, not a number"):
        raw(1)
