"""Numbers, intervals, decisions and reasons ↔ words, by language. Nothing else formats a number.

In: plain numbers and codes. Out: text. Never knows what a campaign is.
"""
