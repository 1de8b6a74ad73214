"""What the ball does between the foul line and the pins."""
