"""The page Photographs: all of them in one list, how they come in, where they belong, and what is missing."""
