"""Blanks into pieces: integers only; the one door of OR-Tools."""
