"""One search, stage by stage and by turns, and who does its tasks side by side."""
