"""The steps from a workspace to a site, in one table.

In: a folder. Out: a built site and its findings. Never knows the terminal.
"""
