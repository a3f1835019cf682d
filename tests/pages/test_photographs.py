"""Photographs and moments of films where a reader meets them: on readings, incidents, sheets, tests, in texts."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from tests.campaigns import compile_campaign
from tests.pages.reading import Element, read
from tests.photographs import SECRETS, photograph

YAML = """\
title: Which stove boils a litre on the least gas?
contenders:
  corvane:
    title: Corvane Sol
    as received: [The box was dented at one corner.]
    photos: arrival
    film: 45s
  ostler: Ostler Mk II
films:
  main:
    address: https://example.org/films/stoves
    length: 12m30s
    stills: {4m20s: tipped}
photos:
  display-1: The scale's display reads 217.1 g.
  arrival:
    file: attachments/box.jpg
    shows: A cardboard box with its upper left corner pushed in.
    caption: As it came out of the van.
    by: the tester
    taken: 2026-05-02
  tipped: The windscreen lies on its side.
  plan: A drawing of the bench.
instruments:
  g: bench-scale
  bench-scale: {resolution: 0.1 g, accuracy: ±0.3 g, photo: A small scale with a round pan.}
exclude:
  - {contender: corvane, pass: 3, because: The canister was empty., decided: during the test, film: 11m2.5s}
incidents:
  - {contender: ostler, pass: 2, what: The windscreen fell over., photo: tipped, film: main 4m20s}
measure:
  gas burned: {kind: weighed before and after, unit: g, better: lower, photo: plan}
  flame: {grades: [poor, good]}
readings: [readings.csv, flame.csv]
"""
READINGS = """\
contender,pass,gas burned before,gas burned after,photo,film
corvane,1,231.4,217.1,display-1,
ostler,1,240.2,223.9,,
ostler,2,223.9,207.2,Display 1; tipped,
corvane,2,217.1,202.6,,1m
corvane,3,202.6,201.0,,
"""
FLAME = "contender,pass,what,value,photo,film\ncorvane,1,flame,good,tipped,main 2m10s\nostler,1,flame,poor,,\n"
TEXT = """\
# What we saw

![](photo:plan)

The scale read [as it should](photo:display-1); look for yourself [?](film:4m20s), or [there](film:main/2m).

![The display, seen from the side](photo:display-1)
"""
PICTURES = {
    "attachments/display-1.jpg": photograph(1800, 1200),
    "attachments/box.jpg": photograph(900, 1200, held=1),
    "attachments/tipped.JPG": photograph(640, 480, held=6),
    "attachments/plan.png": photograph(600, 400, kind="PNG"),
    "attachments/bench-scale.webp": photograph(300, 300, kind="WEBP"),
    "attachments/loose.jpg": photograph(200, 100),
}


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, dict[str, Any]]:
    place = tmp_path_factory.mktemp("photographed")
    files: dict[str, str | bytes] = {"readings": READINGS, "flame.csv": FLAME, "conclusions.md": TEXT, **PICTURES}
    told = compile_campaign(place, YAML, **files)
    return place / "stoves/.site", told


def page(site: tuple[Path, dict[str, Any]], address: str) -> Element:
    return read((site[0] / address).read_text(encoding="utf-8"))


def test_no_file_of_the_site_tells_where_or_with_what_a_photograph_was_taken(site: tuple[Path, dict[str, Any]]) -> None:
    made = [path for path in site[0].rglob("*") if path.is_file()]
    pictures = [path for path in made if path.suffix in (".jpg", ".JPG", ".png", ".webp")]
    assert len(pictures) > 15
    assert [str(p) for p in made if any(secret in p.read_bytes() for secret in (*SECRETS, b"Exif\0\0"))] == []


def test_the_camera_s_own_file_stays_with_the_author(site: tuple[Path, dict[str, Any]]) -> None:
    own = set(PICTURES.values())
    assert [path for path in site[0].rglob("*") if path.is_file() and path.read_bytes() in own] == []
    # one that nobody declared is passed on as an attachment, of pixels alone, and told
    assert {p.name for p in (site[0] / "stoves/files/attachments").iterdir()} == {"loose.jpg"}
    assert [f["file"] for f in site[1]["findings"] if f["rule"] == "picture-not-shown"] == ["attachments/loose.jpg"]


def test_every_picture_has_words_a_size_and_a_file_for_every_width(site: tuple[Path, dict[str, Any]]) -> None:
    from PIL import Image

    seen = 0
    for path in site[0].rglob("*.html"):
        for img in read(path.read_text(encoding="utf-8")).all("img"):
            seen += 1
            assert img.attrs["alt"].strip()  # WCAG 2.2, 1.1.1
            assert img.attrs["loading"] == "lazy"
            assert img.parent is not None
            (source,) = img.parent.all("source")
            assert source.attrs["type"] == "image/webp"
            assert img.attrs["sizes"] == source.attrs["sizes"]
            for listed in (*img.attrs["srcset"].split(", "), *source.attrs["srcset"].split(", ")):
                address, width = listed.split(" ")
                with Image.open(path.parent / address) as made:
                    assert f"{made.width}w" == width  # HTML, 4.8.4.2.1: a width descriptor is the picture's own
                    assert abs(made.width / made.height - int(img.attrs["width"]) / int(img.attrs["height"])) < 0.02
            link = img.parent.parent
            assert link is not None
            assert (path.parent / link.attrs["href"]).is_file()
            assert (path.parent / img.attrs["src"]).is_file()
    assert seen >= 10


def test_a_pass_is_shown_with_what_was_read_there(site: tuple[Path, dict[str, Any]]) -> None:
    seen = page(site, "stoves/tests/gas-burned.html").one("section", class_="seen")
    passes = seen.all("div", class_="pass-seen")
    assert [p.one("h3").text for p in passes] == [
        "A Corvane Sol, Pass 1",
        "A Corvane Sol, Pass 2",
        "B Ostler Mk II, Pass 2",
    ]
    assert passes[0].one("p", class_="read").text == "gas burned before 231.4 g; gas burned after 217.1 g"
    assert [i.attrs["alt"] for i in passes[2].all("img")] == [
        "The scale’s display reads 217.1 g.",
        "The windscreen lies on its side.",
    ]
    assert [a.attrs["href"] for a in passes[1].all("a", rel="external")] == ["https://example.org/films/stoves#t=60"]


def test_a_grade_is_shown_with_its_photograph_and_its_moment(site: tuple[Path, dict[str, Any]]) -> None:
    (seen,) = page(site, "stoves/tests/flame.html").one("section", class_="seen").all("div", class_="pass-seen")
    assert seen.one("p", class_="read").text == "flame good"
    # Media Fragments URI 1.0, 4.2.1: #t=130 begins at 130 seconds; 2 min 10 s are 130 s
    assert seen.one("a", rel="external").attrs["href"] == "https://example.org/films/stoves#t=130"
    assert seen.one("a", rel="external").text == "See it in the film at 2 min 10 s"


def test_an_incident_is_shown_once_and_the_still_of_its_moment_not_again(site: tuple[Path, dict[str, Any]]) -> None:
    boxes = page(site, "stoves/index.html").all("div", class_="caveat")
    (box,) = [b for b in boxes if "windscreen fell" in b.text]
    assert [i.attrs["alt"] for i in box.all("img")] == ["The windscreen lies on its side."]
    assert box.one("a", rel="external").attrs["href"].endswith("#t=260")
    (left_out,) = [b for b in boxes if "canister was empty" in b.text]
    assert left_out.one("a", rel="external").attrs["href"].endswith("#t=662.5")


def test_a_sheet_shows_how_it_came(site: tuple[Path, dict[str, Any]]) -> None:
    sheet = page(site, "stoves/contenders/corvane.html")
    (photo,) = sheet.all("figure", class_="photo")[-1:]
    assert photo.one("figcaption").text == "As it came out of the van. Photograph: the tester, 2 May 2026."
    assert [a.text for a in sheet.all("a", rel="external")][-1] == "See it in the film at 45 s"


def test_under_every_photograph_stands_what_it_shows(site: tuple[Path, dict[str, Any]]) -> None:
    out = site[0]
    found = [f for p in out.rglob("*.html") if "handbook" not in p.parts
             for f in page(site, p.relative_to(out).as_posix()).all("figure", class_="photo")]  # fmt: skip
    assert len(found) > 8
    assert all(f.one("figcaption").text.strip() for f in found)
    (read,) = {f.one("figcaption").text for f in found if f.one("img").attrs["alt"].startswith("The scale")}
    assert read == "The scale’s display reads 217.1 g."


def test_an_instrument_is_shown_on_its_page(site: tuple[Path, dict[str, Any]]) -> None:
    shown = page(site, "instruments/bench-scale.html").one("figure", class_="photo").one("img")
    assert shown.attrs["alt"] == "A small scale with a round pan."
    assert shown.attrs["src"].startswith("../stoves/photos/")


def test_a_text_shows_photographs_and_leads_to_moments(site: tuple[Path, dict[str, Any]]) -> None:
    own = page(site, "stoves/index.html").one("section", class_="own-words")
    # words in the brackets are the author's for this place; without any, those declared
    assert [i.attrs["alt"] for i in own.all("img")] == ["A drawing of the bench.", "The display, seen from the side"]
    links = {a.text: a.attrs["href"] for a in own.all("a") if a.text}
    assert links == {
        "as it should": "photos/display-1-1600.jpg",
        "4 min 20 s": "https://example.org/films/stoves#t=260",
        "there": "https://example.org/films/stoves#t=120",
    }


def test_the_record_tells_every_photograph_and_moment(site: tuple[Path, dict[str, Any]]) -> None:
    told = site[1]
    photos = {p["id"]: p for p in told["photo_list"]}
    assert photos["tipped"]["width"] == 480  # 640 by 480, held a quarter turned
    assert all((site[0] / "stoves" / file).is_file() for p in photos.values() for file in p["pictures"])
    (incident,) = [c for c in told["caveat_list"] if c["sort"] == "incident"]
    assert (incident["photos"], incident["film"]) == (["tipped"], {"film": "main", "seconds": 260.0})
    (ostler,) = [r for r in told["results"] if (r["quantity"], r["contender"]) == ("gas-burned", "ostler")]
    second = ostler["by_pass"][1]["readings"]
    assert all(row["photos"] == ["display-1", "tipped"] for row in second)
    assert told["film_list"][0]["seconds"] == 12 * 60 + 30


@pytest.mark.parametrize(
    ("film", "href"),
    [
        ("{address: https://example.org/a#chapter}", "https://example.org/a#chapter&t=90"),
        (
            "{address: https://example.org/a, moment: 'https://example.org/a?from={seconds}'}",
            "https://example.org/a?from=90",
        ),
        ("https://example.org/a", "https://example.org/a#t=90"),
    ],
)
def test_a_moment_opens_where_its_host_has_it(film: str, href: str, tmp_path: Path) -> None:
    yaml = (
        f"title: T\ncontenders: {{corvane: C, ostler: O}}\nfilms:\n  main: {film}\n  side: https://example.org/b\n"
        "measure:\n  boil time: timed, s, lower\nreadings: readings.csv\n"
    )
    compile_campaign(tmp_path, yaml, readings="contender,boil time,film\ncorvane,212.4,main 1m30s\nostler,230.1,\n")
    seen = read((tmp_path / "stoves/.site/stoves/tests/boil-time.html").read_text(encoding="utf-8")).one(
        "section", class_="seen"
    )
    assert seen.one("a", rel="external").attrs["href"] == href
    assert seen.one("a", rel="external").text == "See it in “main” at 1 min 30 s"


def test_what_happened_in_a_bench_log_is_shown_with_its_photograph_and_moment(tmp_path: Path) -> None:
    yaml = (
        "title: T\ncontenders: {corvane: C, ostler: O}\nfilms: {main: https://example.org/a}\n"
        "photos:\n  tipped: The windscreen lies on its side.\n"
        "measure:\n  boil time: timed, s, lower\nreadings: log.csv\n"
    )
    log = (
        "contender,what,value,pass,photo,film\ncorvane,boil time,212.4,1,,\nostler,boil time,230.1,1,,\n"
        "ostler,incident,The windscreen fell over.,1,tipped,1m30s\n"
    )
    files: dict[str, str | bytes] = {"log.csv": log, "attachments/tipped.jpg": photograph()}
    told = compile_campaign(tmp_path, yaml, **files)
    (incident,) = [c for c in told["caveat_list"] if c["sort"] == "incident"]
    assert (incident["photos"], incident["film"]) == (["tipped"], {"film": "main", "seconds": 90.0})
    assert [f for f in told["findings"] if f["rule"] == "photo-not-shown"] == []
    shown = read((tmp_path / "stoves/.site/stoves/tests/boil-time.html").read_text(encoding="utf-8"))
    (box,) = shown.all("div", class_="caveat")
    assert box.one("img").attrs["alt"] == "The windscreen lies on its side."
