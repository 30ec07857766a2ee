"""What can be bought: one kind of stock a file; facts only, no solver."""
