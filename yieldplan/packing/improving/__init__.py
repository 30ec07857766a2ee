"""Better plans: dives, neighbourhoods, fewer sheets, sets of boards."""
