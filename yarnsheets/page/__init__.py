"""What all sheets share: description, inputs, words, charts, the front end and the widget."""
