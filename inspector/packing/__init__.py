"""The whole file of one inspection packed as a bag, a copy of it to share, and bags of others taken in."""
