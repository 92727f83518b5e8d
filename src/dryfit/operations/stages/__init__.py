"""Keys, sanding, glue-ups and coats, and what goes before what."""
