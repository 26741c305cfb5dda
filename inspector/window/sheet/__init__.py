"""What is handed over, seen before it is printed."""
