"""The probe: a short adaptive set of side questions that finds which rule a learner's answers fit."""
