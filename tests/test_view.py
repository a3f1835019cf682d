"""The local server: pages with its own part under them, files as they are, for this machine alone."""

from __future__ import annotations

import http.client
import queue
import threading
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path

import pytest

from reportgen.build.progress import Built
from reportgen.finding import Place, Refused, refuse
from reportgen.view import Shown, changes, says_the_same, serving
from tests.campaigns import write_campaign

PAGE = "<!doctype html>\n<title>Stoves</title>\n"
MISTAKE = refuse("unknown-key", Place("campaign.yaml", 4, 1), "“contendres” is no key", "why <so>", "Write contenders.")


@pytest.fixture
def shown() -> Shown:
    return Shown()


@pytest.fixture
def ask(tmp_path: Path, shown: Shown) -> Iterator[Asking]:
    site = tmp_path / ".site"
    site.mkdir()
    (site / "index.html").write_text(PAGE)
    (site / "readings.csv").write_text("a,b\n")
    with serving(site, shown) as address:
        yield Asking(address.removeprefix("http://").rstrip("/"))


class Asking:
    """Asks the server, with any name for it."""

    def __init__(self, host: str) -> None:
        self.host = host

    def __call__(self, path: str, name: str = "") -> tuple[int, str]:
        with closing(http.client.HTTPConnection(self.host, timeout=10)) as connection:
            connection.request("GET", path, headers={"Host": name or self.host})
            answer = connection.getresponse()
            return answer.status, answer.read().decode()


def built(out: Path) -> Built:
    return Built((), 1, 1, out)


def test_the_script_that_follows_comes_from_the_server_and_never_into_the_file(ask: Asking, tmp_path: Path) -> None:
    status, page = ask("/index.html")
    assert status == 200
    assert page.startswith(PAGE)
    assert "follow.js" in page
    assert ask("/")[1] == page
    assert (tmp_path / ".site/index.html").read_text() == PAGE
    assert "location.reload" in ask("/-/follow.js")[1]


def test_other_files_are_sent_as_they_are(ask: Asking) -> None:
    assert ask("/readings.csv") == (200, "a,b\n")


def test_a_file_of_the_authors_in_another_encoding_is_sent_as_it_is(ask: Asking, tmp_path: Path) -> None:
    written = "<p>Größe".encode("latin-1")
    (tmp_path / ".site/report.html").write_bytes(written)
    with closing(http.client.HTTPConnection(ask.host, timeout=10)) as connection:
        connection.request("GET", "/report.html")
        answer = connection.getresponse()
        assert (answer.status, answer.read()) == (200, written)


def test_a_mistake_shows_on_the_page_and_the_last_good_site_stays(ask: Asking, shown: Shown, tmp_path: Path) -> None:
    shown.show(built(tmp_path))
    assert "campaign.yaml" not in ask("/index.html")[1]
    shown.show(MISTAKE)
    page = ask("/index.html")[1]
    assert page.startswith(PAGE)
    for told in ("campaign.yaml:4:1", "“contendres” is no key", "why &lt;so&gt;", "Write contenders."):
        assert told in page
    shown.show(built(tmp_path))
    assert "campaign.yaml" not in ask("/index.html")[1]


def test_a_site_that_never_was_still_shows_what_is_wrong(ask: Asking, shown: Shown) -> None:
    shown.show(MISTAKE)
    status, page = ask("/nowhere/index.html")
    assert status == 404
    assert "campaign.yaml:4:1" in page
    assert "follow.js" in page


def test_a_page_that_waits_is_woken_by_the_next_compile(ask: Asking, shown: Shown, tmp_path: Path) -> None:
    shown.show(built(tmp_path))
    assert ask("/-/changes?seen=0") == (200, "1")
    waker = threading.Timer(0.2, shown.show, [built(tmp_path)])
    waker.start()
    assert ask("/-/changes?seen=1") == (200, "2")


def test_a_name_that_is_not_this_machine_gets_nothing(ask: Asking) -> None:
    assert ask("/index.html", name="evil.example:80")[0] == 403
    assert ask("/index.html", name="localhost:80")[0] == 200


def test_no_path_leads_out_of_the_site(ask: Asking, tmp_path: Path) -> None:
    (tmp_path / "secret.html").write_text("secret")
    for path in ("/../secret.html", "/%2e%2e/secret.html", "/..%2fsecret.html"):
        assert "secret</" not in ask(path)[1]
        assert ask(path)[0] == 404


def test_a_refusal_and_a_fault_of_the_program_both_say_what_is_wrong() -> None:
    from reportgen.view import findings_of

    assert [f.place.line for f in findings_of(MISTAKE)] == [4]
    assert "ZeroDivisionError" in findings_of(ZeroDivisionError("x"))[0].says


def test_a_change_of_the_authors_is_noticed_and_what_is_made_from_it_is_not(tmp_path: Path) -> None:
    folder = write_campaign(tmp_path)
    out = folder / ".site"
    out.mkdir()
    (folder / "site").mkdir()
    stop = threading.Event()
    noticed: queue.Queue[None] = queue.Queue()

    def watch() -> None:
        for _ in changes(folder, folder / "site", stop):
            noticed.put(None)

    watching = threading.Thread(target=watch)
    watching.start()
    try:
        noticed.get(timeout=10)
        for made in (out / "index.html", folder / "site/index.html", folder / ".kept"):
            made.write_text("made")
        with pytest.raises(queue.Empty):
            noticed.get(timeout=1.5)
        (folder / "readings.csv").write_text("changed")
        noticed.get(timeout=10)
    finally:
        stop.set()
        watching.join(timeout=10)


def test_a_campaign_that_is_added_to_the_workspace_is_noticed(tmp_path: Path) -> None:
    write_campaign(tmp_path)
    (tmp_path / "content").mkdir()
    (tmp_path / "content/publication.yaml").write_text("title: Boil and Tell\n")
    stop = threading.Event()
    noticing = changes(tmp_path, tmp_path / ".site", stop)
    next(noticing)
    adding = threading.Timer(0.5, lambda: write_campaign(tmp_path / "new").rename(tmp_path / "pots"))
    adding.start()
    next(noticing)
    stop.set()
    assert (tmp_path / "pots/campaign.yaml").is_file()


def test_nobody_is_told_twice_of_the_same(tmp_path: Path) -> None:
    same = Built((), 1, 1, tmp_path, unchanged=True)
    assert says_the_same(built(tmp_path), same)
    assert not says_the_same(built(tmp_path), built(tmp_path))
    assert not says_the_same(MISTAKE, same), "mended by taking it back: the mistake must go"
    assert says_the_same(MISTAKE, Refused(MISTAKE.findings))
    assert not says_the_same(built(tmp_path), MISTAKE)


@pytest.mark.parametrize(
    ("line", "words"),
    [
        ("Corvane took [](value:boil time/corvane), the least of *all four* stoves.", "the least of all four stoves"),
        ("    says: Canisters were at room temperature.", "Canisters were at room temperature"),
        ("- Small dent in the pot support.", "Small dent in the pot support"),
        ("  kind: timed", ""),
        ("[one link](tests/noise.md)", ""),
    ],
)
def test_an_authors_own_words_are_told_from_what_the_program_puts_between_them(line: str, words: str) -> None:
    from reportgen.view.beside import words_of

    assert words_of(line) == words


def test_every_subject_of_the_demonstrations_findings_is_found_on_its_site(demo_built: Built) -> None:
    asked = [f for f in demo_built.findings if f.subject]
    assert len(asked) > 5
    assert demo_built.where is not None
    for finding in asked:
        page, _, anchor = demo_built.where.of(finding)[0].partition("#")
        html = (demo_built.out / page).read_text(encoding="utf-8")
        assert not anchor or f'id="{anchor}"' in html, finding
