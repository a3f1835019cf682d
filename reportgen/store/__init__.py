"""Things kept between compiles, by content.

In: a key made of digests. Out: bytes, or nothing. Never knows what they mean.
"""
