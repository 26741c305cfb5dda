"""The tests; a package of its own, so that another one of this name never stands before it."""
