"""The page Money: private to whoever uses the program, hidden by one key."""
