"""campaign.yaml."""

from __future__ import annotations

from dataclasses import dataclass

from reportgen.campaign.given import Entry
from reportgen.campaign.scalar import FilePath, Words
from reportgen.campaign.shape import key, many
from reportgen.campaign.written.measure import WrittenQuantity
from reportgen.finding import Place


@dataclass(frozen=True)
class WrittenCampaign:
    """One comparison."""

    at: Place
    title: Words = key("What the page is headed with", required=True)
    contenders: tuple[Entry[Words | None], ...] = many("The products compared: id and title each")
    question: Words | None = key("The question it answers, where the title is none")
    measure: tuple[Entry[WrittenQuantity], ...] = many("What is measured: each is a test with one quantity")
    readings: FilePath | None = key("The file the readings stand in")
