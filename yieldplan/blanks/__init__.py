"""From part to blank: what the saw must deliver; one route a file."""
