"""Logger files → readings that stand for traces.

In: a test's logger files. Out: a `Reading` with a `Series` for each contender, pass and channel, and the samples of a
series in pieces. Files are never whole in memory; nothing is computed of their values.
"""
