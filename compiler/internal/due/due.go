// Package due is when a job is due again: by the calendar, by a meter, or by whichever
// comes first. It takes plain values and must not know files, machines or procedures.
//
// Readings of a meter become running totals (Join), totals and how they grew become a
// forecast (Forecast), and the times a job was done become the next (Next). What cannot
// be known is said to be unknown, with the reason.
package due
