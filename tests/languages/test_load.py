"""A publication's language: its files over each other, CLDR under them, English under all."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

from reportgen.languages import load_language
from reportgen.wording.count import counted
from reportgen.wording.day import day
from reportgen.wording.language import ENGLISH, say, speaking
from reportgen.wording.listing import and_list
from reportgen.wording.sentence import inside
from tests.languages.files import ASKED, french, loaded, refused


def test_english_needs_no_file() -> None:
    for tag in ("en", "en-GB", "EN"):
        assert load_language(None, tag, ASKED) == (ENGLISH, ())


def test_a_language_of_one_file_says_what_it_has_and_the_rest_in_english(tmp_path: Path) -> None:
    language, (finding,) = loaded(tmp_path, "fr", fr=french('  limit.above: "plus de {value}"\n'))
    with speaking(language):
        assert say("limit.above", value="12 g") == "plus de 12 g"
        assert say("limit.below", value="12 g") == "less than 12 g"
    assert finding.severity == "warning"
    assert str(finding.place) == "content/languages/fr.yaml"
    assert f"lacks {len(language.lacking)} of {len(ENGLISH.phrases)} phrases" in finding.says
    assert "limit.above" not in language.lacking
    assert "limit.below" in language.lacking


def test_a_language_without_a_file_is_said_in_english_with_one_finding_that_says_so() -> None:
    language, (finding,) = load_language(None, "eo", ASKED)
    assert language.phrases is ENGLISH.phrases
    assert (finding.severity, finding.rule, finding.place) == ("warning", "no-language", ASKED)
    assert "content/languages/eo.yaml" in finding.do


def test_words_of_the_author_run_their_own_way_even_without_a_file() -> None:
    assert load_language(None, "fa", ASKED)[0].direction == "rtl"
    assert load_language(None, "eo", ASKED)[0].direction == "ltr"


def test_a_region_takes_what_it_lacks_from_its_language(tmp_path: Path) -> None:
    own = "language: de-AT\nname: Österreichisches Deutsch\nphrases:\n  page.yes: jo\n"
    language, _ = loaded(tmp_path, "de-AT", de_AT=own)
    assert language.name == "Österreichisches Deutsch"
    assert language.phrases["page.yes"] == "jo"
    assert language.phrases["page.no"] == "nein"
    assert load_language(None, "de-CH", ASKED)[0].tag == "de"


def test_an_authors_file_lies_over_the_one_that_came_with_the_program(tmp_path: Path) -> None:
    own = "language: de\nname: Deutsch\nphrases:\n  page.yes: jawohl\n"
    language, _ = loaded(tmp_path, "de", de=own)
    assert language.phrases["page.yes"] == "jawohl"
    assert language.phrases["page.no"] == "nein"
    assert language.small_numbers[2] == "zwei"


def test_english_may_be_said_otherwise_as_well(tmp_path: Path) -> None:
    own = "language: en\nname: English\nphrases:\n  page.contents.index: The answer\n"
    language, findings = loaded(tmp_path, "en-GB", en=own)
    assert findings == ()
    assert language.phrases["page.contents.index"] == "The answer"
    with speaking(language):
        assert and_list(["a", "b", "c"]) == "a, b and c"
        assert day("2026-05-02", "2026-05-02", "") == "2 May 2026"
        assert counted("pass", 2) == "two passes"
        assert inside("Gas burned") == "gas burned"


def test_a_file_may_be_based_on_another(tmp_path: Path) -> None:
    own = "language: nds\nname: Plattdüütsch\nbased on: de\nphrases:\n  page.no: nee\n"
    language, _ = loaded(tmp_path, "nds", nds=own)
    assert (language.phrases["page.no"], language.phrases["page.yes"]) == ("nee", "ja")


def test_titles_keep_their_capital_unless_the_file_says_otherwise(tmp_path: Path) -> None:
    french_titles = french("", "titles inside a sentence: without their capital\n").removesuffix("phrases:\n")
    language, _ = loaded(tmp_path, "fr", fr=french_titles)
    with speaking(language):
        assert inside("Gaz brûlé") == "gaz brûlé"
    with speaking(load_language(None, "de", ASKED)[0]):
        assert inside("Verbranntes Gas") == "Verbranntes Gas"


def test_two_states_of_a_file_are_told_apart(tmp_path: Path) -> None:
    one, _ = loaded(tmp_path / "one", "fr", fr=french("  page.yes: oui\n"))
    same, _ = loaded(tmp_path / "two", "fr", fr=french("  page.yes: oui\n"))
    other, _ = loaded(tmp_path / "three", "fr", fr=french("  page.yes: mais oui\n"))
    assert one.digest == same.digest != other.digest


def test_a_base_that_is_not_there_is_named(tmp_path: Path) -> None:
    finding = refused(tmp_path, "fr", fr=french("  page.yes: oui\n", "based on: dee\n"))["no-language"]
    assert (str(finding.place), finding.do) == ("content/languages/fr.yaml:3:11", "Did you mean “de”?")


def test_languages_based_on_each_other_are_refused(tmp_path: Path) -> None:
    files = {"fr": french("", "based on: it\n"), "it": "language: it\nname: italiano\nbased on: fr\n"}
    files["fr"] = files["fr"].removesuffix("phrases:\n")
    finding = refused(tmp_path, "fr", **files)["language-ring"]
    assert str(finding.place) == "content/languages/it.yaml:3:11"


def test_a_language_based_on_itself_is_refused(tmp_path: Path) -> None:
    own = french("", "based on: fr\n").removesuffix("phrases:\n")
    finding = refused(tmp_path, "fr", fr=own)["language-ring"]
    assert str(finding.place) == "content/languages/fr.yaml:3:11"


def test_dates_are_written_as_the_language_writes_them(tmp_path: Path) -> None:
    # CLDR 45, German, date formats, long: "d. MMMM y"; Arabic: "d MMMM y"
    with speaking(load_language(None, "de", ASKED)[0]):
        assert day("2026-05-02", "2026-05-02", "") == "2. Mai 2026"
    with speaking(load_language(None, "ar", ASKED)[0]):
        assert day("2026-05-02", "2026-05-02", "") == "2 مايو 2026"
    own = french('  day: "{day} {month} {year}"\n  month.5: floréal\n')
    language, _ = loaded(tmp_path, "fr", fr=own)
    assert language.day is None
    with speaking(language):
        assert day("2026-05-02", "2026-05-02", "") == "2 floréal 2026"
        assert day("2026-06-02", "2026-06-02", "") == "2 juin 2026"  # CLDR 45, French, months, format, wide


def test_english_never_loads_what_other_languages_need() -> None:
    told = """
import sys
from reportgen.finding import Place
from reportgen.languages import load_language
load_language(None, "en-GB", Place("content/publication.yaml"))
print("babel" in sys.modules)
load_language(None, "de", Place("content/publication.yaml"))
print("babel" in sys.modules)
"""
    done = subprocess.run([sys.executable, "-c", told], capture_output=True, text=True, check=True)
    assert done.stdout.split() == ["False", "True"]
