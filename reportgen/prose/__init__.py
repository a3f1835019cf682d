"""Sentences from results, and the author's Markdown with references into them.

In: results and Markdown. Out: text and marked-up fragments. Never knows templates.
"""
