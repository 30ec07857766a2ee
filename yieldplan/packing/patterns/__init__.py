"""The best pattern of every board at given prices of the parts (pricing, column generation's subproblem)."""
