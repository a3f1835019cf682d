"""Yes and no, counts, grades: decided by exact tests, without a scatter. Plain numbers in, pairs and ranks out."""
