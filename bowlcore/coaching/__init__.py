"""What to do about it: pure functions, no pictures."""
