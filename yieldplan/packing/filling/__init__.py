"""A plan at once: board after board, filled with what is still to be made."""
