"""What is wrong with a language file is told with its line, and what to do."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.languages.files import french, loaded, refused


def test_a_key_that_is_nearly_one_is_recognised(tmp_path: Path) -> None:
    finding = refused(tmp_path, "fr", fr=french("  limit.abve: plus\n"))["unknown-phrase"]
    assert str(finding.place) == "content/languages/fr.yaml:4:3"
    assert finding.do == "Did you mean “limit.above”?"


def test_a_key_like_no_other_is_told_as_well(tmp_path: Path) -> None:
    finding = refused(tmp_path, "fr", fr=french("  zzzz: plus\n"))["unknown-phrase"]
    assert finding.do.startswith("Take it out")


def test_a_gap_the_program_would_not_fill_is_told(tmp_path: Path) -> None:
    finding = refused(tmp_path, "fr", fr=french('  limit.above: "plus de {value} {valeur}"\n'))["unknown-gap"]
    assert str(finding.place) == "content/languages/fr.yaml:4:16"
    assert finding.do == "Did you mean {value}?"


def test_a_gap_left_out_is_told_with_the_english(tmp_path: Path) -> None:
    finding = refused(tmp_path, "fr", fr=french("  limit.above: plus\n"))["gap-missing"]
    assert "doesn't say {value}" in finding.says
    assert "more than {value}" in finding.why


def test_a_brace_without_partner_is_told(tmp_path: Path) -> None:
    assert "broken-gap" in refused(tmp_path, "fr", fr=french('  limit.above: "plus de {value"\n'))


@pytest.mark.parametrize("words", ["{value!r}", "{value:>9}", "{value.real}", "{value[0]}", "{}", "{0}"])
def test_a_gap_holds_a_name_and_nothing_else(tmp_path: Path, words: str) -> None:
    found = refused(tmp_path, "fr", fr=french(f'  limit.above: "{words}"\n'))
    assert {"broken-gap", "unknown-gap"} & set(found)


def test_the_number_may_be_said_in_a_word_of_the_form(tmp_path: Path) -> None:
    language, _ = loaded(tmp_path, "fr", fr=french("  count.time:\n    one: une fois\n    other: '{count} fois'\n"))
    assert language.phrases["count.time"] == {"one": "une fois", "other": "{count} fois"}


def test_plural_forms_that_the_language_needs_are_asked_for_with_their_numbers(tmp_path: Path) -> None:
    polish = "language: pl\nname: polski\nphrases:\n  count.time:\n    one: raz\n    other: '{count} razy'\n"
    finding = refused(tmp_path, "pl", pl=polish)["plural-form-missing"]
    assert "lacks forms few, many" in finding.says
    assert "“few” stands for 2, 3, 4 …" in finding.why  # CLDR, Polish: few is n % 10 = 2..4 and n % 100 != 12..14
    assert str(finding.place) == "content/languages/pl.yaml:4:3"


def test_one_form_is_not_enough_where_numbers_decide(tmp_path: Path) -> None:
    assert "plural-form-missing" in refused(tmp_path, "fr", fr=french("  count.time: '{count} fois'\n"))


def test_one_form_is_enough_where_the_language_has_but_one(tmp_path: Path) -> None:
    japanese = "language: ja\nname: 日本語\nphrases:\n  count.time: '{count}回'\n"
    language, _ = loaded(tmp_path, "ja", ja=japanese)  # CLDR, Japanese: other alone
    assert language.phrases["count.time"] == {"other": "{count}回"}


def test_a_form_of_no_language_is_told(tmp_path: Path) -> None:
    forms = "  count.time:\n    one: une fois\n    couple: deux fois\n    other: '{count} fois'\n"
    finding = refused(tmp_path, "fr", fr=french(forms))["no-plural-form"]
    assert str(finding.place) == "content/languages/fr.yaml:6:5"
    assert "one, other" in finding.do


def test_forms_where_no_number_decides_are_told(tmp_path: Path) -> None:
    assert "phrase-without-number" in refused(tmp_path, "fr", fr=french("  page.yes:\n    one: oui\n    other: oui\n"))


def test_one_key_twice_is_told_with_both_lines(tmp_path: Path) -> None:
    finding = refused(tmp_path, "fr", fr=french("  page.yes: oui\n  page.yes: si\n"))["duplicate-name"]
    assert "first in line 4" in finding.says
    assert finding.place.line == 5


def test_what_is_no_yaml_is_told_with_its_line(tmp_path: Path) -> None:
    assert refused(tmp_path, "fr", fr=french('  page.yes: "oui\n'))["broken-yaml"].place.line >= 4


def test_a_file_named_for_another_language_is_told(tmp_path: Path) -> None:
    finding = refused(tmp_path, "fr", fr="language: it\nname: italiano\n")["language-and-file"]
    assert finding.do == "Write `language: fr`, or rename the file."


def test_a_tag_that_is_none_is_told(tmp_path: Path) -> None:
    assert "wrong-value" in refused(tmp_path, "fr", fr="language: français\nname: français\n")


def test_a_language_that_cldr_does_not_know_is_told(tmp_path: Path) -> None:
    assert "unknown-language" in refused(tmp_path, "qx", qx="language: qx\nname: Nowhere\n")


def test_every_mistake_of_a_file_is_found_in_one_run(tmp_path: Path) -> None:
    found = refused(tmp_path, "fr", fr=french("  limit.abve: plus\n  limit.below: moins\n  page.yes: {one: oui}\n"))
    assert {"unknown-phrase", "gap-missing", "phrase-without-number"} <= set(found)


def test_a_blank_phrase_is_one_that_lacks(tmp_path: Path) -> None:
    """A file filled in bit by bit holds keys without words; a page says those in English and is never blank."""
    forms = "  count.time:\n    one: une fois\n    other:\n"
    language, (finding,) = loaded(tmp_path, "fr", fr=french('  page.yes: ""\n  page.no:\n  limit.above:  \n' + forms))
    assert {"page.yes", "page.no", "limit.above", "count.time"} <= set(language.lacking)
    assert (language.phrases["page.yes"], finding.rule) == ("yes", "phrases-missing")


def test_a_phrase_that_english_leaves_blank_may_be_blank(tmp_path: Path) -> None:
    language, _ = loaded(tmp_path, "fr", fr=french('  page.unit.none: ""\n'))
    assert "page.unit.none" not in language.lacking
