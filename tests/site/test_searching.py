"""The index that readers search: the same pages give the same bytes; a system without its program gives a site, too."""

from __future__ import annotations

import base64
import json
import sys
from pathlib import Path

import pytest

from reportgen.build.run import compile_site
from reportgen.pages.told import Page
from reportgen.site import searching
from reportgen.site.wide import search
from tests.pages.reading import read
from tests.site.archives import archive

PAGES = tuple(
    Page(
        address,
        f'<!doctype html><html lang="en"><body><main><h1 id="top">{title}</h1><p>{text}</p></main></body></html>',
    )
    for address, title, text in (
        ("stoves/index.html", "Stoves", "Which stove boils soonest?"),
        ("lamps/index.html", "Lamps", "Which lamp is bright?"),
        ("stoves/files/raw.csv.html", "Rows", "1,2,3"),
        ("search.html", "Search", "Search"),
    )
)
pytestmark = pytest.mark.usefixtures("searched")
needed = pytest.mark.skipif(not searching.available(), reason="the program isn't made for this system")


@needed
def test_the_same_pages_in_whatever_order_give_the_same_bytes() -> None:
    made = searching.index_of(searching.searched(PAGES))
    assert made == searching.index_of(searching.searched(tuple(reversed(PAGES))))
    assert list(made) == sorted(made)


@needed
def test_only_what_a_reader_searches_is_in_it_and_none_of_its_own_looks() -> None:
    made = searching.index_of(searching.searched(PAGES))
    told = json.loads(made["search/pagefind-entry.json"])
    assert told["languages"]["en"]["page_count"] == 2, "neither rows of raw files nor the search itself"
    assert not [address for address in made if "ui" in address or address.endswith(".css")]


@needed
def test_a_page_it_takes_no_notice_of_is_no_end_of_it() -> None:
    odd = (*PAGES, Page("odd.html", "<p>no main at all"), Page("empty.html", ""))
    assert "search/pagefind.js" in searching.index_of(searching.searched(odd))


def test_where_the_program_is_missing_the_site_is_made_and_says_so(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(searching, "available", lambda: False)
    monkeypatch.setattr(search, "available", lambda: False)
    built = compile_site(archive(tmp_path))
    (told,) = [f for f in built.findings if f.rule == "no-search"]
    assert told.severity == "note"
    assert not (built.out / "search").exists()
    page = read((built.out / "search.html").read_text(encoding="utf-8"))
    assert not page.all("form")
    assert "made without its search" in page.text


def said(answer: bytes) -> str:
    """A program's line that gives this answer: JSON in base64, ended by a comma."""
    return f"sys.stdout.write({base64.b64encode(answer).decode() + ','!r}); sys.stdout.flush(); sys.stdin.read()"


@needed
@pytest.mark.parametrize("answer", ["sys.exit(3)", said(b"{}"), said(b"none"), said(b'{"payload":{"type":"New"}}')])
def test_a_program_that_ends_or_answers_nonsense_gives_no_index(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, answer: str
) -> None:
    import pagefind_bin

    fake = tmp_path / "fake"
    fake.write_text(f"#!{sys.executable}\nimport sys\n{answer}\n", encoding="utf-8")
    fake.chmod(0o755)
    monkeypatch.setattr(pagefind_bin, "get_executable", lambda: fake)
    with pytest.raises((searching.NoAnswerError, OSError)):
        searching.index_of(PAGES)
