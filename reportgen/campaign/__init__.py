"""What the author declares: types, the YAML reader, the schema, the kinds, shared things.

In: YAML text. Out: `Declared`. Never knows a reading.
"""
