"""What passes show of themselves: a trend, one that stands apart, one contender that scatters further than others."""
