"""What pages tell machines: JSON-LD in the words of schema.org."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from inspect import get_annotations
from pathlib import Path
from typing import Any

import msgspec_schemaorg.models as vocabulary
import pytest
from pyld import jsonld

from reportgen.opendata.linked.as_text import as_text

SCHEMA = "https://schema.org/"
CONTEXT = {"@context": {"@vocab": SCHEMA, **{p: {"@type": "@id"} for p in ("url", "license", "contentUrl")}}}
BLOCK = re.compile(r'<script type="application/ld\+json">(.*?)</script>', re.DOTALL)


def block(site: Path, page: str) -> dict[str, Any]:
    (found,) = BLOCK.findall((site / page).read_text(encoding="utf-8"))
    told = json.loads(found)
    assert isinstance(told, dict)
    return told


def things(value: Any) -> Iterator[dict[str, Any]]:
    if isinstance(value, dict):
        yield value
        for inner in value.values():
            yield from things(inner)
    if isinstance(value, list):
        for inner in value:
            yield from things(inner)


PAGES = ("index.html", "contenders/corvane.html", "contenders/tamsin.html")


@pytest.mark.parametrize("page", PAGES)
def test_every_type_and_property_is_of_the_vocabulary_and_fits(demo_site: Path, page: str) -> None:
    """schema.org's own types, properties, domains and ranges, as the package msgspec-schemaorg carries them (0.2.1)."""
    told = block(demo_site, f"demo-campaign/{page}")
    seen = 0
    for thing in things(told):
        kind = getattr(vocabulary, thing["@type"])
        for name, value in thing.items():
            if name.startswith("@"):
                continue
            assert name in kind.__struct_encode_fields__, f"{thing['@type']} has no {name}"
            allowed = range_of(kind, name)
            for one in value if isinstance(value, list) else [value]:
                assert fits(one, allowed), f"{name} of {thing['@type']}: {one!r} is none of {sorted(allowed)}"
            seen += 1
    assert seen > 20


def range_of(kind: type, name: str) -> set[str]:
    """The names in a property's annotation."""
    return {word for base in kind.__mro__ for word in re.findall(r"\w+", str(get_annotations(base).get(name, "")))}


def fits(value: Any, allowed: set[str]) -> bool:
    if isinstance(value, dict):
        return bool({base.__name__ for base in getattr(vocabulary, value["@type"]).__mro__} & allowed)
    plain = {bool: {"bool"}, int: {"int", "float"}, float: {"float"}, str: {"str", "URL", "date", "datetime"}}[
        type(value)
    ]
    return bool(plain & allowed)


@pytest.mark.parametrize("page", PAGES)
def test_a_processor_of_linked_data_drops_nothing(demo_site: Path, page: str) -> None:
    """pyld expands the block (JSON-LD 1.1) with a context given here, as nothing is fetched: each term becomes one of
    schema.org's, each address a whole one."""
    told = {**block(demo_site, f"demo-campaign/{page}"), **CONTEXT}
    base = f"https://example.org/tests/demo-campaign/{page}"
    (expanded,) = jsonld.expand(told, {"base": base})
    assert expanded["@id"].startswith("https://example.org/tests/demo-campaign/")
    assert {key for key in expanded if not key.startswith("@")} == {SCHEMA + k for k in told if not k.startswith("@")}
    assert len(jsonld.to_rdf(told, {"base": base})["@default"]) > 20


def test_a_campaign_is_a_dataset_that_says_where_its_files_are(demo_site: Path, demo_told: dict[str, Any]) -> None:
    told = block(demo_site, "demo-campaign/index.html")
    assert told["@type"] == "Dataset"
    assert told["license"] == "https://creativecommons.org/licenses/by/4.0/"
    assert (told["datePublished"], told["temporalCoverage"]) == ("2026-05-24", "2026-05-02/2026-05-17")
    measured = {v["propertyID"]: v.get("unitText") for v in told["variableMeasured"]}
    assert measured["gas-burned"] == "g"
    assert set(measured) == {r["quantity"] for r in demo_told["results"]}
    for one in told["distribution"]:
        path = one["contentUrl"].removeprefix("https://example.org/tests/")
        assert (demo_site / path).is_file(), one
        assert one["encodingFormat"].count("/") == 1
    assert {one["encodingFormat"] for one in told["distribution"]} >= {"text/csv", "application/vnd.apache.parquet"}


def test_a_contender_is_a_product_with_what_was_measured_and_no_stars(
    demo_site: Path, demo_told: dict[str, Any]
) -> None:
    told = block(demo_site, "demo-campaign/contenders/corvane.html")
    assert (told["@type"], told["brand"]["name"]) == ("Product", "Corvane")
    assert not {"review", "aggregateRating", "offers"} & set(told)
    said = {p["propertyID"]: p for p in told["additionalProperty"]}
    for r in demo_told["results"]:
        if (
            r["contender"] == "corvane"
            and r["kind"] == "measured"
            and r["value"] is not None
            and not r["limit"]
            and not r["part"]
        ):
            assert said[r["quantity"]]["value"] == r["value"]
            assert said[r["quantity"]].get("unitText", "") == r["unit"]
            assert said[r["quantity"]]["description"] == r["printed"]


def test_a_bound_is_told_as_a_bound(demo_site: Path) -> None:
    """The Brindle gave off more carbon monoxide than the meter can show: 999 ppm."""
    told = block(demo_site, "demo-campaign/contenders/brindle.html")
    (found,) = [p for p in told["additionalProperty"] if p["propertyID"] == "carbon-monoxide"]
    assert found["minValue"] == 999
    assert "value" not in found


def test_nothing_in_a_block_can_end_it() -> None:
    """HTML Living Standard, 4.12.1.3: `</script` and `<!--` inside a script element."""
    hostile = {"name": "</script><script>alert(1)</script><!-- & \u2028"}
    text = as_text(hostile)
    assert not set("<>&\u2028") & set(text)
    assert json.loads(text) == hostile


def test_a_day_of_publication_that_was_not_noted_is_no_date(tmp_path: Path) -> None:
    """What is cited then is the day of testing, and nothing says that it was published on it."""
    from tests.campaigns import SMALLEST, SMALLEST_READINGS, compile_campaign

    days = "tested: 2026-05-30\npublished: not noted\n"
    compile_campaign(tmp_path, days + SMALLEST, readings=SMALLEST_READINGS)
    folder = tmp_path / "stoves" / ".site" / "stoves"
    told = block(folder, "index.html")
    assert "datePublished" not in told
    assert told["temporalCoverage"] == "2026-05-30"
    assert "date-released" not in (folder / "CITATION.cff").read_text(encoding="utf-8")
    assert "created" not in json.loads((folder / "datapackage.json").read_text(encoding="utf-8"))
    assert "30 May 2026" in (folder.parent / "index.html").read_text(encoding="utf-8")


def test_without_an_address_the_ways_lead_from_the_page(tmp_path: Path) -> None:
    from tests.campaigns import compile_campaign

    compile_campaign(tmp_path)
    site = tmp_path / "stoves" / ".site"
    told = block(site, "stoves/index.html")
    assert all((site / "stoves" / one["contentUrl"]).is_file() for one in told["distribution"])
    assert "license" not in told
