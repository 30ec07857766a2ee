"""Up to 16 boards: every choice of them that could cost less than the plan is tried."""
