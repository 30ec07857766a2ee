"""Every pattern of a board that is nearly as good as its best one."""
