"""Lips and banding."""
