"""The commands, one a file, each called by its file's name; read only when asked for."""
