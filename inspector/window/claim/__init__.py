"""What is claimed, by whom, and the numbers as read."""
