"""Names, ids and addresses: pure, so that everyone may ask.

A name as an author types it (`gas burned`) has one id (`gas-burned`), one spelling in formulas
(`gas_burned`) and one address. Addresses are lower-case ASCII.

An address lasts: it is made of ids, never of titles, sentences, places in a list, numbers or issues. What has no id (a
caveat, a claim) is called by the id its author gives it, else by what it is about: a claim about nothing measured by
the maker's first words, a product across campaigns by maker and title. A renamed thing says `formerly:`, and forwarding
pages and places lead on. The handbook's *Addresses that last* tells authors.
"""

from __future__ import annotations

import posixpath
import re
import unicodedata
from collections.abc import Iterable
from hashlib import sha256
from urllib.parse import quote, urlsplit

FEED = "feed.xml"
SITEMAP = "sitemap.xml"
SEARCH = "search.html"
LISTS = "about/lists.html"
SITE_PAGES = frozenset(
    {
        "methods",
        "instruments",
        "handbook",
        "about",
        "index",
        "search",
        "static",
        "contenders",
        "tests",
        "feed",
        "shared",
    }
)


def as_id(name: str) -> str:
    """`Gas burned`, `gas_burned` and `gas-burned` are one id: lower-case ASCII words joined by hyphens.

    Accents fall away (`Blåtand` is `blatand`); what has no ASCII letters or digits gives an empty string, and
    the caller refuses it.
    """
    for letter, plain in (("ß", "ss"), ("æ", "ae"), ("ø", "o"), ("ł", "l"), ("đ", "d"), ("Æ", "ae"), ("Ø", "o")):
        name = name.replace(letter, plain)
    folded = unicodedata.normalize("NFKD", name).encode("ascii", "ignore").decode().lower()
    return re.sub(r"[^a-z0-9]+", "-", folded).strip("-")


def in_formula(name: str) -> str:
    """The spelling of a name in formulas: underscores, and one in front where it begins with a digit."""
    word = as_id(name).replace("-", "_")
    return f"_{word}" if word[:1].isdigit() else word


def campaign_page(campaign: str, page: str = "index") -> str:
    """`index`, `method`, `report-items`, `data` or `changes` of a campaign."""
    return f"{campaign}/{page}.html"


def test_page(campaign: str, test: str) -> str:
    return f"{campaign}/tests/{test}.html"


def contender_page(campaign: str, contender: str) -> str:
    return f"{campaign}/contenders/{contender}.html"


def method_page(method: str, version: int) -> str:
    return f"methods/{method}.{version}.html"


def instrument_page(instrument: str) -> str:
    return f"instruments/{instrument}.html"


def side_by_side_page(campaign: str, one: str, other: str) -> str:
    """Where two contenders stand beside each other, whichever is named first: ids in the order of the alphabet.

    An id that holds the word `and` is joined by two more hyphens, which no id has, so that no two pairs share a page.
    """
    first, second = sorted((one, other))
    joint = "--and--" if "and" in (*first.split("-"), *second.split("-")) else "-and-"
    return f"{campaign}/side-by-side/{first}{joint}{second}.html"


def side_by_side_index(campaign: str) -> str:
    """Where a reader chooses whom to put beside whom."""
    return f"{campaign}/side-by-side/index.html"


PRODUCTS = "about/products/index.html"


def product_id(maker: str, title: str, contender: str) -> str:
    """What a product is called across campaigns: maker and title, the maker once where the title begins with it.

    `contender` is its id, taken where neither has a letter of ASCII.
    """
    by, name = as_id(maker), as_id(title)
    if not by or name == by or name.startswith(f"{by}-"):
        return name or contender
    return f"{by}-{name}" if name else f"{by}-{contender}"


def product_page(product: str) -> str:
    """Where everything that any campaign measured of a product stands."""
    return "about/products/index-.html" if product == "index" else f"about/products/{product}.html"


def results_file(campaign: str) -> str:
    return f"{campaign}/results.json"


def results_schema_file() -> str:
    """Where the JSON Schema of results.json stands, by the version of its shape."""
    return "about/results.1.schema.json"


def raw_file(campaign: str, path: str) -> str:
    """Where a file of the campaign's stands on the site, byte for byte; `path` from the campaign's folder."""
    return f"{campaign}/files/{path}"


def explored_file(campaign: str, chart: str) -> str:
    """Where that stands which a reader loads who explores a chart."""
    return f"{campaign}/charts/{chart}.js"


def photo_file(campaign: str, photo: str, name: str) -> str:
    """Where a photograph in one of its sizes stands; `name` is its width with its ending: 960.webp."""
    return f"{campaign}/photos/{photo}-{name}"


def preview_file(campaign: str = "") -> str:
    """Where the picture stands that is shown with shared links of a campaign's pages; without one, of the site's."""
    return f"{campaign}/preview.png" if campaign else "static/preview.png"


def part_id(part: str) -> str:
    """A part, as typed, in an address: `Second evening` is `second-evening`.

    One with signs that fall away there (letters beyond ASCII, `%`) ends with eight digits of its digest, so that no two
    parts share an address.
    """
    plain = as_id(part)
    if re.fullmatch("[A-Za-z0-9 _-]*", part):
        return plain
    return "-".join(filter(None, (plain, sha256(part.encode()).hexdigest()[:8])))


def part_called(said: str, parts: Iterable[str]) -> str | None:
    """The one of `parts` that is meant: the same in an address, else the only one alike but for its signs (`5-c` for
    `5 °C`); None where there is none, or several are."""
    each = tuple(dict.fromkeys(parts))
    for name in (part_id, as_id) if as_id(said) else (part_id,):
        found = [part for part in each if name(part) == name(said)]
        if len(found) == 1:
            return found[0]
    return None


def result_anchor(quantity: str, contender: str, part: str = "") -> str:
    return "-".join(filter(None, ("result", quantity, contender, part_id(part))))


def quantity_anchor(quantity: str, part: str = "") -> str:
    """Where a test's page holds a quantity; also what its chart is called."""
    return "-".join(filter(None, (quantity, part_id(part))))


def pairs_anchor(quantity: str, part: str = "") -> str:
    """Where a test's page holds each contender against each on a quantity: the reason for every place."""
    return "-".join(filter(None, ("pairs", quantity, part_id(part))))


def pair_anchor(quantity: str, first: str, second: str, part: str = "") -> str:
    """One pair of these, `first` and `second` in the campaign's order."""
    return "-".join(filter(None, ("pair", quantity, part_id(part), first, second)))


def across_anchor(quantity: str, part: str = "") -> str:
    """Where the page of a method's version holds what any campaign measured of a quantity by it."""
    return "-".join(filter(None, ("across", quantity, part_id(part))))


def table_anchor(quantity: str, part: str = "") -> str:
    return f"table-{quantity_anchor(quantity, part)}"


def figure_anchor(quantity: str, part: str = "") -> str:
    return "-".join(filter(None, ("figure", quantity, part_id(part))))


def claim_anchor(name: str) -> str:
    """`name` is the claim's own (`Claim.name`)."""
    return f"claim-{name}"


def caveat_anchor(name: str) -> str:
    """`name` is the caveat's own (`Caveat.name`), never its number, which moves when another is added."""
    return f"caveat-{name}"


def apart(names: Iterable[str]) -> tuple[str, ...]:
    """The same names in their order, none twice: the second of a name ends with -2."""
    taken: set[str] = set()
    found = []
    for name in names:
        n, free = 1, name
        while free in taken:
            n += 1
            free = f"{name}-{n}"
        taken.add(free)
        found.append(free)
    return tuple(found)


def from_to(page: str, target: str) -> str:
    """The relative link from one page of the site to another address on it (`target` may carry `#anchor`)."""
    path, _, anchor = target.partition("#")
    link = posixpath.relpath(path, posixpath.dirname(page) or ".") if path else ""
    if path == page and anchor:
        link = ""
    return f"{link}#{anchor}" if anchor else link


def on_the_web(site: str, address: str) -> str:
    """An address of the site as whole URI; `site` is where it stands, "" gives "".

    What a URI has no place for is percent-encoded (RFC 3986, 2.1 and 2.4; RFC 3987, 3.1), and so is an apostrophe,
    which pages print as ’; a host outside ASCII is written as IDNA has it (RFC 3490, 4.1).
    """
    if not site:
        return ""
    told = urlsplit(site)
    host = told.netloc if told.netloc.isascii() else told.netloc.encode("idna").decode("ascii")
    page, _, place = address.rpartition("#")
    path, anchor = (page, place) if page.endswith(".html") else (address, "")  # only pages have anchors
    before = quote(told.path.rstrip("/"), safe=_IN_A_PATH + "%")
    whole = f"{told.scheme.lower()}://{host.lower()}{before}/{quote(path, safe=_IN_A_PATH)}"
    return f"{whole}#{quote(anchor, safe=_IN_A_PATH)}" if anchor else whole


_IN_A_PATH = "/-._~!$&()*+,;=:@"  # RFC 3986, 3.3, without '
