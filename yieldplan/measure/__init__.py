"""Board feet, money, the purchase list, where the wood goes."""
