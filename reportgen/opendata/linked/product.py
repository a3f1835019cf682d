"""A contender as a schema.org Product: what it is and what was measured of it. No stars: nothing here is a rating."""

from __future__ import annotations

from typing import Any

from reportgen.addresses import campaign_page, contender_page, from_to, on_the_web
from reportgen.campaign.declared import Campaign, Contender, Publication
from reportgen.evaluation.evaluated import Result
from reportgen.opendata.linked.as_text import as_text, filled
from reportgen.record.plain import number
from reportgen.record.printed import printed

Row = dict[str, Any]


def product(campaign: Campaign, publication: Publication, c: Contender, results: tuple[Result, ...], page: str) -> str:
    """The data block of a contender's page; `results` are all of the campaign's."""

    def at(address: str) -> str:
        return on_the_web(publication.address, address) or from_to(page, address)

    told: Row = {
        "@context": "https://schema.org",
        "@type": "Product",
        "@id": f"{at(contender_page(campaign.id, c.id))}#product",
        "name": c.title,
        "brand": filled({"@type": "Brand", "name": c.maker}) if c.maker else {},
        "model": c.model,
        "gtin": c.gtin,
        "additionalProperty": [_property(campaign, r) for r in results if r.contender == c.id and not r.missing],
        "subjectOf": {"@type": "Dataset", "@id": f"{at(campaign_page(campaign.id))}#data", "name": campaign.title},
    }
    return as_text(filled(told))


def _property(campaign: Campaign, r: Result) -> Row:
    """A number stands as value with its interval; a bound as the one end that is known; anything else in words."""
    e = r.estimate
    title = campaign.quantity(r.quantity).title
    told: Row = {
        "@type": "PropertyValue",
        "propertyID": r.quantity,
        "name": f"{title}, {r.part}" if r.part else title,
        "description": printed(r),
    }
    if r.kind not in ("measured", "count") or e is None or e.value is None:
        return filled({**told, "value": printed(r), "description": ""})
    if e.limit:
        return filled({**told, "minValue" if e.limit == "above" else "maxValue": number(e.value), "unitText": e.unit})
    return filled({**told, "value": number(e.value), "unitText": e.unit})
