"""The shape of results.json, version 1, as a JSON Schema (draft 2020-12). Keys may be added; none goes or changes."""

from __future__ import annotations

from typing import Any, get_args

from reportgen.evaluation.evaluated import CaveatSort
from reportgen.judgement.money.break_even import Why

Schema = dict[str, Any]

TEXT: Schema = {"type": "string"}
NUMBER: Schema = {"type": ["number", "null"]}
NAME: Schema = {"type": "string", "minLength": 1}
MAYBE_TEXT: Schema = {"type": ["string", "null"]}
MAYBE_YES: Schema = {"type": ["boolean", "null"]}
WHOLE: Schema = {"type": "integer", "minimum": 0}
MAYBE_WHOLE: Schema = {"type": ["integer", "null"], "minimum": 0}
TEXTS: Schema = {"type": "object", "additionalProperties": TEXT}
SHARE: Schema = {"type": ["number", "null"], "minimum": 0, "maximum": 1}
NAMES: Schema = {"type": "array", "items": NAME}


def one_of(*words: str | None) -> Schema:
    """One of these words (None: null)."""
    return {"enum": list(words)}


def every(item: Schema) -> Schema:
    """A list of such items."""
    return {"type": "array", "items": item}


def row(**keys: Schema) -> Schema:
    """An object that has all these keys, and perhaps more."""
    return {"type": "object", "required": list(keys), "properties": keys}


def and_perhaps(item: Schema, **keys: Schema) -> Schema:
    """A row that may have these keys too; where it has one, it is as said."""
    return {**item, "properties": {**item["properties"], **keys}}


DECISION = one_of("better", "no difference that matters", "too close to call", "not enough to say")
LIMIT = one_of("above", "below", None)
OUTCOME = one_of("supported", "contradicted", "undecided", "not tested")
REASON = row(code=NAME, numbers={"type": "object", "additionalProperties": NUMBER})
NUMBERED: Schema = {"type": "integer", "minimum": 1}
SPAN: Schema = {"type": "array", "items": NUMBERED, "minItems": 2, "maxItems": 2}
TRACE = and_perhaps(
    row(file=NAME, lines={"type": "array", "items": NUMBERED, "minItems": 1, "uniqueItems": True}, cells=every(SPAN)),
    sheet=NAME, channel=NAME, span=SPAN, attachment=NAME, page=NUMBERED,
)  # fmt: skip
YES: Schema = {"const": True}
READING = and_perhaps(
    row(name=NAME, text=TEXT, file=NAME, line=WHOLE),
    value={"type": "number"}, corrected={"type": "number"}, unit=NAME, instrument=NAME,
    limit=one_of("above", "below"), word=NAME,
    absent_because=NAME, width={"type": "number", "minimum": 0}, rough=one_of("about", "stated", "between"),
    unfinished=YES, unweighed=YES, beside=NAME, for_all=YES, contender=NAME, was=TEXT, amendment=NAME, records=NAME,
    attachment=NAME, page=NUMBERED, photos=NAMES, frames=every(WHOLE), film=row(film=NAME, seconds={"type": "number"}),
    series=row(channel=NAME, first=NUMBERED, last=NUMBERED, samples=WHOLE, begins=NUMBER, ends=NUMBER, interval=NUMBER,
               gaps=every({"type": "array", "items": NUMBER, "minItems": 2, "maxItems": 2})),
    conditions=TEXTS, session=NAME, round=NAME, time=NAME, note=NAME, sheet=NAME, column=NUMBERED,
)  # fmt: skip
PASS = row(
    **{"pass": NAME}, specimen=NAME, part=MAYBE_TEXT, value=NUMBER, limit=LIMIT, word=MAYBE_TEXT, excluded=MAYBE_TEXT,
    absent_because=MAYBE_TEXT, together={"type": "boolean"}, conditions=TEXTS, readings=every(READING),
)  # fmt: skip
BUDGET = row(
    sort=NAME, of=TEXT, where=MAYBE_TEXT, size=NUMBER, share=SHARE, shared={"type": "boolean"}, degrees=NUMBER,
    shape=one_of("uniform", "normal", "triangular", "arcsine"), sensitivity=NUMBER, of_each=NUMBER,
    of_each_unit=MAYBE_TEXT, inputs=MAYBE_WHOLE,
)  # fmt: skip
OTHER_UNIT = row(unit=NAME, value=NUMBER, u=NUMBER, low=NUMBER, high=NUMBER)
STANDS = row(
    other=NAME, told=one_of("less", "more", "alike", "both ways"), degree=one_of("a little", "much", None),
    follows={"type": "boolean"},
)  # fmt: skip
OBSERVED = row(
    told=one_of("less", "more", "alike", "both ways", "never"), degree=one_of("a little", "much", None),
    follows={"type": "boolean"}, through=NAMES, looks=WHOLE,
)  # fmt: skip
AMOUNT = row(value=NUMBER, unit=TEXT)
DRAWS = {"oneOf": [{"type": "null"}, row(
    number=WHOLE, used={"type": "boolean"}, u=NUMBER, u_used={"type": "boolean"},
    first_order_u=NUMBER, first_order_low=NUMBER, first_order_high=NUMBER,
    mean=NUMBER, tolerance=NUMBER, within=NUMBER, settled={"type": "boolean"},
    u_of=one_of("all draws", "middle 68 %"),
)]}  # fmt: skip
LABORATORY = row(
    name=NAME, report=NAME, number=MAYBE_TEXT, date=MAYBE_TEXT, accredited=MAYBE_TEXT, page=MAYBE_WHOLE,
    detection_limit={"oneOf": [{"type": "null"}, AMOUNT]}, report_limit={"oneOf": [{"type": "null"}, AMOUNT]},
    uncertainty={"oneOf": [{"type": "null"}, AMOUNT]}, coverage_factor=NUMBER, taken=TEXTS, diluted=TEXTS,
)  # fmt: skip
RESULT = row(
    test=NAME, quantity=NAME, contender=NAME, kind=one_of("measured", "yes/no", "count", "grade", "order"),
    value=NUMBER, unit=TEXT, u={"type": ["number", "null"], "minimum": 0}, low=NUMBER, high=NUMBER, coverage=SHARE,
    at_least={"type": "boolean"}, why_no_u=MAYBE_TEXT, printed=NAME,
    covers=one_of("instrument and scatter", "instrument", "tries", "events"), part=MAYBE_TEXT,
    yes=MAYBE_WHOLE, of=MAYBE_WHOLE,
    grade=MAYBE_TEXT, grades={"type": "object", "additionalProperties": WHOLE}, passes=WHOLE, excluded=WHOLE,
    without_exclusions=NUMBER, without_limit=LIMIT, limit=LIMIT,
    rank={"type": ["array", "null"], "items": {"type": "integer", "minimum": 1}, "minItems": 2, "maxItems": 2},
    blocked=MAYBE_TEXT, missing=MAYBE_TEXT, running=MAYBE_TEXT, caveats=NAMES, trace=every(TRACE),
    by_pass=every(PASS), scatter=NUMBER,
    degrees=NUMBER, effective_degrees=MAYBE_WHOLE,
    also=every(OTHER_UNIT), stands=every(STANDS), laboratory={"oneOf": [{"type": "null"}, LABORATORY]},
    draws=DRAWS,
    budget=every(BUDGET),
)  # fmt: skip
COMPARISON = row(
    test=NAME, quantity=NAME, first=NAME, second=NAME, difference=NUMBER, u=NUMBER, low=NUMBER, high=NUMBER, unit=TEXT,
    decision=DECISION,
    percent=NUMBER, percent_low=NUMBER, percent_high=NUMBER, percent_of=MAYBE_TEXT,
    resolved={"type": "boolean"}, differed=MAYBE_YES, differed_low=NUMBER, differed_high=NUMBER, favours=MAYBE_TEXT,
    beyond=MAYBE_YES, within=one_of("rounds", "sessions", "ratios", None), part=MAYBE_TEXT, reason=REASON,
    observed={"oneOf": [{"type": "null"}, OBSERVED]}, draws=DRAWS,
    settle={"oneOf": [{"type": "null"}, row(
        difference=NUMBER, passes=MAYBE_WHOLE, finer={"type": "boolean"}, at=one_of("seen", "matters"),
        specimens=MAYBE_WHOLE, calibration={"type": "boolean"},
    )]},
    caveats=NAMES,
)  # fmt: skip
HANGS_ON = row(
    winner=MAYBE_TEXT, tried=WHOLE,
    passes=every(row(contender=NAME, specimen=NAME, part=MAYBE_TEXT, winner=MAYBE_TEXT, **{"pass": NAME})),
    contenders=every(row(contender=NAME, winner=MAYBE_TEXT)),
    back=every(row(exclusion=NAME, contenders=NAMES, winner=MAYBE_TEXT, moves={"type": "boolean"})),
    evened={"oneOf": [{"type": "null"}, row(passes=WHOLE, winner=MAYBE_TEXT)]},
)  # fmt: skip
FIRST = row(
    hangs_on={"oneOf": [{"type": "null"}, HANGS_ON]},
    test=NAME, quantity=NAME, winner=MAYBE_TEXT, may_be_first=NAMES, unranked=NAMES, part=MAYBE_TEXT, reason=REASON,
    order_changes_without=MAYBE_YES, caveats=NAMES,
    ranks_without={
        "type": "object",
        "additionalProperties": {
            "type": "array", "items": {"type": "integer", "minimum": 1}, "minItems": 2, "maxItems": 2,
        },
    },
    pairs_without=every(row(first=NAME, second=NAME, decision=DECISION, favours=MAYBE_TEXT)),
)  # fmt: skip
SCATTER = row(
    test=NAME, quantity=NAME, part=MAYBE_TEXT, rule=one_of("common", "own", "relative"), unit=TEXT, sd=NUMBER,
    degrees=NUMBER, origin=one_of("passes", "declared", "both", "none"),
    declared_by=one_of("method", "past campaigns", None),
    past=every(row(
        campaign=NAME, title=NAME, sd=NUMBER, degrees=NUMBER, within_sd=NUMBER, within_degrees=NUMBER,
    )),
    seen={"oneOf": [{"type": "null"}, row(
        sd=NUMBER, degrees=NUMBER,
        uneven={"oneOf": [{"type": "null"}, row(
            contender=NAME, sd=NUMBER, others=NUMBER, share=SHARE, p=SHARE, winner_if_own=MAYBE_TEXT,
        )]},
        apart={"oneOf": [{"type": "null"}, row(
            contender=NAME, at=NUMBERED, value=NUMBER, off=NUMBER, ratio=NUMBER, p=SHARE,
        )]},
        trend={"oneOf": [{"type": "null"}, row(slope=NUMBER, f=NUMBER, degrees=NUMBER, p=SHARE)]},
        at_odds={"oneOf": [{"type": "null"}, row(sd=NUMBER, declared=NUMBER, f=NUMBER, p=SHARE)]},
    )]},
)  # fmt: skip
CLAIM = row(
    contender=NAME, claim=NAME, id=NAME, anchor=NAME, quantity=MAYBE_TEXT, outcome=OUTCOME, probability=SHARE,
    scope=one_of("repeat", "this run", None), reason=REASON, sources=TEXTS, at_odds=NAMES, included=MAYBE_TEXT,
    part=MAYBE_TEXT, under=MAYBE_TEXT, tested_so=MAYBE_TEXT,
    accept={"type": ["array", "null"], "items": NUMBER, "minItems": 2, "maxItems": 2},
    looked=MAYBE_TEXT, why=MAYBE_TEXT, caveats=NAMES,
)  # fmt: skip
PAIRWISE = {"type": "object", "additionalProperties": {"type": "object", "additionalProperties": SHARE}}
LEAD = {"leader": MAYBE_TEXT, "index": SHARE, "firm": {"type": "boolean"}}
OVERALL = row(
    contenders=NAMES, out=TEXTS, left_out=TEXTS, past={"type": "object", "additionalProperties": NAMES}, groups=NAMES,
    weights=one_of("given", "all"), given=every(SHARE), pairwise_known=PAIRWISE,
    equal_first={"type": "object", "additionalProperties": SHARE}, known_scatter=WHOLE, criteria=NUMBERED,
    lead=row(**LEAD), winner=MAYBE_TEXT, without=every(row(quantity=NAME, **LEAD)),
    turns=every(row(group=NAME, weight=SHARE, before=NAME, after=NAME)),
    readers=every(row(name=NAME, weights=every(SHARE), pairwise=PAIRWISE, **LEAD)),
    map={
        "oneOf": [
            {"type": "null"},
            row(groups=NAMES, steps=NUMBERED, cells=every(row(weights=every(SHARE), **LEAD))),
        ]
    },
    draws=NUMBERED, error=NUMBER,
)  # fmt: skip
COST = row(
    per=NAME, formula=NAME, **{"from": NUMBER}, to=NUMBER, currency=NAME,
    lines=every(row(contender=NAME, price_low=NUMBER, price_high=NUMBER, cost=NUMBER, low=NUMBER, high=NUMBER,
                    limit=LIMIT)),
    left_out=TEXTS, cheapest=every(row(**{"from": NUMBER}, to=NUMBER, may_be=NAMES)),
    cheapest_in=every(row(**{"from": NUMBER}, to=NUMBER, may_be=NAMES)), why=MAYBE_TEXT, caveats=NAMES,
)  # fmt: skip
BREAK_EVEN = row(
    first=NAME, second=NAME, why=one_of(*get_args(Why)), at=NUMBER, low=NUMBER, high=NUMBER, sooner=MAYBE_TEXT,
    later=MAYBE_TEXT,
)  # fmt: skip
VERDICT = row(
    winner=MAYBE_TEXT,
    criteria=every(row(quantity=NAME, group=TEXT, weight=SHARE, known_scatter={"type": "boolean"})),
    pairwise=PAIRWISE,
    rank_shares={"type": "object", "additionalProperties": every(SHARE)},
    overall={"oneOf": [{"type": "null"}, OVERALL]},
    value=every(
        row(
            contender=NAME,
            price=TEXT,
            low=NUMBER,
            high=NUMBER,
            currency=TEXT,
            dominated_by=NAMES,
            on={"type": "object", "additionalProperties": NAMES},
            on_verdict=NAMES,
        )
    ),
    cost={"oneOf": [{"type": "null"}, COST]},
    break_even=every(BREAK_EVEN),
    conditions=every(row(contender=NAME, quantity=NAME, outcome=OUTCOME, probability=SHARE)),
)
MOMENT = {"oneOf": [{"type": "null"}, row(film=NAME, seconds={"type": "number"})]}
OTHERWISE = row(
    said=TEXT, quantity=NAME, contender=NAME, part=MAYBE_TEXT, value=NUMBER, unit=TEXT, limit=LIMIT, instead=MAYBE_TEXT,
    moves={"type": "boolean"},
)  # fmt: skip
CAVEAT = row(
    id=NAME, anchor=NAME, number={"type": "integer", "minimum": 1},
    sort=one_of(*get_args(CaveatSort)), says=NAME,
    pushes=one_of("up", "down", "unknown", None), blocks={"type": "boolean"}, decided=MAYBE_TEXT, contender=MAYBE_TEXT,
    quantities=NAMES, photos=NAMES, film=MOMENT, file=TEXT, line=MAYBE_WHOLE, when=MAYBE_TEXT, event=MAYBE_TEXT,
    times={"type": ["integer", "null"], "minimum": 1}, said=every(TEXT), used=MAYBE_TEXT, seen_by=MAYBE_TEXT,
    otherwise=every(OTHERWISE), specimen=MAYBE_TEXT, part=MAYBE_TEXT, **{"pass": MAYBE_TEXT},
)  # fmt: skip
PHOTO = row(
    id=NAME, shows=NAME, caption=MAYBE_TEXT, by=MAYBE_TEXT, taken=MAYBE_TEXT, file=NAME, width=NUMBERED,
    height=NUMBERED, pictures=NAMES,
)  # fmt: skip
FILM = row(
    id=NAME, title=NAME, address=NAME, moment=MAYBE_TEXT, seconds=NUMBER,
    stills=every(row(seconds={"type": "number"}, photo=NAME)),
)  # fmt: skip
FINDING = row(
    severity=one_of("error", "warning", "note"), rule=NAME, file=TEXT, line=MAYBE_WHOLE, column=MAYBE_WHOLE,
    sheet=MAYBE_TEXT, says=NAME, why=TEXT, do=TEXT, subject=MAYBE_TEXT, contender=MAYBE_TEXT, accepted=MAYBE_TEXT,
)  # fmt: skip
PRICE = row(
    sort=one_of("paid", "listed"), low=NUMBER, high=NUMBER, currency=NAME, date=MAYBE_TEXT, where=MAYBE_TEXT, text=NAME,
)  # fmt: skip
CONTENDER = row(
    id=NAME, title=NAME, maker=MAYBE_TEXT, model=MAYBE_TEXT, gtin=MAYBE_TEXT,
    prices=every(PRICE), as_received=NAMES, in_the_box=TEXTS,
    missing=NAMES,
    specimens=every(row(
        id=NAME, serial=MAYBE_TEXT, bought_where=MAYBE_TEXT, bought_on=MAYBE_TEXT, as_received=NAMES,
        put_right=MAYBE_TEXT,
    )),
    facts=TEXTS, firmware=MAYBE_TEXT, settings=MAYBE_TEXT, put_right=MAYBE_TEXT,
)  # fmt: skip


TRACED = row(
    test=NAME, channel=NAME, contender=NAME, specimen=NAME, **{"pass": NAME}, part=MAYBE_TEXT, unit=TEXT, samples=WHOLE,
    seconds=NUMBER, lowest=NUMBER, highest=NUMBER, under={"type": "boolean"}, over={"type": "boolean"},
    gaps=every({"type": "array", "items": NUMBER, "minItems": 2, "maxItems": 2}),
    passed=every(row(quantity=NAME, side=one_of("over", "under"), level=NUMBER, seconds=NUMBER, times=WHOLE)),
    apart=every(row(seconds=NUMBER, value=NUMBER, off=NUMBER)), apart_in_all=WHOLE,
)  # fmt: skip

RECORD = and_perhaps(row(
    version={"const": 1}, campaign=NAME, issue={"type": "integer", "minimum": 1}, contenders=every(CONTENDER),
    results=every(RESULT),
    comparisons=every(COMPARISON), first=every(FIRST), scatters=every(SCATTER), claims=every(CLAIM), verdict=VERDICT,
    caveat_list=every(CAVEAT), photo_list=every(PHOTO), film_list=every(FILM), trace_list=every(TRACED),
    findings=every(FINDING),
), **{"$schema": NAME})  # fmt: skip


def results_schema(address: str = "") -> Schema:
    """The JSON Schema of results.json, version 1; `address` is where it stands on the web, "" for nowhere."""
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        **({"$id": address} if address else {}),
        "title": "results.json, version 1",
        **RECORD,
    }
