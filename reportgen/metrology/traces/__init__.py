"""What is found along a trace, one channel of a logger over time: a kind of finding a file, each in pieces of it."""
