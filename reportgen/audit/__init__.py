"""What is unfair, missing or careless in a campaign, and what would mend it: one rule, one function, one table.

In: `Declared`, `Readings`, `Evaluation`. Out: findings. Never knows pages.
"""
