"""The trade's tables as CSV, the source beside every row, and their loader."""
