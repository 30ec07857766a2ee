"""A piece in cells: crosscut marks along, rip settings across, marks as blocked cells; and a pattern on it."""
