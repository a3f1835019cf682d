"""A table → the cells that a test asks for, each with contender, pass, part and what stands beside it."""
