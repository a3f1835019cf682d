"""contenders/<id>.yaml: one product under test, as bought."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from reportgen.campaign.dates import DayOf
from reportgen.campaign.given import Entry
from reportgen.campaign.identifiers import GtinOf
from reportgen.campaign.ranges import MoneyOf
from reportgen.campaign.scalar import AmountOf, Name, SizeOf, Term, Words, YesNo
from reportgen.campaign.shape import Short, key, many
from reportgen.campaign.written.pictures import WrittenPictured
from reportgen.finding import Place


@dataclass(frozen=True, kw_only=True)
class WrittenPurchase:
    """Where and when it was bought."""

    at: Place
    where: Words | None = key("The shop, or what sort of shop")
    date: DayOf | None = key("The day, or `not noted`")
    SHORT: ClassVar[Short] = Short(lambda text: {"where": text}, r"\S", ("a shop in town, from the shelf",))


@dataclass(frozen=True, kw_only=True)
class WrittenPrice:
    """One price, as paid or as listed."""

    at: Place
    paid: MoneyOf | None = key("What was paid, with its currency")
    listed: MoneyOf | None = key("What it is listed at, or from what to what")
    date: DayOf | None = key("The day of this price")
    where: Words | None = key("The shop it was seen at")


@dataclass(frozen=True, kw_only=True)
class WrittenClaim:
    """What the maker states, with its source."""

    at: Place
    says: tuple[Entry[Words], ...] | Words = key(
        "The maker's words; where sources differ, each with its own", required=True, any_names=True
    )
    source: Words | None = key("Where the maker says so")
    quantity: Name | None = key("The quantity that would show it")
    at_most: AmountOf | None = key("It claims no more than this")
    at_least: AmountOf | None = key("It claims no less than this")
    is_: AmountOf | None = key("It claims this value")
    within: SizeOf | None = key("The tolerance it gives with that value")
    part: Term | None = key("The part it is about, where the quantity has a result for each")
    under: Words | None = key("The condition it is claimed under")
    tested_so: Words | None = key("Whether the test was run under that very condition: begins with yes or no")
    looked: Words | None = key("What looking showed, where looking settles it: begins with yes or no")
    included: Name | None = key("The item of the box whose being there answers it")
    testable: YesNo | None = key("no: no number could test it")
    why: Words | None = key("Why it can't be tested, or wasn't")
    id: Term | None = key("What its address on the site ends with; else its quantity, or the maker's first words")
    SHORT: ClassVar[Short] = Short(lambda text: {"says": text}, r"\S", ("Never needs cleaning",))


@dataclass(frozen=True, kw_only=True)
class WrittenSpecimen:
    """One unit of a contender, where several were bought."""

    at: Place
    serial: Term | None = key("Its serial number, or `not noted`")
    bought: WrittenPurchase | None = key("Where and when it was bought, where that differs")
    as_received: tuple[Words, ...] = many("What was seen when it was unpacked")
    put_right: Words | None = key("What was done about damage seen on arrival; nothing, where it was used as it came")
    SHORT: ClassVar[Short] = Short(lambda text: {"serial": text}, r"\S", ("C-20431",))


WrittenBox = tuple[Entry[Words], ...] | tuple[Words | tuple[Entry[Words], ...], ...]  # one item, or several


@dataclass(frozen=True, kw_only=True)
class WrittenContender(WrittenPictured):
    """One product under test, as bought."""

    at: Place
    title: Words = key("Its name on pages", required=True)
    maker: Words | None = key("Who makes it")
    model: Term | None = key("The maker's own designation")
    gtin: GtinOf | None = key("The number under its bar code (GTIN), by which others know the product")
    bought: WrittenPurchase | None = key("Where and when it was bought")
    supplied_by: Words | None = key("Who supplied it, where it wasn't bought at retail")
    prices: tuple[WrittenPrice, ...] = many("Prices, each paid or listed, with date")
    paid: MoneyOf | None = key("What was paid for it, on the day it was bought")
    listed: MoneyOf | None = key("What it is listed at")
    as_received: tuple[Words, ...] = many("What was seen when it was unpacked")
    put_right: Words | None = key("What was done about damage seen on arrival; nothing, where it was used as it came")
    firmware: Term | None = key("The version of its firmware while it was tested, or `not noted`")
    settings: Words | None = key("`as shipped`, or what was set otherwise and by whom")
    claims: tuple[WrittenClaim, ...] = many("What the maker states")
    specimens: tuple[Entry[WrittenSpecimen | None], ...] | tuple[Name, ...] = many(
        "The units bought, where there are several: what the column `specimen` says, and its serial"
    )
    usual_specimen: Term | None = key("Which of them a row is of that names none, where one did most of the work")
    in_the_box: WrittenBox | None = key("What was in the box: each item there, missing, or in your words")
    also_called: tuple[Name, ...] = many("Other names it goes by in the readings")
    formerly: tuple[Name, ...] = many(
        "Ids it had before, by which raw files may still call it; pages at the old addresses lead here"
    )
    facts: tuple[Entry[Words], ...] = many("Further lines of its spec sheet", any_names=True)
    says: Words | None = key("A paragraph about it, in Markdown")
