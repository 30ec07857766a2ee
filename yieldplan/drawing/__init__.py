"""One scene of lines, text and hatching, and thin painters for it."""
