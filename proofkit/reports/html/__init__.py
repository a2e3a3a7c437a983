"""What all pages for the browser share: the seal, the look, the shapes of charts."""
