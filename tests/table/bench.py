"""What must be sayable because it happens on every bench, row by row, and a compiled site to look whether it is said.

`ROWS` is the list; `@row(…)` on a test says which row it is about; `test_no_row_is_missing.py` holds that each has one.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path
from typing import Any, TypeVar

from tests.campaigns import compile_campaign
from tests.pages.reading import Element, read

ROWS = (
    "off the meter's scale; its limit unknown; below a detection limit",
    "roughly; with a stated width",
    "some was added and nobody weighed it",
    "read against another contender",
    "only an order was seen or heard",
    "nothing was read, and why",
    "one reading serves all",
    "units differ from row to row",
    "a difference in temperature",
    "facts of one pass",
    "a price range, listed or paid, with date and currency",
    "the maker contradicts itself; a claim settled by looking; one that no number can test",
    "two records of one reading disagree",
    "a typing slip in a raw file",
    "a result biased by what happened",
    "an assumption in a formula",
    "a contender or test not done yet, an endurance run still going",
    "moments in the film, photographs",
)
TESTS: dict[str, list[str]] = {}  # row → the tests that show it said

Test = TypeVar("Test", bound=Callable[..., None])


def row(name: str) -> Callable[[Test], Test]:
    """Marks a test as one that shows this row of the list said."""
    assert name in ROWS, name

    def marked(test: Test) -> Test:
        TESTS.setdefault(name, []).append(test.__name__)
        return test

    return marked


@dataclass(frozen=True)
class Site:
    """A compiled campaign: results.json, and its pages as a reader reads them (`index`, `tests/fuel`, `data` …)."""

    told: dict[str, Any]
    folder: Path

    @cached_property
    def _read(self) -> dict[str, Element]:
        return {}

    def page(self, address: str) -> Element:
        if address not in self._read:
            place = self.folder / ".site" / "stoves" / f"{address}.html"
            self._read[address] = read(place.read_text(encoding="utf-8"))
        return self._read[address]

    def text(self, address: str) -> str:
        return self.page(address).text


def site(place: Path, yaml: str, **files: str | bytes) -> Site:
    """The campaign compiled under `place`."""
    return Site(compile_campaign(place, yaml, **files), place / "stoves")


def one_line(text: str) -> str:
    """As `Element.text` has it: every run of spaces is one."""
    return " ".join(text.split())


def caveat_saying(seen: Site, sentence: str) -> dict[str, Any]:
    """The one caveat of results.json that says so."""
    (found,) = [c for c in seen.told["caveat_list"] if sentence in one_line(c["says"])]
    assert isinstance(found, dict)
    return found


def stands_wherever_it_bears(
    seen: Site, sentence: str, test: str, *, on: tuple[str, ...], quantity: str = ""
) -> dict[str, Any]:
    """A caveat stands in full, with its number, on the test's page, the first page and the sheets of those in `on`.

    On results, pairs, first place and claims of results.json it stands exactly where one of those in `on` bears; beside
    the sheets of all others it stands nowhere.
    """
    quantity = quantity or test
    caveat = caveat_saying(seen, sentence)
    number, id = str(caveat["number"]), caveat["id"]
    anchor = caveat["anchor"]
    for address in ("index", f"tests/{test}", *(f"contenders/{c}" for c in on)):
        box = seen.page(address).one(id=anchor)
        assert sentence in box.text, address
        assert box.one(class_="which").text == number
        assert number in _raised(seen.page(address)), f"{address} raises no {number}"
    for result in (r for r in seen.told["results"] if r["quantity"] == quantity):
        assert (id in result["caveats"]) is (result["contender"] in on), result["contender"]
        if result["contender"] not in on:
            assert sentence not in seen.text(f"contenders/{result['contender']}")
    for pair in (p for p in seen.told["comparisons"] if p["quantity"] == quantity):
        assert (id in pair["caveats"]) is bool({pair["first"], pair["second"]} & set(on)), pair
    for claim in (c for c in seen.told["claims"] if c["quantity"] == quantity and c["outcome"] != "not tested"):
        assert (id in claim["caveats"]) is (claim["contender"] in on), claim
        if claim["contender"] in on:
            said = seen.page(f"contenders/{claim['contender']}").one(id=claim["anchor"])
            assert number in _raised(said), "the claim rests on it and doesn't say so"
    return caveat


def _raised(inside: Element) -> list[str]:
    return [link.text for sup in inside.all("sup", class_="raised") for link in sup.all("a")]


def working_of(seen: Site, test: str, quantity: str, contender: str) -> str:
    """The words of one result's workings: every reading as written, and what it was taken for."""
    return seen.page(f"tests/{test}").one(id=f"result-{quantity}-{contender}").text


def row_of_sheet(seen: Site, contender: str, measured: str) -> str:
    """A row of the results on a contender's sheet."""
    table = seen.page(f"contenders/{contender}").one("table", class_="sheet-results")
    (found,) = [r.text for r in table.all("tr") if r.text.startswith(measured)]
    return found
