"""What can be built: one assembly a file."""
