"""A site is opened as a reader's browser opens it, and nothing leaves the machine."""

from __future__ import annotations

from pathlib import Path

import pytest

from reportgen.browser.inspect import Fault, inspect_site

pytestmark = pytest.mark.browser

SOUND = """<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Sound</title>
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'self'"></head>
<body><main id="m"><h1>Sound</h1><p><a href="index.html#m">This page</a></p></main></body></html>"""


def put(site: Path, name: str, body: str, head: str = "") -> None:
    page = SOUND.replace("<p>", body + "<p>").replace("</head>", head + "</head>")
    (site / name).write_text(page, encoding="utf-8")


@pytest.fixture(scope="module")
def faults(tmp_path_factory: pytest.TempPathFactory) -> dict[str, list[Fault]]:
    """One browser for all: what is found on each page."""
    site = tmp_path_factory.mktemp("site")
    put(site, "index.html", "")
    (site / "boom.js").write_text("throw new Error('boom')")
    put(site, "script.html", "", '<script src="boom.js"></script>')
    put(site, "policy.html", "", "<script>document.title = 'x'</script>")
    put(site, "missing.html", '<img src="gone.png" alt="Gone">')
    put(
        site,
        "away.html",
        '<img src="https://example.org/a.png" alt="Away">',
        '<script src="http://192.0.2.1/a.js"></script>',
    )
    put(site, "wide.html", '<pre id="wide">' + "x" * 200 + "</pre>")
    put(site, "textless.html", '<img src="data:,"><svg role="img" viewBox="0 0 9 9"></svg>')
    put(site, "grey.html", '<label>Name</label><input type="text">')
    inspected = inspect_site(site)
    assert inspected.pages == 8
    found: dict[str, list[Fault]] = {}
    for fault in inspected.faults:
        found.setdefault(fault.page, []).append(fault)
    return found


def test_a_sound_page_has_no_faults(faults: dict[str, list[Fault]]) -> None:
    assert "index.html" not in faults


@pytest.mark.parametrize(
    ("page", "sort", "says"),
    [
        ("script.html", "script error", "boom"),
        ("policy.html", "script error", "Content Security Policy"),
        ("missing.html", "failed request", "gone.png answers 404"),
        ("missing.html", "dead link", "gone.png"),
        ("away.html", "leaves the site", "https://example.org/a.png"),
        ("away.html", "leaves the site", "http://192.0.2.1/a.js"),
        ("wide.html", "overflow", "pre#wide"),
        ("textless.html", "missing alternative", "the image data:,"),
        ("textless.html", "missing alternative", "a drawing"),
        ("grey.html", "accessibility", "label"),
    ],
)
def test_a_fault_is_found_where_it_is(faults: dict[str, list[Fault]], page: str, sort: str, says: str) -> None:
    assert [f for f in faults[page] if f.sort == sort and says in f.says]
