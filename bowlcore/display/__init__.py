"""What people see. Nothing is computed here."""
