"""The shelf: many skeins at once, their yards, a choice among them, and labels for them."""
