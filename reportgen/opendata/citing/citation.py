"""What a citation of a campaign says, whatever form it is written in."""

from __future__ import annotations

import re
from dataclasses import dataclass

from reportgen.addresses import campaign_page, on_the_web
from reportgen.campaign.declared import Campaign, Day, Publication
from reportgen.opendata.licences import Licence, licence_of
from reportgen.wording.language import say


@dataclass(frozen=True)
class Citation:
    """`author` is the publication's, or its title where it names none. `date` is when the campaign was published, else
    tested: year, month, day as far as they were written, () for none; `shown` the same in ISO 8601, `released` the day
    of publication where it is known to the day. `address` is "" where the publication has none, `doi` without its
    resolver."""

    key: str
    title: str
    author: str
    publisher: str
    issue: str
    date: tuple[int, ...]
    shown: str
    address: str
    language: str
    licence: Licence | None
    doi: str = ""
    about: str = ""
    released: str = ""


def citation_of(campaign: Campaign, publication: Publication, issue: int) -> Citation:
    """The citation of an issue of a campaign."""
    shown, published = written_last(campaign.dated), written_last(campaign.published)
    return Citation(
        key=f"{campaign.id}-issue-{issue}",
        title=campaign.title,
        author=publication.author or publication.title,
        publisher=publication.title,
        issue=str(issue),
        date=tuple(int(part) for part in shown.split("-") if part),
        shown=shown,
        address=on_the_web(publication.address, campaign_page(campaign.id)),
        language=publication.language,
        licence=licence_of(publication.licence),
        doi=campaign.doi,
        about=campaign.question,
        released=published if len(published) == len("2026-05-24") else "",
    )


def written_last(day: Day | None) -> str:
    """The last date of a day as typed, with the precision it was typed with (`2026-05`); "" for none."""
    found = re.findall(r"\d{4}(?:-\d{2}){0,2}", day.text) if day and day.last else []
    return found[-1] if found else ""


def as_line(cited: Citation) -> str:
    """One line to copy."""
    where = f"https://doi.org/{cited.doi}" if cited.doi else cited.address
    gaps = {
        "author": cited.author,
        "year": cited.shown[:4] or say("opendata.cite.undated"),
        "title": cited.title,
        "issue": cited.issue,
    }
    if cited.author != cited.publisher:
        gaps["publisher"] = cited.publisher
        return say("opendata.cite.at", **gaps, address=where) if where else say("opendata.cite", **gaps)
    return say("opendata.cite.own.at", **gaps, address=where) if where else say("opendata.cite.own", **gaps)
