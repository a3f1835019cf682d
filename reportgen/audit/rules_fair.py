"""The rules on fairness: sessions, order, conditions, passes, choices, origins, interests, the author's verdict."""

from __future__ import annotations

from reportgen.audit import alike, chosen, claimed, disclosure, order, passes, specimens, we_say, wide
from reportgen.audit.case import Rule

FAIR: tuple[Rule, ...] = (
    Rule(
        "sessions-apart", "warning",
        "Another day or another set-up moves every reading; without a contender that ran in both, the gap between "
        "sessions and the gap between products are one number.",
        "Run one contender again in each session, or declare `between sessions:` in the method.",
        alike.sessions_apart,
    ),
    Rule(
        "verdict-not-borne-out", "warning",
        "The verdict in words is printed beside what the readings support, and readers will compare them.",
        "Change `we say:`, or run the passes that would settle it.",
        we_say.verdict_not_borne_out,
    ),
    Rule(
        "order-sequential", "warning",
        "Warming up, wear, weather and a tiring hand all drift; run contender after contender they favour somebody, "
        "and no calculation afterwards can take that out.",
        "Run there and back, or in rounds, or draw the order; or `accept:` rule `order-sequential` with the reason.",
        order.sequential_order,
    ),
    Rule(
        "conditions-differ", "warning",
        "Wind, warmth, a batch, a place or a person that went with one contender can't be told from it.",
        "Run them again under the same conditions, in rounds; or say in a caveat which way it pushes, and "
        "`accept:` rule `conditions-differ` with the reason.",
        alike.conditions_differ,
    ),
    Rule(
        "instruments-differ", "warning",
        "What one instrument is off by cancels between two that were read with it, and between two instruments it "
        "doesn't.",
        "Read all with one instrument; or hold the two against each other and give each its `calibration:`.",
        alike.instruments_differ,
    ),
    Rule(
        "settings-unalike", "warning",
        "Tuning helps most things; tuned beside as shipped compares hands, not products.",
        "Run all as shipped, or all set as their makers advise; or keep the tuned one in a test of its own.",
        alike.settings_unalike,
    ),
    Rule(
        "samples-unalike", "warning",
        "Samples age, and diluting adds an error of its own; unlike samples of like things give unlike values.",
        "Have samples taken on one day and treated alike; or say in a caveat which way it pushes the value.",
        alike.samples_unalike,
    ),
    Rule(
        "firmware-changed", "warning",
        "With another firmware it may be another product; passes before and after are not repeats.",
        "Run all passes on one version, or make two contenders of it.",
        alike.firmware_changed,
    ),
    Rule(
        "excluded-after-seeing", "warning",
        "Choosing which readings count once they are known can choose the winner.",
        "Say what was wrong with the pass other than its value; keep it where there was nothing.",
        passes.excluded_after_seeing,
    ),
    Rule(
        "chosen-after-seeing", "warning",
        "Whoever picks tests by their results can pick the winner, without meaning to.",
        "Show every test that was run, this one as found afterwards; run it again where much hangs on it.",
        chosen.chosen_after_seeing,
    ),
    Rule(
        "weighed-after-seeing", "warning",
        "Weights, criteria and limits that were set with the results in sight can be set so that a favourite wins.",
        "Say so beside the verdict; show the verdict without it, or with other weights (`readers:`).",
        chosen.weighed_after_seeing,
    ),
    Rule(
        "excluded-for-one", "warning",
        "A mercy shown to one contender alone tilts the comparison.",
        "Check whether the others had the same mishap and kept it; `accept:` rule `excluded-for-one` with the reason "
        "where they hadn't.",
        passes.excluded_for_one,
    ),
    Rule(
        "touches-nothing", "warning",
        "What was meant to bear on a result bears on none; a reading that should be out still counts.",
        "Check contender, pass, part and quantity against the table.",
        passes.remarks_on_nothing,
    ),
    Rule(
        "exclusion-undated", "warning",
        "Readers will ask whether it was left out because of its value.",
        "Add `decided:` before the test, during the test, or after seeing the value.",
        passes.excluded_when_not_noted,
    ),
    Rule(
        "who-pays", "warning",
        "Money is the first thing a sceptic asks about.",
        "Add `who pays:` to content/publication.yaml or to the campaign.",
        disclosure.nobody_says_who_paid,
    ),
    Rule(
        "links-earn", "warning",
        "Readers, and in many places the law, want to know which links pay the author.",
        "Add `affiliate links:` to content/publication.yaml or to the campaign; no where none pay.",
        disclosure.links_that_earn,
    ),
    Rule(
        "supplied", "warning",
        "A unit chosen by its maker may not be one from the shelf.",
        "Buy one at retail, or leave the statement where readers see it and `accept:` rule `supplied`.",
        specimens.supplied_by_the_maker,
    ),
    Rule(
        "damaged-on-arrival", "warning",
        "What came damaged may test worse than it is, and what was mended may no longer be what is sold.",
        "Add `put right:` with what was done about it, nothing where it was used as it came; or buy another.",
        specimens.damaged_on_arrival,
    ),
    Rule(
        "claimed-otherwise", "note",
        "A claim can only be held against the condition it was made for; called contradicted under another, "
        "it wrongs its maker.",
        "Say `under:` which condition it names, and `tested so:` yes or no; without that it is set aside.",
        claimed.claimed_otherwise,
    ),
    Rule(
        "counted-twice", "warning",
        "One property in two groups weighs twice, whatever the weights say.",
        "Put both into one group, or keep one of them.",
        chosen.counted_twice,
    ),
    Rule(
        "incident-unweighed", "note",
        "What was stopped, relit or spilled was not measured like the rest.",
        "Add `pushes:` up, down or unknown to the incident; `so: do not rank`, or leave the pass out under `exclude:`, "
        "where it isn't what was meant to be measured.",
        passes.incidents_unweighed,
    ),
    Rule(
        "unequal-passes", "warning",
        "More tries give more certainty, and more chances of a lucky one.",
        "Run the missing passes, or `accept:` rule `unequal-passes` with the reason.",
        passes.unequal_passes,
    ),
    Rule(
        "hangs-on-one-pass", "note",
        "A single lucky or unlucky pass then decides who is named.",
        "Run more passes of all. It is no reason to leave that pass out.",
        passes.hangs_on_one_pass,
    ),
    Rule(
        "judged-sighted", "note",
        "Who sees the name on a thing grades the name as well.",
        "Hide which is which and write `judged: blind`; else say `judged: could see`, and let a second person judge.",
        chosen.judged_sighted,
    ),
    Rule(
        "few-specimens", "note",
        "Each specimen is one value, however many passes it had, and so few say little of how far others lie: every "
        "range of this result is as many times wider, and leads drown in it.",
        "Buy a third; or keep the passes of a second unit in a test of their own, and declare `between specimens:` in "
        "the method where you know it.",
        specimens.few_specimens,
    ),
    Rule(
        "wide-prose", "warning",
        "One specimen of each was tested: passes say nothing about the model.",
        "Speak of the one you bought.",
        wide.wide_prose,
    ),
    Rule(
        "beyond-the-readings", "warning",
        "A word like best is read as a result; makers and readers will ask for the reading behind it.",
        "Say what was found, with a reference: `[?](first:quantity)`, `[?](comparison:quantity/a/b)`; or that it is "
        "your taste.",
        wide.beyond_the_readings,
    ),
    Rule(
        "order-lopsided", "note",
        "What changes within every round, such as a stove that is still warm from the last, falls on the same "
        "contender each time.",
        "Turn the order round in every second round, or draw it anew for each.",
        order.lopsided_order,
    ),
    Rule(
        "days-apart", "note",
        "Another day is another set-up, and the gap between days counts as a gap between products.",
        "Run one contender again on each day and add a `session` column; or run all on one day.",
        alike.days_apart,
    ),
    Rule(
        "care-unequal", "note",
        "Warming up, cleaning or topping up one contender alone may help it, or harm it.",
        "Do the same for all; or say in a caveat which way it pushes the value.",
        passes.care_unequal,
    ),
    Rule(
        "conditions-missing", "note",
        "Nobody can tell whether those met the same as the others.",
        "Write it down for all, `not noted` where nobody did.",
        alike.conditions_missing,
    ),
    Rule(
        "said-of-some", "note",
        "Silence about one reads as if it had been treated otherwise.",
        "Say it of all, `not noted` where nobody wrote it down.",
        alike.said_of_some,
    ),
    Rule(
        "bought-apart", "note",
        "Makers change what they sell; things bought long apart needn't be of one time.",
        "Say so where readers see it, or buy the older one anew.",
        specimens.bought_far_apart,
    ),
    Rule(
        "bought-unsaid", "note",
        "Readers will ask whether those came from their makers.",
        "Add `bought:` with shop and day, or `supplied by:`.",
        specimens.bought_unsaid,
    ),
    Rule(
        "hangs-on-another", "note",
        "Who is first then rests on how far a contender scatters that isn't in the running.",
        "Run more passes of those in front; or let each have its own scatter, `scatter: own`, decided before testing.",
        passes.hangs_on_another,
    ),
    Rule(
        "interests-unsaid", "note",
        "Money and gifts are the first things a sceptic asks about.",
        "Add `affiliate links:` and `samples:` to content/publication.yaml, no where there are none.",
        disclosure.interests_unsaid,
    ),
    Rule(
        "order-not-recorded", "note",
        "Nobody can tell whether drift was spread evenly over the contenders.",
        "Keep a long table or a bench log in the order of work, or a `round` column.",
        order.order_not_recorded,
    ),
)  # fmt: skip
