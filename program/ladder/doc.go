// Package ladder is a road map on one body: what each step asks of it, and what every
// aid takes off that. It is where words (a road map, an assessment) and statics meet;
// it knows no week, no date but the one on which a band is retired, and no skill by name.
//
// A [Body] has its steps as [Rung]s, in the order of the road map and in the order of
// their load. A Rung's [Aid]s are the ways to do it: free, with bands hung, with the toes
// on a scale. Every Aid has a load and a site, which is where package strength keeps what the
// model is off by.
package ladder
