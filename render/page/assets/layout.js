// Shown by the bench.
