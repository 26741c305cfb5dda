"""What was seen: the schema of one inspection, and every change to it as data."""
