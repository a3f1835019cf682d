"""What is written in one cell → what it means. A notation a file; none computes, none guesses."""
