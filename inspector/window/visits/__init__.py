"""The whole file of a machine packed and taken in, and its visits compared."""
