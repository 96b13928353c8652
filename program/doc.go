// Package program holds the words of Gatepost: a coach's assessment of one
// athlete, the road map of a skill, and the dated training program that leads
// along it. A program here is always a training program, never the software.
//
// The package reads as a glossary. It imports nothing of ours, computes
// nothing and formats nothing: intake fills an Assessment and a Library from
// files, the planner turns them into a Program, the view turns a Program into
// text.
//
// Units, everywhere: kg, m, N, N·m, s, radians; weeks where a name says so.
// Degrees, centimetres, kilograms of force and pounds exist only at the edges,
// in what people write and read. The zero value of an optional field means
// "not given"; where zero means something else, the field says so.
package program
