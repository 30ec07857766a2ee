"""What is bought together: packs, minimum orders, panels from one lot."""
