"""One search, stage by stage, and who does its tasks side by side."""
