"""A campaign as a schema.org Dataset."""

from __future__ import annotations

from typing import Any

from reportgen.addresses import campaign_page, from_to, method_page, on_the_web
from reportgen.campaign.declared import Campaign, Day, Publication
from reportgen.opendata.citing.citation import written_last
from reportgen.opendata.files import OpenData, media_type
from reportgen.opendata.linked.as_text import as_text, filled

Row = dict[str, Any]


def dataset(campaign: Campaign, publication: Publication, data: OpenData, page: str, answer: str) -> str:
    """The data block of the page at `page`. `answer` is what was found, in plain words.

    Addresses are whole where the publication says where it stands; else they lead from the page.
    """
    cited = data.citation

    def at(address: str) -> str:
        return on_the_web(publication.address, address) or from_to(page, address)

    told: Row = {
        "@context": "https://schema.org",
        "@type": "Dataset",
        "@id": f"{at(campaign_page(campaign.id))}#data",
        "name": campaign.title,
        "description": " ".join(filter(None, (campaign.question, answer))),
        "url": at(campaign_page(campaign.id, "data")),
        "identifier": f"https://doi.org/{cited.doi}" if cited.doi else "",
        "inLanguage": publication.language,
        "version": cited.issue,
        "datePublished": written_last(campaign.published),
        "temporalCoverage": interval(campaign.tested),
        "license": data.licence.address if data.licence else "",
        "isAccessibleForFree": True,
        "creator": filled({"@type": "Organization", "name": cited.author}),
        "publisher": filled({"@type": "Organization", "name": cited.publisher, "url": publication.address}),
        "variableMeasured": [
            filled({"@type": "PropertyValue", "propertyID": q.id, "name": q.title, "unitText": q.unit})
            for t in campaign.tests
            for q in t.quantities
        ],
        "measurementTechnique": [at(method_page(m.id, m.version)) for _, m in sorted(campaign.methods.items())],
        "distribution": [
            {
                "@type": "DataDownload",
                "name": f.table.shape.title if f.table else f.path,
                "encodingFormat": media_type(f.form),
                "contentUrl": at(f"{campaign.id}/{f.path}"),
            }
            for f in data.files
            if f.table or f.form == "json"
        ],
    }
    return as_text(filled(told))


def interval(day: Day | None) -> str:
    """Days as ISO 8601 has them: one, or first and last with a stroke between; "" for none."""
    if day is None or not day.first:
        return ""
    return day.first if day.first == day.last else f"{day.first}/{day.last}"
