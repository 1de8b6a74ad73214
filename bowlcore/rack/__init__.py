"""What the pins do."""
