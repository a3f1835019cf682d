"""The lasting record of what was computed: results.json.

In: `Evaluation`. Out: text. Never knows pages.
"""
