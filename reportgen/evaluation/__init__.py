"""A campaign and its readings, through both libraries, to results and decisions. Caveats reach results here.

In: `Declared`, `Readings`. Out: `Evaluation`. Never knows words or pages.
"""
