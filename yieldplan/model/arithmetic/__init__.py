"""The arithmetic of a shop's own recipe: `width - 2 * board`, read by our own small reader, never run as code."""
