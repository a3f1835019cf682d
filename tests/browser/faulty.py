"""A little site in which each page has one thing wrong, and what an inspection should say of it."""

from __future__ import annotations

import random
from pathlib import Path

SOUND = """<!doctype html><html lang="en" dir="ltr" data-kind="{kind}"><head><meta charset="utf-8"><title>Sound</title>
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'self'; img-src 'self' data:">
<link rel="icon" href="data:,"><link rel="canonical" href="https://example.org/s/{name}">
{head}</head>
<body><main id="m"><h1>Sound</h1>{body}<p><a href="index.html#m">The first page</a></p></main></body></html>"""
STYLE = """
.box { overflow-x: auto; inline-size: 100px } .box p { inline-size: 600px }
.low { block-size: 20px; line-height: 20px; overflow: hidden }
.line { white-space: nowrap }
.row { display: flex } .late { order: -1 }
.bare:focus { outline: none }
@keyframes turn { to { rotate: 360deg } } .turns { animation: turn 2s infinite }
@media (prefers-color-scheme: dark) { .dim { background: #222; color: #444 } }
.over { position: fixed; inset: 0 0 200px 0; background: #eee }
.sheet { inline-size: 280px } @media print { .sheet { inline-size: 1000px } }
nav a { display: inline-block; font-size: 10px; margin: 1px }
"""
STYLED = '<link rel="stylesheet" href="rules.css">'
LATE = """new PerformanceObserver((painted, once) => {
  once.disconnect();
  setTimeout(() => document.querySelector("h1").before(document.createTextNode("later ".repeat(300))), 200);
}).observe({ type: "paint", buffered: true });"""

# name, kind, what stands in it, what more is in its head
PAGES = (
    ("index.html", "sound", "", ""),
    ("script.html", "", "", '<script src="boom.js"></script>'),
    ("policy.html", "", "<script>document.title = 'x'</script>", ""),
    ("missing.html", "", '<img src="gone.png" alt="Gone" width="9" height="9">', ""),
    (
        "away.html",
        "",
        '<img src="https://example.org/a.png" alt="Away" width="9" height="9">',
        '<script src="http://192.0.2.1/a.js"></script>',
    ),
    ("wide.html", "", '<pre id="wide">' + "x" * 200 + "</pre>", ""),
    ("less-wide.html", "", '<pre id="narrow">' + "x" * 42 + "</pre>", ""),
    ("textless.html", "", '<img src="data:,"><svg role="img" viewBox="0 0 9 9"></svg>', ""),
    ("nameless.html", "", '<label>Name</label><input type="text">', ""),
    ("twice.html", "", '<p id="a">x</p>\n<p id="a">y</p>', ""),
    ("jump.html", "", "<h3>Third</h3>\n<h1>First again</h1>", ""),
    ("box.html", "", '<div class="box"><p>It scrolls.</p></div>', STYLED),
    ("low.html", "", '<p class="low">' + "Words in a low box " * 2 + "</p>", STYLED),
    ("spaced.html", "", '<p class="line">' + "i " * 30 + "</p>", STYLED),
    ("keys.html", "", '<button tabindex="3">First</button><button tabindex="-1">Never</button>', ""),
    ("order.html", "", '<p class="row"><span>One</span> <span class="late">Two</span></p>', STYLED),
    ("bare.html", "", '<p><a class="bare" href="index.html">Unmarked</a></p>', STYLED),
    ("turns.html", "", '<p class="turns">Round</p>', STYLED),
    ("paper.html", "", '<p class="sheet">Wide on paper</p>', STYLED),
    ("dim.html", "dim", '<p class="dim">Hard to read in the dark</p>', STYLED),
    (
        "small.html",
        "",
        '<nav><a href="index.html">a</a><a href="index.html">b</a><a href="index.html">c</a></nav>',
        STYLED,
    ),
    ("covered.html", "covered", '<p><a href="index.html">Under it</a></p><div class="over">Over it</div>', STYLED),
    ("idle.html", "idle", '<p><button type="button">Press</button></p>', ""),
    ("moves.html", "moves", "", '<script src="late.js" defer></script>'),
    ("heavy.html", "campaign", '<img src="noise.bin" alt="Noise" width="9" height="9">', ""),
    ("linked.html", "", "", '<script type="application/ld+json">{"@context": "https://schema.org", }</script>'),
    ("typeless.html", "", "", '<script type="application/ld+json">{"@context": "https://schema.org"}</script>'),
)
FORWARD = """<!doctype html><html lang="en" dir="ltr"><head><meta charset="utf-8"><title>Moved</title>
<meta http-equiv="refresh" content="0; url={to}"></head><body><p><a href="{link}">It is here now</a></p></body></html>"""
FORWARDS = {
    "old.html": ("index.html", "index.html"),
    "old-nowhere.html": ("gone.html", "gone.html"),
    "old-circle.html": ("old-circle-2.html", "old-circle-2.html"),
    "old-circle-2.html": ("old-circle.html", "old-circle.html"),
    "old-unlinked.html": ("index.html", "wide.html"),
}
FEED = """<?xml version="1.0"?><feed xmlns="http://www.w3.org/2005/Atom"><id>urn:x</id><title>x</title>
<updated>2026-01-01T00:00:00Z</updated><entry><id>urn:y</id><title>y</title>
<link href="https://example.org/s/gone.html"/></entry></feed>"""
MAP = """<?xml version="1.0"?><urlset xmlns="http://www.sitemaps.org/schemas/sitemap/0.9">
<url><loc>https://example.org/s/gone.html</loc></url></urlset>"""

SAYS = (
    ("script.html", "script error", "boom"),
    ("policy.html", "script error", "Content Security Policy"),
    ("missing.html", "failed request", "gone.png answers 404"),
    ("missing.html", "dead link", "gone.png"),
    ("away.html", "leaves the site", "https://example.org/a.png"),
    ("away.html", "leaves the site", "http://192.0.2.1/a.js"),
    ("wide.html", "overflow", "at 390 px: pre#wide"),
    ("less-wide.html", "overflow", "at 320 px: pre#narrow"),
    ("textless.html", "missing alternative", "the image data:,"),
    ("textless.html", "missing alternative", "a drawing"),
    ("textless.html", "picture without a size", "the image data:,"),
    ("nameless.html", "accessibility", "label"),
    ("small.html", "accessibility", "target-size"),
    ("dim.html", "accessibility", "dark, at 1280 px: Elements must meet minimum color contrast"),
    ("twice.html", "anchor twice", "“a” stands here twice"),
    ("jump.html", "headings", "level 1 to level 3"),
    ("jump.html", "headings", "second heading of the first level"),
    ("box.html", "region", "div.box"),
    ("low.html", "text spacing", "p.low is cut"),
    ("spaced.html", "text spacing", "the page is wider than its window"),  # and is not, once the spacing is taken off
    ("keys.html", "keyboard", "comes before what stands above it: button “First”"),
    ("keys.html", "keyboard", "not reached by keys: button “Never”"),
    ("order.html", "keyboard", "in another order than it is seen: span.late “Two”"),
    ("bare.html", "keyboard", "doesn't show that it has the focus: a.bare “Unmarked”"),
    ("turns.html", "motion", "p.turns"),
    ("paper.html", "paper", "p.sheet"),
    ("covered.html", "tab order", "covers a “Under it”"),
    ("idle.html", "needs a script", "button “Press” does nothing"),
    ("moves.html", "things move", "while it loads on a slow phone"),
    ("heavy.html", "too much loaded", "150000 is the most"),
    ("linked.html", "linked data", "is no JSON"),
    ("typeless.html", "linked data", "no @type"),
    ("old-nowhere.html", "forwarding", "“gone.html” leads nowhere"),
    ("old-circle.html", "forwarding", "in a circle"),
    ("old-unlinked.html", "forwarding", "without a link to it"),
    ("feed.xml", "feed", "entry 1 lacks updated"),
    ("feed.xml", "feed", "gone.html”, which isn't there"),
    ("sitemap.xml", "list of pages", "gone.html” isn't there"),
    ("sitemap.xml", "list of pages", "leaves out away.html"),
)


def write(site: Path) -> None:
    """All of it, into a folder that is there."""
    for name, kind, body, head in PAGES:
        page = SOUND.format(name=name, kind=kind or "plain", body=body, head=head)
        (site / name).write_text(page, encoding="utf-8")
    for name, (to, link) in FORWARDS.items():
        (site / name).write_text(FORWARD.format(to=to, link=link), encoding="utf-8")
    for name, text in (("rules.css", STYLE), ("late.js", LATE), ("boom.js", "throw new Error('boom')")):
        (site / name).write_text(text, encoding="utf-8")
    (site / "noise.bin").write_bytes(random.Random(1).randbytes(151_000))
    (site / "feed.xml").write_text(FEED, encoding="utf-8")
    (site / "sitemap.xml").write_text(MAP, encoding="utf-8")
