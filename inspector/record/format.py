"""The number of the format in which records are written."""

FORMAT = 1
