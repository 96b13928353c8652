// Package content holds what a coach and a client read, built into the program:
// exercises, road maps, pages and words, one file each.
//
// A coach's own file at the same path below content/ takes the place of the
// built-in one, whole. The studio, the clients and the programs in this folder
// belong to the demo and are never built in.
//
// The library is written in English. Below a folder named after another language
// lie its translations: the same paths, words without the numbers. Those of the
// demo's programs and notes belong to the demo as well.
package content

import "embed"

// Library is the built-in library. Its root is this folder: "exercises/tuck-hold.md",
// "roadmaps/planche.yaml", "pages/home.md", "words/en.yaml".
//
//go:embed exercises roadmaps pages words de/exercises de/roadmaps de/pages
var Library embed.FS
