"""Raw files → readings, each with its file and line.

In: `Declared` and tables. Out: `Readings`. Never computes anything.
"""
