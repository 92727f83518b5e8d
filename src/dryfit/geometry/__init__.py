"""Boxes, part frames and solids in exact millimetres; no wood."""
