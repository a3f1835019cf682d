"""A site that says where it stands has lasting addresses, a feed and a sitemap; what is renamed is still found.

Sources: RFC 4287 (Atom), sitemaps.org protocol 0.9, RFC 6596 (canonical links), RFC 3986 and 3987 (URIs and IRIs),
HTML Living Standard, 4.2.5.3 (refresh).
"""

from __future__ import annotations

import xml.etree.ElementTree as ET
from pathlib import Path

import feedparser
import pytest
from lxml import etree

from reportgen.addresses import on_the_web
from reportgen.build.run import audit_path, compile_site
from reportgen.finding import Refused
from tests.checker import SITEMAPS
from tests.pages.reading import Element, read
from tests.site.archives import BURNERS, LAMPS, STOVES, archive, site_of

ATOM, MAP = "{http://www.w3.org/2005/Atom}", "{http://www.sitemaps.org/schemas/sitemap/0.9}"
ROOT = "https://example.org/tests/"
RENAMED = STOVES.replace("published:", "formerly: [camp cookers, burners-compared]\npublished:").replace(
    "{title: Corvane Sol", "{formerly: sol, claims: [{says: Boils in 4 min, quantity: boil time, at most: 4 min}], title: Corvane Sol"
).replace("boil time: timed, s, lower", "boil time: {kind: timed, unit: s, better: lower, formerly: time to boil}")  # fmt: skip


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return site_of(tmp_path_factory.mktemp("archive"), stoves=RENAMED)


def page(site: Path, address: str) -> Element:
    return read((site / address).read_text(encoding="utf-8"))


def test_the_feed_is_read_without_complaint_by_another_program(site: Path) -> None:
    told = feedparser.parse((site / "feed.xml").read_bytes())
    assert (told.bozo, told.version) == (False, "atom10")
    assert [entry.title.split()[1] for entry in told.entries] == ["stove", "burner", "lamp"]
    assert told.feed.author == "The people at Boil and Tell"
    assert [tag.term for tag in told.entries[0].tags] == ["Camping stoves"]


def test_the_feed_has_what_rfc_4287_asks_for(site: Path) -> None:
    feed = ET.parse(site / "feed.xml").getroot()
    assert feed.tag == f"{ATOM}feed"
    for of in (feed, *feed.iter(f"{ATOM}entry")):
        for name in ("id", "title", "updated"):  # 4.1.1 and 4.1.2: exactly one each
            assert len(of.findall(f"{ATOM}{name}")) == 1
    assert feed.find(f"{ATOM}author/{ATOM}name") is not None  # 4.1.1: an author of the feed serves its entries
    links = {link.get("rel"): link.get("href") for link in feed.findall(f"{ATOM}link")}
    assert links == {"self": f"{ROOT}feed.xml", "alternate": f"{ROOT}index.html"}  # 4.2.7.2
    entries = feed.findall(f"{ATOM}entry")
    ids = [entry.findtext(f"{ATOM}id") for entry in entries]
    assert len(set(ids)) == len(ids)  # 4.1.1


def test_instants_are_those_that_were_stated_never_of_the_clock(site: Path) -> None:
    feed = ET.parse(site / "feed.xml").getroot()
    said = [entry.findtext(f"{ATOM}updated") for entry in feed.findall(f"{ATOM}entry")]
    assert said == ["2026-05-24T00:00:00Z", "2025-09-14T00:00:00Z", "2025-01-02T00:00:00Z"]  # RFC 3339, 5.6
    assert feed.findtext(f"{ATOM}updated") == said[0]


def test_a_comparison_that_moved_keeps_its_id_in_the_feed(site: Path) -> None:
    entry = ET.parse(site / "feed.xml").getroot().findall(f"{ATOM}entry")[0]
    assert entry.findtext(f"{ATOM}id") == f"{ROOT}camp-cookers/index.html"  # RFC 4287, 4.2.6: it never changes
    link = entry.find(f"{ATOM}link")
    assert link is not None
    assert link.get("href") == f"{ROOT}stoves/index.html"


def test_the_sitemap_lists_every_page_once_with_days_as_exact_as_they_were_stated(site: Path) -> None:
    found = {
        url.findtext(f"{MAP}loc"): url.findtext(f"{MAP}lastmod")
        for url in ET.parse(site / "sitemap.xml").getroot().findall(f"{MAP}url")
    }
    moved = {p for p in site.rglob("*.html") if 'http-equiv="refresh"' in p.read_text(encoding="utf-8")}
    there = {p.relative_to(site).as_posix() for p in site.rglob("*.html") if p not in moved}
    assert set(found) == {ROOT + address for address in there}
    assert found[f"{ROOT}stoves/index.html"] == "2026-05-24"
    assert found[f"{ROOT}lamps/index.html"] == "2025-01-02"
    assert found[f"{ROOT}index.html"] is None


@pytest.mark.skipif(not SITEMAPS.is_file(), reason="the schema of sitemaps isn't there: run `python -m tests.checker`")
def test_the_sitemap_keeps_to_the_schema_of_its_protocol(site: Path) -> None:
    schema = etree.XMLSchema(etree.parse(SITEMAPS))
    told = etree.parse(site / "sitemap.xml")
    schema.assertValid(told)
    told.getroot()[0].append(etree.Element(f"{MAP}loc"))  # a page has one
    assert not schema.validate(told)


def test_a_month_is_not_made_a_day(tmp_path: Path) -> None:
    site = site_of(tmp_path, lamps=LAMPS.replace("2024-12-30 to 2025-01-02", "2025-01"))
    told = (site / "sitemap.xml").read_text(encoding="utf-8")
    assert f"<loc>{ROOT}lamps/index.html</loc><lastmod>2025-01</lastmod>" in told


def test_robots_stands_only_at_the_root_of_a_host(site: Path, tmp_path: Path) -> None:
    assert not (site / "robots.txt").exists()
    at_root = site_of(tmp_path, "title: Site\naddress: https://example.org\n")
    assert "Sitemap: https://example.org/sitemap.xml" in (at_root / "robots.txt").read_text(encoding="ascii")


def test_each_page_names_its_lasting_address_and_the_feed(site: Path) -> None:
    for address in ("index.html", "stoves/index.html", "stoves/tests/gas-burned.html", "about/lists.html"):
        head = page(site, address)
        assert head.one("link", rel="canonical").attrs["href"] == ROOT + address
        feed = head.one("link", rel="alternate", type="application/atom+xml").attrs["href"]
        assert (site / address).parent.joinpath(feed).resolve() == (site / "feed.xml").resolve()


@pytest.mark.parametrize(
    ("site", "address", "whole"),
    [
        ("https://example.org/tests/", "a/b.html", "https://example.org/tests/a/b.html"),
        ("https://example.org", "a.html", "https://example.org/a.html"),
        ("HTTPS://Example.ORG/Tests", "a.html", "https://example.org/Tests/a.html"),  # RFC 3986, 6.2.2.1
        ("https://example.org/é/", "two words.csv.html", "https://example.org/%C3%A9/two%20words.csv.html"),
        ("https://example.org/%C3%A9", "50 %.csv", "https://example.org/%C3%A9/50%20%25.csv"),
        ("https://example.org/its'/", "it's #1.csv.html", "https://example.org/its%27/it%27s%20%231.csv.html"),
        ("https://bücher.example/", "a.html#b", "https://xn--bcher-kva.example/a.html#b"),  # RFC 3492, by IDNA
        ("", "a.html", ""),
    ],
)
def test_whole_addresses_are_uris(site: str, address: str, whole: str) -> None:
    assert on_the_web(site, address) == whole


def test_without_an_address_nothing_needs_one_and_a_note_says_so(tmp_path: Path) -> None:
    built = compile_site(archive(tmp_path, "title: Site\n"))
    assert not [name for name in ("feed.xml", "sitemap.xml", "robots.txt") if (built.out / name).exists()]
    assert not page(built.out, "index.html").all("link", rel="canonical")
    (told,) = [f for f in built.findings if f.rule == "no-address"]
    assert (told.severity, told.place.file) == ("note", "content/publication.yaml")


def test_an_address_of_something_on_a_page_is_refused(tmp_path: Path) -> None:
    with pytest.raises(Refused) as refused:
        compile_site(archive(tmp_path, "title: Site\naddress: https://example.org/?site=2\n"))
    (told,) = [f for f in refused.value.findings if f.severity == "error"]
    assert (told.rule, told.place.line) == ("address-of-a-page", 2)


@pytest.mark.parametrize("host", ["ü" * 63 + ".example", "ü..example", "a" * 64 + ".example", "example.org:65536"])
def test_a_host_that_nobody_can_call_is_refused(host: str, tmp_path: Path) -> None:
    """RFC 1035, 2.3.4: a label has 63 octets at most; RFC 3490, 4.1: as it is sent; RFC 9293, 3.1: a port has 16 bits."""
    with pytest.raises(Refused) as refused:
        compile_site(archive(tmp_path, f"title: Site\naddress: https://{host}/tests/\n"))
    (told,) = [f for f in refused.value.findings if f.severity == "error"]
    assert (told.rule, told.place.line) == ("no-such-host", 2)


def test_a_wrong_address_is_not_called_a_lacking_one(tmp_path: Path) -> None:
    with pytest.raises(Refused) as refused:
        compile_site(archive(tmp_path, "title: Site\naddress: example.org\n"))
    assert "no-address" not in [f.rule for f in refused.value.findings]


def test_every_page_of_a_renamed_campaign_is_still_found_under_each_name_it_had(site: Path) -> None:
    now = {p.relative_to(site / "stoves").as_posix() for p in (site / "stoves").rglob("*.html")}
    for old in ("camp-cookers", "burners-compared"):
        assert {p.relative_to(site / old).as_posix() for p in (site / old).rglob("*.html")} == now


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("camp-cookers/index.html", "stoves/index.html"),
        ("stoves/contenders/sol.html", "stoves/contenders/corvane.html"),
        ("burners-compared/contenders/sol.html", "stoves/contenders/corvane.html"),
        ("stoves/tests/time-to-boil.html", "stoves/tests/boil-time.html"),
        ("stoves/side-by-side/ostler-and-sol.html", "stoves/side-by-side/corvane-and-ostler.html"),
    ],
)
def test_an_old_address_leads_to_the_new_one_with_and_without_waiting(site: Path, old: str, new: str) -> None:
    moved = page(site, old)
    for to in (
        moved.one("meta", http_equiv="refresh").attrs["content"].removeprefix("0; url="),
        moved.one("a", class_="moved").attrs["href"],
    ):
        assert (site / old).parent.joinpath(to).resolve() == (site / new).resolve()
    assert moved.one("link", rel="canonical").attrs["href"] == ROOT + new


def test_places_on_a_page_keep_the_names_they_had(site: Path) -> None:
    told = page(site, "stoves/tests/boil-time.html")
    ids = [e.attrs["id"] for e in told.all() if "id" in e.attrs]
    assert len(ids) == len(set(ids))
    was = {a.attrs["id"]: a.attrs["href"] for a in told.all("a") if "id" in a.attrs}
    assert was["time-to-boil"] == "#boil-time"
    assert was["result-time-to-boil-sol"] == "#result-boil-time-corvane"
    assert was["result-boil-time-sol"] == "#result-boil-time-corvane"
    assert was["result-time-to-boil-ostler"] == "#result-boil-time-ostler"
    assert was["table-time-to-boil"] == "#table-boil-time"
    assert {href.removeprefix("#") for href in was.values()} <= set(ids)
    sheet = page(site, "stoves/contenders/corvane.html")
    assert sheet.one("a", id="claim-time-to-boil").attrs["href"] == "#claim-boil-time"


def test_a_site_where_nothing_was_renamed_has_no_such_lines(site: Path) -> None:
    assert "formerly" not in (site / "lamps/tests/run-time.html").read_text(encoding="utf-8")


METHOD = "title: Boil it\nformerly: {}\nsteps: [Boil it.]\n"


@pytest.mark.parametrize("audited", [False, True])
def test_two_campaigns_that_had_one_name_are_refused_at_the_line_of_the_later(tmp_path: Path, audited: bool) -> None:
    both = {"burners": BURNERS, "stoves": STOVES}
    had = {id: text.replace("published:", "formerly: cookers\npublished:") for id, text in both.items()}
    place = archive(tmp_path, **had)
    if audited:
        findings = audit_path(place)
    else:
        with pytest.raises(Refused) as refused:
            compile_site(place)
        findings = refused.value.findings
    (told,) = [f for f in findings if f.severity == "error"]
    assert (told.rule, told.place.line) == ("former-name-twice", 3)
    assert told.place.file == "content/archive/stoves/campaign.yaml"


def test_a_methods_page_is_found_under_the_name_it_had_and_a_name_in_use_is_refused(tmp_path: Path) -> None:
    uses = STOVES.replace("boil time: timed, s, lower", "boil time: {kind: timed, unit: s, method: boil-it}")
    other = BURNERS.replace("boil time: timed, s, lower", "boil time: {kind: timed, unit: s, method: boil-a-cup}")
    place = archive(tmp_path, stoves=uses, burners=other)
    methods = place / "shared" / "methods"
    methods.mkdir(parents=True)
    (methods / "boil-it.1.yaml").write_text(METHOD.format("boil it up"), encoding="utf-8")
    (methods / "boil-a-cup.1.yaml").write_text("title: A cup\nsteps: [Boil it.]\n", encoding="utf-8")
    site = compile_site(place).out
    assert page(site, "methods/boil-it-up.1.html").one("a", class_="moved").attrs["href"] == "boil-it.1.html"
    (methods / "boil-it.1.yaml").write_text(METHOD.format("boil a cup"), encoding="utf-8")
    with pytest.raises(Refused) as refused:
        compile_site(place)
    (told,) = [f for f in refused.value.findings if f.severity == "error"]
    assert (told.rule, told.place.file, told.place.line) == (
        "former-name-in-use", "shared/methods/boil-it.1.yaml", 2,
    )  # fmt: skip
