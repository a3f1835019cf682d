"""The verdict's plan as later stages know it."""

from __future__ import annotations

from collections.abc import Mapping
from decimal import Decimal

from reportgen.addresses import as_id
from reportgen.campaign.declared import Criterion, Group, Must, Use, VerdictPlan, WeSay
from reportgen.campaign.given import Entry
from reportgen.campaign.look_up import error, look_up, look_up_all, unknown
from reportgen.campaign.written.verdict import WrittenCriterion, WrittenGroup, WrittenMust, WrittenVerdict
from reportgen.finding import Finding, Place

MONEY = frozenset({"price", "prices", "cost", "costs", "price-paid", "money"})  # never a criterion


def verdict_of(
    w: WrittenVerdict, quantities: Mapping[str, str], contenders: Mapping[str, str], told: list[Finding]
) -> VerdictPlan:
    """The plan with its names looked up."""
    groups = tuple(_group(g, quantities, told) for g in w.groups)
    _check_weights(w, told)
    seen: dict[str, str] = {}
    for g, entry in zip(groups, w.groups, strict=True):
        for c in g.criteria:
            if seen.setdefault(c.quantity, g.id) != g.id:
                says = f"“{c.quantity}” counts in two groups: {seen[c.quantity]} and {g.id}"
                error(told, "criterion-twice", entry.name.at, says, "It would count twice.", "Keep it in one of them.")
    say = w.we_say
    return VerdictPlan(
        must=tuple(_must(m, quantities, told) for m in w.must),
        groups=groups,
        we_say=WeSay(
            look_up(say.best, contenders, "contender", told),
            look_up(say.best_for_the_money, contenders, "contender", told),
            look_up_all(say.because, quantities, "quantity", told),
            say.words.value if say.words else "",
        )
        if say
        else None,
        readers=_readers(w, [g.id for g in groups], told),
        use=Use(w.use.per.value, w.use.cost.value, *w.use.times.value) if w.use else None,
        decided=w.decided.value if w.decided else None,
    )


def verdict_places(w: WrittenVerdict) -> dict[str, Place]:
    """Where the verdict and its pieces stand."""
    places = {"verdict": w.at}
    places |= {f"verdict/must/{as_id(m.quantity.value)}": m.at for m in w.must}
    for g in w.groups:
        places[f"verdict/group/{as_id(g.name.value)}"] = g.name.at
        places |= {f"verdict/criterion/{as_id(c.name.value)}": c.name.at for c in g.value.criteria}
    if w.decided:
        places["verdict/decided"] = w.decided.at
    if w.we_say:
        places["verdict/we-say"] = w.we_say.at
    if w.use:
        places["verdict/use"] = w.use.cost.at
    return places


def _must(m: WrittenMust, quantities: Mapping[str, str], told: list[Finding]) -> Must:
    if m.at_most is None and m.at_least is None:
        error(told, "condition-without-bound", m.at, "this condition sets no bound",
              do="Add `at most:` or `at least:`.")  # fmt: skip
    low, high = m.at_least, m.at_most
    if low and high and low.value.unit == high.value.unit and low.value.value > high.value.value:
        says = "`at least` lies above `at most`: nobody could meet that"
        error(told, "condition-upside-down", m.at, says, do="Exchange the two.")
    return Must(
        look_up(m.quantity, quantities, "quantity", told),
        m.at_most.value if m.at_most else None,
        m.at_least.value if m.at_least else None,
        m.decided.value if m.decided else None,
    )


def _group(entry: Entry[WrittenGroup], quantities: Mapping[str, str], told: list[Finding]) -> Group:
    w = entry.value
    criteria = tuple(c for e in w.criteria if (c := _criterion(e, quantities, told)) is not None)
    if not w.criteria:
        do = "Name its criteria, or take the group out."
        error(told, "group-without-criteria", entry.name.at, f"the group “{entry.name.value}” has no criteria", do=do)
    _check_inside(entry, told)
    title = w.title.value if w.title else entry.name.value
    return Group(as_id(entry.name.value), title, w.weight.value if w.weight else None, criteria)


def _criterion(entry: Entry[WrittenCriterion], quantities: Mapping[str, str], told: list[Finding]) -> Criterion | None:
    w = entry.value
    if as_id(entry.name.value) in MONEY:
        why = "What something costs is no merit of it: money stands beside the verdict, and never inside."
        do = "Take it out. Prices of contenders, and `use:`, are shown against what the readings support."
        error(told, "price-as-criterion", entry.name.at, f"“{entry.name.value}” can't be a criterion", why, do)
        return None
    quantity = look_up(entry.name, quantities, "quantity", told)
    worst, best = w.worst.value, w.best.value
    if worst.unit == best.unit and worst.value == best.value and worst.text:
        error(told, "anchors-alike", w.best.at, "worst and best are the same value", do="Set them apart.")
        return None
    if not quantity:
        return None
    weight, ratio = w.weight.value if w.weight else None, w.ratio.value if w.ratio else False
    return Criterion(quantity, worst, best, weight, ratio, w.decided.value if w.decided else None)


def _check_inside(entry: Entry[WrittenGroup], told: list[Finding]) -> None:
    """Inside a group too every criterion has its weight or none has, and they add up to something."""
    criteria = entry.value.criteria
    given = [e.value.weight for e in criteria if e.value.weight]
    for e in criteria if given else ():
        if e.value.weight is None:
            says = f"the criterion “{e.name.value}” has no weight, and others of its group have"
            error(told, "weights-for-some", e.name.at, says, do="Give all of them a weight, or none.")
    if given and len(given) == len(criteria) and not sum(g.value for g in given):
        says = f"the weights inside “{entry.name.value}” add up to nothing"
        error(told, "weights-of-nothing", entry.name.at, says, do="Give one of them more.")


def _check_weights(w: WrittenVerdict, told: list[Finding]) -> None:
    """Either every group has its weight or none has, and they add up to something."""
    given = [e for e in w.groups if e.value.weight]
    for entry in w.groups if given else ():
        if entry.value.weight is None:
            says = f"the group “{entry.name.value}” has no weight, and others have"
            do = "Give all groups a weight, or none: then all weightings are tried."
            error(told, "weights-for-some", entry.name.at, says, do=do)
    if given and len(given) == len(w.groups) and not sum(e.value.weight.value for e in given if e.value.weight):
        error(
            told, "weights-of-nothing", given[0].name.at, "the weights add up to nothing", do="Give one of them more."
        )


def _readers(w: WrittenVerdict, groups: list[str], told: list[Finding]) -> dict[str, dict[str, Decimal]]:
    found: dict[str, dict[str, Decimal]] = {}
    for reader in w.readers:
        weights = {}
        for entry in reader.value:
            if as_id(entry.name.value) not in groups:
                otherwise = "Add `groups:` with weights, or take `readers:` out."
                told.append(unknown(entry.name, groups, "group", otherwise))
            weights[as_id(entry.name.value)] = entry.value.value
        if not sum(weights.values()):
            says = f"the reader “{reader.name.value}” weighs nothing"
            error(told, "weights-of-nothing", reader.name.at, says, do="Give at least one group a weight.")
        found[reader.name.value] = weights
    return found
