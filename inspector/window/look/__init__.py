"""The look of the window."""
