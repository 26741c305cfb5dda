"""The walk round the machine: one item at a time, what is expected, what was found."""
