"""A board drawn large enough to be read at the saw: its rows, marks, lengths and words."""
