"""What it means: pure functions from a profile and a record to a judgement, one module a question."""
