"""What a report says of itself, of the work and of its results: the items of ISO/IEC 17025:2017, 7.8.2.1."""
