"""How far a sum of errors of known shapes reaches, exactly: parts, their convolution with Student's t, quantiles."""
