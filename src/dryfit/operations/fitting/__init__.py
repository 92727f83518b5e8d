"""What is hung, fitted and screwed on."""
