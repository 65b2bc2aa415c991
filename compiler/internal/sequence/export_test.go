package sequence

// SolveFrom is Solve that begins with a beam of a width, so that small problems need all
// there is.
var SolveFrom = solve
