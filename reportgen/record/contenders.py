"""One row of the record for each contender: what was bought, what it cost, what was in the box."""

from __future__ import annotations

from typing import Any

from reportgen.campaign.declared import Contender, Price, Specimen
from reportgen.record.plain import number

Row = dict[str, Any]


def contender_row(contender: Contender) -> Row:
    """The contender as declared. Dates and prices are as typed; `missing` are items the box lacked."""
    return {
        "id": contender.id,
        "title": contender.title,
        "maker": contender.maker or None,
        "model": contender.model or None,
        "gtin": contender.gtin or None,
        "prices": [_price(p) for p in contender.prices],
        "as_received": list(contender.as_received),
        "in_the_box": dict(contender.in_the_box),
        "missing": list(contender.missing),
        "specimens": [_specimen(s) for s in contender.specimens],
        "facts": dict(contender.facts),
        "firmware": contender.firmware or None,
        "settings": contender.settings or None,
        "put_right": contender.put_right or None,
    }


def _price(price: Price) -> Row:
    return {
        "sort": price.sort,
        "low": number(float(price.low)),
        "high": number(float(price.high)),
        "currency": price.currency,
        "date": price.date.text if price.date else None,
        "where": price.where or None,
        "text": price.text,
    }


def _specimen(specimen: Specimen) -> Row:
    return {
        "id": specimen.id,
        "serial": specimen.serial or None,
        "bought_where": specimen.bought_where or None,
        "bought_on": specimen.bought_on.text if specimen.bought_on else None,
        "as_received": list(specimen.as_received),
        "put_right": specimen.put_right or None,
    }
