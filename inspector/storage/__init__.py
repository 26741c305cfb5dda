"""Where records, their photographs and their bags are kept."""
