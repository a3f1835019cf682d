"""Prices and what using costs: who is dominated, where lines of cost cross. No merit is divided by a price."""
