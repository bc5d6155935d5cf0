c2:m7 f:maj7/a g1:7.9-
