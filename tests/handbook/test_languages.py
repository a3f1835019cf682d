"""The language that the handbook adds, compiled; and what it says of all languages."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from reportgen.build.progress import Built
from reportgen.campaign.shape import shape_of
from reportgen.finding import Place
from reportgen.languages import load_language
from reportgen.languages.__main__ import lacking, main
from reportgen.languages.files import tags
from reportgen.languages.written import WrittenLanguage
from reportgen.sources import Workspace
from reportgen.wording.language import ENGLISH
from tests.campaigns import SMALLEST, SMALLEST_READINGS
from tests.handbook.test_examples import BLOCK, HANDBOOK

PAGE = (HANDBOOK / "languages.md").read_text(encoding="utf-8")
FILES = {m["file"]: m["text"] for m in BLOCK.finditer(PAGE)}


@pytest.fixture(scope="module")
def built(tmp_path_factory: pytest.TempPathFactory) -> Built:
    """A site of one small campaign, in the handbook's Dutch."""
    from reportgen.build.run import compile_site

    place = tmp_path_factory.mktemp("dutch")
    campaign = {"stoves/campaign.yaml": SMALLEST, "stoves/readings.csv": SMALLEST_READINGS}
    for name, text in {**FILES, **campaign}.items():
        (place / name).parent.mkdir(parents=True, exist_ok=True)
        (place / name).write_text(text, encoding="utf-8")
    return compile_site(place)


def page(built: Built, address: str) -> str:
    return re.sub("[\u00a0\u202f]", " ", (built.out / address).read_text(encoding="utf-8"))


def test_pages_say_so_and_speak_it(built: Built) -> None:
    first = page(built, "stoves/index.html")
    assert '<html lang="nl" dir="ltr"' in first
    for words in ("Antwoord", "Werkwijze", "Gegevens"):
        assert f">{words}<" in first
    assert " tot " in page(built, "stoves/tests/gas-burned.html")
    assert re.search(r"\d,\d", page(built, "stoves/tests/gas-burned.html"))  # CLDR, Dutch: decimal sign ","


def test_one_warning_tells_what_is_lacking(built: Built) -> None:
    (told,) = [f for f in built.findings if f.rule == "phrases-missing"]
    assert (told.severity, str(told.place)) == ("warning", "content/languages/nl.yaml")
    given_by_cldr = {"day", "day.month", *(f"month.{n}" for n in range(1, 13))}
    given_by_cldr |= {f"list.{kind}.{place}" for kind in ("and", "or") for place in ("two", "start", "middle", "end")}
    written = re.findall(r"^  ([\w.-]+):", FILES["content/languages/nl.yaml"], re.M)
    lacking = len(ENGLISH.phrases) - len(written) - len(given_by_cldr)
    assert f"lacks {lacking} of {len(ENGLISH.phrases)} phrases" in told.says


def test_the_record_stays_english(built: Built) -> None:
    assert " tot " not in page(built, "stoves/results.json")


def test_the_page_tells_every_key_of_a_language_file() -> None:
    told = set(re.findall(r"^\| `([a-z ]+)` \|", PAGE, re.M))
    assert {key.name for key in shape_of(WrittenLanguage).keys} <= told


def test_the_page_tells_every_language_that_there_is() -> None:
    assert set(re.findall(r"^\| [A-Z]\w+ \| `([a-z]+)` \|", PAGE, re.M)) == set(tags(None))


def test_a_translator_gets_every_phrase_that_is_lacking(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    begun = tmp_path / "content" / "languages" / "pl.yaml"
    begun.parent.mkdir(parents=True)
    begun.write_text("language: pl\nname: polski\nphrases:\n  page.contents.data: Dane\n", encoding="utf-8")
    assert main(["pl", str(tmp_path)]) == 0
    printed = capsys.readouterr().out
    polish, _ = load_language(Workspace(tmp_path, ()), "pl", Place("content/publication.yaml"))
    assert re.findall(r"^  (\w[\w.\- /]*):", printed, re.M) == list(polish.lacking)
    assert "page.contents.data" not in polish.lacking
    assert re.search(r"^    few: ", printed, re.M)
    assert main([]) == 1


@pytest.mark.parametrize("tag", ["ar", "de"])
def test_a_language_that_comes_with_the_program_lacks_nothing(tag: str) -> None:
    language, findings = load_language(None, tag, Place("content/publication.yaml"))
    assert (language.lacking, findings) == ((), ())


def test_what_a_translator_gets_is_a_whole_language_file(tmp_path: Path) -> None:
    folder = tmp_path / "content" / "languages"
    folder.mkdir(parents=True)
    lines = "\n".join(lacking("pl"))
    (folder / "pl.yaml").write_text(f"language: pl\nname: polski\nphrases:\n{lines}\n", encoding="utf-8")
    language, findings = load_language(Workspace(tmp_path, ()), "pl", Place("content/publication.yaml"))
    assert (language.lacking, findings) == ((), ())
