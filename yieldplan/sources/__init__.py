"""Where pieces of wood are listed: one source a file."""
