"""What is handed over: one paper a file or folder, derived from the plan."""
