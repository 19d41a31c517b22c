import pytest

from namegen.targets.spelling import spelling


@pytest.mark.parametrize(
    ("name", "said"),
    [
        ("bowThruster", "capital T"),
        ("netWinchUp", "capital W, capital U"),
        ("IMUHeading", "capitals I M U H"),
        ("rudder", "small letters only"),
        ("arm2", "digit 2"),
        ("arm12", "digits 1 2"),
        ("hull_temp-3", "underscore, hyphen, digit 3"),
        ("hull temp", "blank"),
        ("Größe", "capital G, the sign ö, the sign ß"),
        ("a\u200bb", "U+200B"),
        ("", "small letters only"),
    ],
)
def test_what_is_not_a_small_letter_is_said_in_order(name, said):
    assert spelling(name) == said
