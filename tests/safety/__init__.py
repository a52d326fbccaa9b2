"""What comes in from outside, however bad: it is answered, in time, and harms nothing on its way out."""
