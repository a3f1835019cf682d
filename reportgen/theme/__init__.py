"""A theme's folder → templates, style sheet, palette.

In: theme files. Out: a template environment. Never knows campaigns.
"""
