"""The local server: pages with its own part under them, files as they are, for this machine alone."""

from __future__ import annotations

import http.client
import threading
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path

import pytest

from reportgen.build.progress import Built
from reportgen.finding import Place, Refused, refuse
from reportgen.view import Shown, serving

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


def test_only_errors_keep_a_site_back() -> None:
    from reportgen.view import errors_of

    warning = Refused([*MISTAKE.findings])
    assert [f.place.line for f in errors_of(warning)] == [4]
    assert "ZeroDivisionError" in errors_of(ZeroDivisionError("x"))[0].says
