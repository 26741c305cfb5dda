"""What is seen and touched: Qt only, and no rule of the trade."""
