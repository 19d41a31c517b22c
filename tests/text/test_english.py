from __future__ import annotations

from namegen.text.english import is_formed, is_word


def test_common_words_and_words_of_the_trade_are_known():
    assert all(map(is_word, ["left", "lift", "bow", "row", "servo", "thruster", "encoders"[:-1]]))


def test_slips_lines_of_the_notice_and_tiny_words_are_not():
    assert not any(map(is_word, ["lfit", "thrster", "#", "# Copyright", "", "a", "Left", "left\n"]))


def test_a_word_with_an_ending_or_a_syllable_before_it_is_formed():
    assert all(map(is_formed, ["lift", "lifted", "unlink", "retrying", "naming", "stopped"]))
    assert all(map(is_formed, ["happiness", "handler", "makers", "decoders"]))


def test_slips_and_endings_that_english_puts_otherwise_are_not_formed():
    assert not any(map(is_formed, ["lfited", "motpr", "ing", "un", "", "s", "ser", "bownes"]))
