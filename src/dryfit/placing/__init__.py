"""From the declared piece to placed boxes, joints, sizes and their reasons: the Model."""
