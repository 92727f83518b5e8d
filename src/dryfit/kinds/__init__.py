"""What the families of joints are called and how each behaves: one table, read by all rooms."""
