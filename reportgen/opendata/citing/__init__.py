"""How a campaign is cited: what is cited once, then a form a file."""
