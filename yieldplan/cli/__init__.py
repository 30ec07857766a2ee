"""The front door: one command a file; heavy libraries load inside the command."""
