"""Where sentences begin and end."""
