"""A page kind a file: its view and the function that builds it.

In: campaign, evaluation, figures. Out: `Page`. Never touches the disk.
"""
