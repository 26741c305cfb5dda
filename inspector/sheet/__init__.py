"""What is handed over: a sheet composed as text first, then drawn."""
