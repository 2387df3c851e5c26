"""What several questions share: inputs, doubts and charts of measuring."""
