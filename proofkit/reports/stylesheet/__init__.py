"""The style sheet's forms: to read in a window, as Markdown, in Word, as JSON."""
