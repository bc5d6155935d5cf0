dolce = ^\markup { "dolce" }
