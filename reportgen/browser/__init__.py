"""Pages opened in headless Chromium and checked.

In: a compiled site. Out: what is wrong with it. Never knows how it was made.
"""
