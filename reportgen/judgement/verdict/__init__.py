"""The overall judgement: criteria, weights and draws in, pairwise indexes and who leads where out."""
