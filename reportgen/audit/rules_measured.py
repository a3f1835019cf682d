"""The rules on what was measured: readings, instruments, calibrations, formulas, traces, scatter."""

from __future__ import annotations

from reportgen.audit import calibrated, clusters, data, formulas, instruments, scatter, traces
from reportgen.audit.case import Rule

MEASURED: tuple[Rule, ...] = (
    Rule(
        "scatter-uneven", "warning",
        "A first place is promised to be wrong at most once in twenty if all scatter alike. Where one scatters three "
        "times as far it may be wrong once in seven, ten times as far once in four (simulated, four contenders, three "
        "passes).",
        "Write `scatter: own` in the method's next version, before the next campaign, and plan more passes. Don't "
        "change it after seeing these readings: a rule chosen that way is wrong more often than either.",
        scatter.uneven,
    ),
    Rule(
        "passes-drift", "warning",
        "What climbs or falls from pass to pass (warming up, wear, a canister that empties) is no scatter: whoever ran "
        "earlier met other conditions, and every range is wider for it.",
        "Look for what warmed, wore or ran low. Run in rounds with the order changed each time, or wait until it "
        "settles.",
        scatter.climbing,
    ),
    Rule(
        "repeatability-contradicted", "warning",
        "Where single readings are judged by a scatter that these passes don't have, leads count that shouldn't, or "
        "drown that needn't.",
        "Find out what was different then; state it anew, from these passes too, in the method's next version.",
        scatter.contradicted,
    ),
    Rule(
        "events-in-clusters", "warning",
        "Where one event brings the next, ten of them say as little as two or three do; limits and first places are "
        "then promised too firmly.",
        "Count what started each cluster, once; or take `independent:` out, so that counts are shown and nobody is "
        "ranked.",
        clusters.events_in_clusters,
    ),
    Rule(
        "outside-range", "warning",
        "A meter used beyond its range owes nobody a right answer.",
        "Write `over …` or `under …` where the meter stopped; check the range of the instrument otherwise.",
        data.outside_range,
    ),
    Rule(
        "at-the-end-of-the-scale", "warning",
        "A meter that shows its last value may be at its limit, and the truth beyond it.",
        "Write `over …` (or `under …`) where it stopped there; where it didn't, `accept:` with the reason.",
        instruments.at_an_end,
    ),
    Rule(
        "background-louder", "warning",
        "A background is a part of what is heard over it: read as louder, it changed, or the two were exchanged.",
        "Look at both cells; measure both again, one right after the other, where neither is a slip.",
        data.louder_backgrounds,
    ),
    Rule(
        "past-calibration", "warning",
        "An instrument wanders; after the day its calibration counts to, nobody vouches for it.",
        "Have it calibrated again and correct what it read; give it its `drift:` where it has none; or leave the "
        "statement on the page.",
        instruments.past_calibration,
    ),
    Rule(
        "outside-calibrated-points", "warning",
        "What a calibration found at some readings needn't hold at others.",
        "Calibrate where you read, or read where you calibrated.",
        instruments.beyond_points,
    ),
    Rule(
        "calibrated-afterwards", "note",
        "What a later calibration finds needn't have been so before; the drift between is counted backwards.",
        "Say which calibration held when it was read, where there was one; correct the day where it is wrong.",
        instruments.calibrated_afterwards,
    ),
    Rule(
        "percent-of-nothing", "note",
        "So many percent of nothing is nothing, and no instrument is that good.",
        "Look for the rest of its accuracy in the leaflet, often some digits: `±2 % + 2 digits`.",
        instruments.percent_of_nothing,
    ),
    Rule(
        "correction-large", "warning",
        "An instrument that far off is broken, or a decimal point slipped; every reading is moved by it.",
        "Look at the certificate again; `accept:` with the reason where it says just that.",
        calibrated.large_corrections,
    ),
    Rule(
        "k-unusual", "warning",
        "Certificates state U with a k of about 2, some of 3; a larger one makes the instrument seem that much better.",
        "Look at the certificate again; `accept:` with the reason where it says just that.",
        calibrated.unusual_factors,
    ),
    Rule(
        "percent-twice", "warning",
        "A quantity in % is shown in percent by itself: a half is 50 %. Times 100 it is shown as 5000 %.",
        "Take `100` out of the formula.",
        formulas.percent_twice,
    ),
    Rule(
        "background-subtracted", "note",
        "The difference of two levels in decibels is how much louder one is than the other, not what is left of it.",
        "Write `less_background(level, background)`, or the kind `level over background`, where that is meant.",
        formulas.background_subtracted,
    ),
    Rule(
        "limits-beside-correction", "note",
        "A maker's limits mostly hold what the calibration has found and taken out, which is then counted twice.",
        "Take `accuracy:` out, or leave in it what the calibration doesn't cover, such as another temperature.",
        instruments.accuracy_and_correction,
    ),
    Rule(
        "off-step", "warning",
        "A reading between the steps was not read off this instrument, or its step is declared wrongly.",
        "Check the reading against the notes, and `resolution:` of the instrument.",
        data.off_the_step,
    ),
    Rule(
        "coarser-grid", "warning",
        "The display may have rounded, or the reader did; either way nothing finer is known.",
        "Type the digits that were shown, or declare the step that was read, under `instruments:`, such as "
        "`my-stopwatch: 0.1 s, by hand, accuracy unknown`.",
        data.coarser_grid,
    ),
    Rule(
        "no-unit", "note",
        "A ratio or a score needs none; a reading off an instrument does.",
        "Give the measure or its column a unit, or add a unit column.",
        data.readings_without_unit,
    ),
    Rule(
        "no-value", "warning",
        "Readings are there and nothing comes of them; readers will ask what became of it.",
        "Check the formula against the readings it is fed.",
        data.quantities_without_a_value,
    ),
    Rule(
        "uncertainty-exceeds-value", "note",
        "A number whose uncertainty is larger than itself says only that it is small.",
        "Use a finer instrument or more passes, weigh or time more at once, or say in the text that it couldn't be "
        "told from nothing.",
        data.uncertainties_over_values,
    ),
    Rule(
        "parts-not-joined", "warning",
        "Parts of one run are neither repeats nor separate results until somebody says so.",
        "Add `over parts:` sum, mean or each.",
        data.parts_not_joined,
    ),
    Rule(
        "empty-cell", "warning",
        "A reader can't tell a lost reading from an unwelcome one.",
        "Write `none (why)` in the cell. What is read less often than the rest goes into a table of its own: "
        "`readings: [readings.csv, once.csv]`.",
        data.empty_cells,
    ),
    Rule(
        "unread-column", "warning",
        "Readings that were taken and not used are the first thing a sceptic looks for.",
        "Measure it, list it under `conditions:`, or `accept:` rule `unread-column` with the reason.",
        data.unread_columns,
    ),
    Rule(
        "unused-file", "note",
        "A file beside the readings that nothing uses makes readers wonder what it holds.",
        "Name it in a test or a text, or move it out of the campaign.",
        data.unused_files,
    ),
    Rule(
        "samples-apart", "note",
        "A loose contact looks like that, and so does something that happened; nobody can tell from the trace.",
        "Look what the bench log says of that moment, and tell it; smooth the trace in the formula if that suits.",
        traces.samples_apart,
    ),
    Rule(
        "limit-passed-often", "note",
        "Noise takes a trace over a limit and back: the first passing is then too early.",
        "Smooth it as declared, `when(smoothed(light, 10), under, 5)`; leave it where it truly went to and fro.",
        traces.limits_passed_often,
    ),
    Rule(
        "clock-not-stated", "note",
        "Times, areas and slopes are then taken as if it were right, and no interval says how far it may be off.",
        "Add `clock:` to the instrument, as its maker states it: `clock: ±50 ppm`, `clock: ±2 s a day`.",
        traces.clocks_not_stated,
    ),
    Rule(
        "pass-apart", "note",
        "A slip of the pen, a gust or a stuck valve looks like that, and so does bad luck. It is kept, whatever it "
        "does to the result.",
        "Look at the bench log of that pass. Leave it out only for a reason that doesn't rest on its value.",
        scatter.apart,
    ),
    Rule(
        "past-campaigns", "note",
        "Without repeats of its own or of earlier campaigns nothing says whether a repeat would agree.",
        "Give every campaign its `tested:` date, keep a version's words as they are, and repeat where you can.",
        scatter.past_campaigns,
    ),
    Rule(
        "no-instrument", "note",
        "The page will say that nothing is known of the instrument but its written digits.",
        "Name an instrument for the column, the quantity or, by unit, for the campaign.",
        data.readings_without_instrument,
    ),
)  # fmt: skip
