from __future__ import annotations

from namegen.text.english import is_word


def test_common_words_and_words_of_the_trade_are_known():
    assert all(map(is_word, ["left", "lift", "bow", "row", "servo", "thruster", "encoders"[:-1]]))


def test_slips_lines_of_the_notice_and_tiny_words_are_not():
    assert not any(map(is_word, ["lfit", "thrster", "#", "# Copyright", "", "a", "Left", "left\n"]))
