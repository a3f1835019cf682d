"""The laboratory behind a test's values: who, in which report, from which limits on, and the way to each page."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from reportgen.addresses import raw_file
from reportgen.campaign.declared import Amount, Laboratory, Test
from reportgen.pages.disclosed import Disclosed
from reportgen.pages.told import Told
from reportgen.pages.traces import file_link
from reportgen.pages.words import words
from reportgen.prose.amounts import typed
from reportgen.theme import Link
from reportgen.wording.day import day
from reportgen.wording.language import say
from reportgen.wording.listing import semicolons
from reportgen.wording.number import as_written


@dataclass(frozen=True)
class LaboratoryShown:
    """`report` opens the attachment, `pages` open it where values stand. Limits and uncertainty are printed."""

    name: str
    report: Link
    number: str
    date: str
    accredited: str
    detection_limit: str
    report_limit: str
    uncertainty: str
    pages: tuple[Link, ...]
    beware: str
    samples: tuple[Disclosed, ...] = ()


def laboratory_shown(told: Told, test: Test, page: str) -> LaboratoryShown | None:
    """The laboratory of a test as `page` shows it; None where none analysed its samples."""
    laboratory = test.laboratory
    if laboratory is None:
        return None
    pages = sorted({r.page for r in told.readings.of_test(test.id) if r.attachment and r.page})
    k = laboratory.coverage_factor
    return LaboratoryShown(
        name=laboratory.name,
        report=Link(laboratory.report, report_address(told, page, laboratory.report)),
        number=laboratory.number or words("not-noted"),
        date=day(d.first, d.last, d.text) if (d := laboratory.date) else words("not-noted"),
        accredited=laboratory.accredited or words("not-noted"),
        detection_limit=_limit(laboratory.detection_limit),
        report_limit=_limit(laboratory.report_limit),
        uncertainty=say(
            "laboratory.uncertainty", uncertainty=typed(laboratory.uncertainty), k=as_written(k) if k else ""
        )
        if laboratory.uncertainty
        else say("laboratory.not-stated"),
        pages=tuple(Link(str(n), report_address(told, page, laboratory.report, n)) for n in pages),
        beware=say("laboratory.sample"),
        samples=_samples(told, laboratory),
    )


def _samples(told: Told, laboratory: Laboratory) -> tuple[Disclosed, ...]:
    """When samples were taken and how they were diluted, contender by contender where that was said so."""
    days = {c: day(d.first, d.last, d.text) for c, d in laboratory.taken.items()}
    each = ((words("sample.taken"), days), (words("sample.diluted"), laboratory.diluted))
    return tuple(Disclosed(what, _of_each(told, said)) for what, said in each if said)


def _of_each(told: Told, said: Mapping[str, str]) -> str:
    named = (words("sample.of", name=told.campaign.contender(c).title, said=s) if c else s for c, s in said.items())
    return semicolons([*named])


def report_address(told: Told, page: str, report: str, at: int | None = None) -> str:
    """The way from a page to a report, at one of its pages where that is given (RFC 8118: `#page=3`)."""
    return file_link(page, raw_file(told.campaign.id, report), f"page={at}" if at else "")


def _limit(amount: Amount | None) -> str:
    return typed(amount) if amount else say("laboratory.not-stated")
