"""All machines, and how one begins."""
