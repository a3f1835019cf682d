"""Days stand on pages with their month in letters, as the publication's language writes them (DIN 5008, dates in letters)."""

from __future__ import annotations

import re
from pathlib import Path

from reportgen.build.run import compile_site
from tests.campaigns import SMALLEST, SMALLEST_READINGS

DATED = "tested: 2026-05-02 to 2026-05-17\npublished: 2026-05-24\n"


def pages(place: Path, language: str) -> dict[str, str]:
    """The text of each page that tells when it was tested, by its name."""
    files = {
        "content/publication.yaml": f"title: Boil\nlanguage: {language}\n",
        "stoves/campaign.yaml": DATED + SMALLEST,
        "stoves/readings.csv": SMALLEST_READINGS,
    }
    for name, text in files.items():
        (place / name).parent.mkdir(parents=True, exist_ok=True)
        (place / name).write_text(text, encoding="utf-8")
    out = compile_site(place).out
    named = ("index.html", "stoves/index.html", "stoves/method.html", "stoves/changes.html")
    unseen = r"(?s)<(script|style)\b.*?</\1>|<[^>]+>"
    return {name: re.sub(unseen, "", (out / name).read_text(encoding="utf-8")) for name in named}


def test_no_page_shows_a_day_as_it_was_typed(tmp_path: Path) -> None:
    for language, days, day in (
        ("en", "2 to 17 May 2026", "24 May 2026"),
        ("de", "2. bis 17. Mai 2026", "24. Mai 2026"),
    ):
        said = pages(tmp_path, language)
        assert days in said["stoves/index.html"]
        assert days in said["stoves/method.html"]
        assert day in said["stoves/changes.html"]
        assert day in said["index.html"]
        assert not any("2026-05" in text for text in said.values())
