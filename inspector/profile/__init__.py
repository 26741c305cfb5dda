"""What a machine should be: the schema of a profile, and reading one with all its problems."""
