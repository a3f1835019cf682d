"""Where only an order was seen: looks in, what follows from them and what contradicts itself out."""
