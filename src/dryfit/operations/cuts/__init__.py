"""What is cut: joints and shapes."""
