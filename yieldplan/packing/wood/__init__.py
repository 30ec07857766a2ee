"""From wood to whole numbers, and from patterns back to cuts, leftovers and words."""
