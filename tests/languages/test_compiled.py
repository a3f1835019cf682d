"""One workspace compiled in one language after another: nothing of the one before is left."""

from __future__ import annotations

import re
from pathlib import Path

from reportgen.build.run import compile_site
from tests.campaigns import SMALLEST, SMALLEST_READINGS


def compiled(place: Path, **files: str) -> str:
    """The page of the one test, after writing files (`publication`, `de`)."""
    paths = {"publication": "content/publication.yaml", "de": "content/languages/de.yaml"}
    own = {paths[name]: text for name, text in files.items()}
    campaign = {"stoves/campaign.yaml": SMALLEST, "stoves/readings.csv": SMALLEST_READINGS}
    for name, text in {**campaign, **own}.items():
        (place / name).parent.mkdir(parents=True, exist_ok=True)
        (place / name).write_text(text, encoding="utf-8")
    return (compile_site(place).out / "stoves/tests/gas-burned.html").read_text(encoding="utf-8")


def test_what_was_kept_in_one_language_is_not_shown_in_another(tmp_path: Path) -> None:
    english = compiled(tmp_path, publication="title: Boil\n")
    german = compiled(tmp_path, publication="title: Boil\nlanguage: de\n")
    assert 'lang="en" dir="ltr"' in english
    assert 'lang="de" dir="ltr"' in german
    assert ">Antwort<" in german
    assert " bis " in german
    drawn_english, drawn_german = (page[page.index("<svg") : page.rindex("</svg>")] for page in (english, german))
    assert drawn_english != drawn_german
    assert compiled(tmp_path, publication="title: Boil\n") == english


def test_a_changed_phrase_is_shown_at_once(tmp_path: Path) -> None:
    publication = "title: Boil\nlanguage: de\n"
    own = "language: de\nname: Deutsch\nphrases:\n  page.contents.index: {}\n"
    assert ">Befund<" in compiled(tmp_path, publication=publication, de=own.format("Befund"))
    assert ">Urteil<" in compiled(tmp_path, publication=publication, de=own.format("Urteil"))


def test_a_page_from_right_to_left_says_so(tmp_path: Path) -> None:
    arabic = compiled(tmp_path, publication="title: Boil\nlanguage: ar\n")
    assert '<html lang="ar" dir="rtl"' in arabic
    assert "\u2068" in arabic
    assert arabic.count("\u2068") + arabic.count("\u2066") == arabic.count("\u2069")


def test_the_authors_own_words_run_as_their_letters_do_on_a_page_of_another_direction(tmp_path: Path) -> None:
    """HTML, 3.2.6.4: `dir="auto"` is for text whose direction only its letters tell."""
    asked = SMALLEST + "question: Which burns less, and is it sure?\n"
    for name, text in {
        "content/publication.yaml": "title: Boil\nlanguage: ar\nwho pays: Nobody, as yet.\n",
        "stoves/campaign.yaml": asked,
        "stoves/readings.csv": SMALLEST_READINGS,
    }.items():
        (tmp_path / name).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / name).write_text(text, encoding="utf-8")
    first = (compile_site(tmp_path).out / "stoves/index.html").read_text(encoding="utf-8")
    assert '<p class="lead" dir="auto">Which burns less, and is it sure?</p>' in first
    assert '<p dir="auto">Nobody, as yet.</p>' in first


def test_words_in_a_chart_keep_their_direction_where_its_axes_run_from_left_to_right(tmp_path: Path) -> None:
    """UAX 9, 2.4: between U+2068 and U+2069 a text takes its direction from its own first letter."""
    arabic = compiled(tmp_path, publication="title: Boil\nlanguage: ar\n")
    drawn = arabic[arabic.index("<svg") : arabic.rindex("</svg>")]
    arabic_words = [
        words for words in re.findall(r"<text[^>]*>([^<]+)</text>", drawn) if re.search("[\u0600-\u06ff]", words)
    ]
    assert arabic_words
    assert all(words.startswith("\u2068") and words.endswith("\u2069") for words in arabic_words)
