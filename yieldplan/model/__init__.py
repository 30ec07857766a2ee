"""What there is: sizes as sums, jobs, parts, blanks, pieces of stock, plans. Frozen; no files, no solver."""
