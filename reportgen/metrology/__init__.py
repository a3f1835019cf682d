"""Units, instruments, formulas, propagation, levels, type A evaluation, budgets: a library of its own.

In and out: plain numbers with units. Never knows the program it serves.
"""
