"""The numbers of the machine: read figure by figure, what they can be, how they stand, and the papers."""
