"""The laboratory that analysed samples, and the report that its values were typed from."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from reportgen.campaign.dates import DayOf
from reportgen.campaign.given import Entry
from reportgen.campaign.scalar import FilePath, SizeOf, Term, Weight, Whole, Words
from reportgen.campaign.shape import key
from reportgen.finding import Place


@dataclass(frozen=True, kw_only=True)
class WrittenLaboratory:
    """Who analysed samples, in which report, and from where on it finds and states a value."""

    at: Place
    name: Words | None = key("The laboratory's name")
    report: FilePath | None = key("Its report, a file in attachments/: PDF, picture or text")
    number: Term | None = key("The number of the report")
    date: DayOf | None = key("The day of the report")
    taken: DayOf | tuple[Entry[DayOf], ...] | None = key("The day its samples were taken; or contenders, a day each")
    diluted: Words | tuple[Entry[Words], ...] | None = key("How samples were diluted; or contenders, each its own")
    accredited: Words | None = key("For what it is accredited and by whom, or no")
    page: Whole | None = key("The page of the report that values stand on, where their rows name none")
    detection_limit: SizeOf | None = key("Below this it finds nothing: `not found` means from 0 to here")
    report_limit: SizeOf | None = key("From here on it states numbers; between the limits it says only `found`")
    uncertainty: SizeOf | None = key("The uncertainty it states: 10 % of the value, or in the value's unit")
    k: Weight | None = key("The coverage factor of that uncertainty, never guessed")
    LATER: ClassVar[tuple[str, ...]] = ()
