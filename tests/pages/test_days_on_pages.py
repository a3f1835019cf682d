"""Days stand on pages with their month in letters, as the publication's language writes them (DIN 5008, dates in letters)."""

from __future__ import annotations

import re
from pathlib import Path

from reportgen.build.run import compile_site
from tests.campaigns import SMALLEST, SMALLEST_READINGS

DATED = "tested: 2026-05-02 to 2026-05-17\npublished: 2026-05-24\n"


NAMED = ("index.html", "stoves/index.html", "stoves/method.html", "stoves/changes.html")


def pages(place: Path, language: str, named: tuple[str, ...] = NAMED, **own: str) -> dict[str, str]:
    """The text of each page named; these tell when it was tested. `own`: files that take the place of the smallest."""
    files = {
        "content/publication.yaml": f"title: Boil\nlanguage: {language}\n",
        "stoves/campaign.yaml": DATED + SMALLEST,
        "stoves/readings.csv": SMALLEST_READINGS,
        **own,
    }
    for name, text in files.items():
        (place / name).parent.mkdir(parents=True, exist_ok=True)
        (place / name).write_text(text, encoding="utf-8")
    out = compile_site(place).out
    unseen = r"(?s)<(script|style)\b.*?</\1>|<[^>]+>"
    return {name: re.sub(unseen, "", (out / name).read_text("utf-8")).replace("\u00a0", " ") for name in named}


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


def test_a_reading_tells_its_day_and_time_in_words(tmp_path: Path) -> None:
    timed = SMALLEST_READINGS.replace("boil time\n", "boil time,time\n", 1)
    rows = [f"{row},2026-05-03 10:2{n}" for n, row in enumerate(timed.splitlines()[1:])]
    for language, told in (("en", "On 3 May 2026 at 10:20"), ("de", "Am 3. Mai 2026 um 10:20")):
        files = {"stoves/readings.csv": "\n".join([timed.splitlines()[0], *rows]) + "\n"}
        said = pages(tmp_path, language, ("stoves/tests/gas-burned.html",), **files)
        assert told in said["stoves/tests/gas-burned.html"]


def test_what_nobody_noted_is_said_in_the_language_of_the_site(tmp_path: Path) -> None:
    sol = "corvane: {title: Corvane Sol, firmware: not noted, bought: {where: not noted, date: not noted}}"
    files = {"stoves/campaign.yaml": SMALLEST.replace("corvane: Corvane Sol", sol)}
    said = pages(tmp_path, "de", ("stoves/contenders/corvane.html",), **files)["stoves/contenders/corvane.html"]
    assert "not noted" not in said
    assert said.count("nicht notiert") == 2  # of the purchase and of the firmware, once each
