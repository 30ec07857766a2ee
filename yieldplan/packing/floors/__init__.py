"""What no plan can cost less than: prices by column generation, limited copies, sets of boards."""
