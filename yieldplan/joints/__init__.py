"""How parts meet: one joint a file."""
