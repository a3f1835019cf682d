"""Items that are about the report itself: title, who, which one, for whom, when issued, who answers for it."""

from __future__ import annotations

from reportgen.addresses import campaign_page, on_the_web
from reportgen.pages.reported.item import Found, to
from reportgen.pages.told import Told
from reportgen.pages.words import words
from reportgen.prose.specimens import day_of


def title(told: Told, page: str) -> Found:
    """a) A title."""
    return Found("here", (words("items.a.title", title=told.campaign.title),), (to(told, page, "answer"),))


def tester(told: Told, page: str) -> Found:
    """b) Name and address of the laboratory: here of whoever tested."""
    of = told.publication
    if of.author and of.contact:
        return Found("here", (words("items.b.both", author=of.author, contact=of.contact),))
    if of.author:
        return Found("part", (words("items.b.author", author=of.author),))
    if of.contact:
        return Found("part", (words("items.b.contact", contact=of.contact),))
    return Found("missing", (words("items.b.neither", publication=of.title),))


def which_one(told: Told, page: str) -> Found:
    """d) Unique identification, and where it ends."""
    id, issue = told.campaign.id, str(told.issue)
    address = on_the_web(told.publication.address, campaign_page(id))
    doi = words("items.d.doi", doi=told.campaign.doi) if told.campaign.doi else ""
    said = (
        words("items.d.address", address=address, issue=issue)
        if address
        else words("items.d.inside", id=id, issue=issue)
    )
    ways = (to(told, page, "data", "check"), to(told, page, "changes"))
    return Found("here" if address or doi else "part", (said, doi, words("items.d.end")), ways)


def customer(told: Told, page: str) -> Found:
    """e) The customer: here at least who paid."""
    paid = told.campaign.who_pays or told.publication.who_pays
    if not paid:
        return Found("missing", (words("items.e.silent"),))
    return Found("part", (words("items.e.paid", says=paid),), (to(told, page, "method"),))


def issued(told: Told, page: str) -> Found:
    """j) The date of issue."""
    published, issue = told.campaign.published, str(told.issue)
    ways = (to(told, page, "changes"),)
    if published is None or not published.last:
        return Found("missing", (words("items.j.never", issue=issue),), ways)
    return Found("here", (words("items.j.day", issue=issue, day=day_of(published)),), ways)


def who_answers(told: Told, page: str) -> Found:
    """o) The persons authorising the report."""
    author = told.publication.author
    if not author:
        return Found("missing", (words("items.o.nobody"),))
    return Found("here", (words("items.o.author", author=author),))
