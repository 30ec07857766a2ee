"""Better plans: dives, neighbourhoods, sets of boards, the best of all patterns met."""
