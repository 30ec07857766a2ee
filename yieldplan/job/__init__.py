"""The job file: read through one door, lines kept."""
