"""Contenders as later stages know them."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from reportgen.addresses import as_id, product_id
from reportgen.campaign.box import box_of, item_called
from reportgen.campaign.claim_names import with_names
from reportgen.campaign.declared import Amount, Claim, Contender, Day, Price
from reportgen.campaign.declared.contenders import first_word
from reportgen.campaign.former_names import former
from reportgen.campaign.given import Given
from reportgen.campaign.look_up import error, look_up
from reportgen.campaign.members import Member
from reportgen.campaign.ranges import Money
from reportgen.campaign.specimens import specimens_of, usual_of
from reportgen.campaign.written.contender import WrittenClaim, WrittenContender, WrittenPrice
from reportgen.finding import Finding, Place

LONGEST_PRODUCT = 200  # with its ending the name of a file, which most disks end at 255 bytes


def contender_of(
    member: Member[WrittenContender | Given[str]],
    quantities: Mapping[str, str],
    prose: Mapping[str, str],
    told: list[Finding],
) -> Contender:
    """One contender; `prose` maps `contenders/<id>` to the text of its Markdown file."""
    written = member.written
    text = prose.get(f"contenders/{member.id}", "")
    if written is None:
        return Contender(member.id, member.name, says=text)
    if isinstance(written, Given):
        return Contender(member.id, written.value, says=text)
    w = written
    if w.says and text:
        says = f"there is a paragraph here and one in contenders/{member.id}.md"
        error(told, "described-twice", w.says.at, says, do="Keep one of them.")
    _check_facts(w, quantities, told)
    bought_on = w.bought.date.value if w.bought and w.bought.date else None
    where = w.bought.where.value if w.bought and w.bought.where else ""
    box = box_of(w.in_the_box, told)
    return Contender(
        id=member.id,
        title=w.title.value,
        maker=w.maker.value if w.maker else "",
        model=w.model.value if w.model else "",
        gtin=w.gtin.value if w.gtin else "",
        bought_where=where,
        bought_on=bought_on,
        supplied_by=w.supplied_by.value if w.supplied_by else "",
        prices=_prices(w, bought_on, where, told),
        as_received=tuple(a.value for a in w.as_received),
        put_right=w.put_right.value if w.put_right else "",
        firmware=w.firmware.value if w.firmware else "",
        settings=w.settings.value if w.settings else "",
        claims=with_names(tuple(_claim(f"c{i}", c, quantities, box, told) for i, c in enumerate(w.claims, 1))),
        specimens=(specimens := specimens_of(w.specimens, told)),
        usual_specimen=usual_of(w.usual_specimen, specimens, told),
        in_the_box=box,
        also_called=tuple(a.value for a in w.also_called),
        facts={f.name.value: f.value.value for f in w.facts},
        says=w.says.value if w.says else text,
        formerly=former(w.formerly),
    )


def _check_facts(w: WrittenContender, quantities: Mapping[str, str], told: list[Finding]) -> None:
    """A fact that is measured, too, is typed twice: one day the two will differ."""
    for fact in w.facts:
        if as_id(fact.name.value) in quantities:
            says = f"“{fact.name.value}” is measured, and typed again among the facts"
            why = "What is measured stands on the spec sheet by itself; a second figure will one day differ from it."
            told.append(Finding("warning", "fact-measured", fact.name.at, says, why, "Take the fact out."))


def places_of(contender: Contender, member: Member[WrittenContender | Given[str]]) -> dict[str, Place]:
    """Where the contender and its claims stand."""
    places = {f"contender/{contender.id}": member.at}
    if isinstance(member.written, WrittenContender):
        w = member.written
        places[f"contender/{contender.id}"] = w.title.at if w.title.at.line else member.at
        places |= {f"claim/{contender.id}/c{i}": c.at for i, c in enumerate(w.claims, 1)}
        said = {"firmware": w.firmware, "settings": w.settings, "bought": w.bought, "supplied-by": w.supplied_by}
        places |= {f"contender/{contender.id}/{name}": g.at for name, g in said.items() if g is not None}
        if w.as_received:
            places[f"contender/{contender.id}/as-received"] = w.as_received[0].at
        places |= {f"price/{contender.id}/{i}": p.at for i, p in enumerate(w.prices, 1)}
    return places


def told_of_all(contender: Contender, at: Place, told: list[Finding]) -> None:
    """A contender may not be called `all`, which stands in a table for every contender, nor anything without an end."""
    called = next((n for n in (contender.title, *contender.also_called) if as_id(n) == "all"), "")
    if called:
        says = f"a contender is called “{called}”"
        why = "In a table `all` is one reading that serves every contender."
        error(told, "reserved-name", at, says, why, "Give it another name.")
    if len(product_id(contender.maker, contender.title, contender.id)) > LONGEST_PRODUCT:
        says = f"maker and title together have more than {LONGEST_PRODUCT} letters"
        why = "They are the address of the product's page, and no file can be called that."
        error(told, "name-too-long", at, says, why, "Shorten the title; the rest can stand under `facts:`.")


def names_of(contenders: Sequence[Contender], places: Mapping[str, Place], told: list[Finding]) -> dict[str, str]:
    """Every name a contender goes by → its id; one name for two contenders is an error."""
    names = {c.id: c.id for c in contenders}
    for c in contenders:
        told_of_all(c, places[f"contender/{c.id}"], told)
        for other in c.also_called:
            if names.setdefault(as_id(other), c.id) != c.id:
                says = f"“{other}” is also a name of {names[as_id(other)]}"
                error(told, "duplicate-name", places[f"contender/{c.id}"], says, do="Take it out of `also called:`.")
    for c in contenders:
        names.setdefault(as_id(c.title), c.id)
    return names


def _prices(w: WrittenContender, bought_on: Day | None, where: str, told: list[Finding]) -> tuple[Price, ...]:
    found = []
    if w.paid:
        found.append(_price(w.paid, "paid", bought_on, where))
    if w.listed:
        found.append(_price(w.listed, "listed", None, ""))
    for p in w.prices:
        found += _dated(p, told)
    return tuple(found)


def _dated(p: WrittenPrice, told: list[Finding]) -> list[Price]:
    if (p.paid is None) == (p.listed is None):
        says = "a price is either paid or listed"
        error(told, "price-without-sort", p.at, says, do="Write `paid: 89.00 EUR` or `listed: 90 to 120 USD`.")
        return []
    date, where = p.date.value if p.date else None, p.where.value if p.where else ""
    if p.paid is not None:
        return [_price(p.paid, "paid", date, where)]
    assert p.listed is not None
    return [_price(p.listed, "listed", date, where)]


def _price(given: Given[Money], sort: str, date: Day | None, where: str) -> Price:
    money = given.value
    return Price(
        money.low, money.high, money.currency, "paid" if sort == "paid" else "listed", date, where, given.text.strip()
    )


def _claim(
    id: str, c: WrittenClaim, quantities: Mapping[str, str], box: Mapping[str, str], told: list[Finding]
) -> Claim:
    if isinstance(c.says, Given):
        said = {c.source.value if c.source else "": c.says.value}
    else:
        said = {e.name.value: e.value.value for e in c.says}
    bounds = [b for b in (c.at_most, c.at_least, c.is_) if b is not None]
    if bounds and c.quantity is None:
        error(told, "claim-without-quantity", bounds[0].at, "this claim gives a value and names no quantity",
              do="Add `quantity:` with the quantity that would show it.")  # fmt: skip
    if c.within is not None and c.is_ is None:
        error(told, "claim-without-value", c.within.at, "a tolerance needs the value it belongs to",
              do="Add `is:` with the value claimed.")  # fmt: skip
    if c.is_ is not None and c.within is None and not (c.at_most or c.at_least):
        told.append(_exact(c.is_))
    if c.is_ is not None and (c.at_most or c.at_least):
        error(told, "claim-with-two-values", c.is_.at, "a claim gives a value (`is`) or bounds (`at most`, `at least`)",
              do="Make two claims of it.")  # fmt: skip
    other = next((g for g in (c.quantity, c.looked, c.testable) if g is not None), None)
    if c.included is not None and other is not None:
        says, why = "this claim is settled in two ways", "Looking into the box answers it, and so would the other."
        error(told, "claim-settled-twice", other.at, says, why, "Keep `included:`, or take it out.")
    low, high = c.at_least, c.at_most
    if low and high and low.value.unit == high.value.unit and low.value.value > high.value.value:
        error(told, "claim-upside-down", low.at, "`at least` lies above `at most`", do="Exchange the two.")
    if c.tested_so is not None and c.under is None:
        says = "this claim names no condition that the test could have met"
        error(told, "claim-without-condition", c.tested_so.at, says,
              do="Add `under:` with the condition it is claimed under.")  # fmt: skip
    elif c.tested_so is not None and first_word(c.tested_so.value) not in ("yes", "no"):
        error(told, "claim-tested-how", c.tested_so.at, "`tested so:` says neither yes nor no",
              do="Begin it with yes or no; further words may follow.")  # fmt: skip
    if c.testable is not None and not c.testable.value and not c.why:
        error(told, "claim-without-reason", c.testable.at, "a claim that can't be tested needs its reason",
              do="Add `why:` with the reason; the page shows it.")  # fmt: skip
    return Claim(
        id=id, says=said,
        quantity=look_up(c.quantity, quantities, "quantity", told),
        at_most=c.at_most.value if c.at_most else None,
        at_least=c.at_least.value if c.at_least else None,
        nominal=c.is_.value if c.is_ else None,
        within=c.within.value if c.within else None,
        part=c.part.value if c.part else "",
        under=c.under.value if c.under else "",
        tested_so=c.tested_so.value if c.tested_so else "",
        looked=c.looked.value if c.looked else "",
        testable=c.testable.value if c.testable else True,
        included=item_called(c.included, box, told),
        why=c.why.value if c.why else "",
        name=as_id(c.id.value) if c.id else "",
    )  # fmt: skip


def _exact(given: Given[Amount]) -> Finding:
    """A value without a tolerance, which no measured value can meet or miss."""
    value = given.value.text
    return Finding(
        "warning", "claim-without-tolerance", given.at,
        f"this claim says {value} and not how near to it is near enough",
        "No measured value is exactly that, so none can meet or miss it; the page shows the two beside each other.",
        f"Add `within:` with the tolerance the maker states, or write `at least: {value}` or `at most: {value}`; "
        "where it states none, `accept:` rule `claim-without-tolerance`.",
    )  # fmt: skip
