"""One workspace compiled in one language after another: nothing of the one before is left."""

from __future__ import annotations

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
