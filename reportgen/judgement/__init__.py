"""Comparisons, ranks, first place, claims, frontier: a library of its own.

In and out: plain numbers in one unit. Never knows the program it serves.
"""
