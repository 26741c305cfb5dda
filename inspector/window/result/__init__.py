"""What it all means so far."""
