// Package store puts made files into the output folder, all of them or none.
//
// Nothing of the output is replaced before everything is made and checked. A Run goes
// through these steps, in this order:
//
//  1. Begin takes the lock; a second command is told so and stops.
//  2. It finishes what an interrupted run had decided.
//  3. Add compares with what is there. A file with the same bytes is left alone and
//     keeps its time. A file that the manifest does not list, or whose bytes
//     are no longer those that were written, is not ours: it is never replaced
//     and never removed, and standing in the way of a new file it is an error.
//  4. It stages the new files under .gatepost/staged, and syncs them, so that
//     whoever makes them need not hold them.
//  5. Commit writes the list of moves and removals, .gatepost/moves, and syncs it.
//     This is the moment of decision: stopped before it, nothing has changed;
//     stopped after it, the next Begin or Recover carries the list out.
//  6. It carries it out, unless somebody changed what would be replaced: moves,
//     removals of stale files and of the folders that become empty by them,
//     the new manifest, then the list itself is taken away. A folder that lies on
//     another disk is copied to instead.
//
// The manifest, .gatepost/manifest, has one line a file, sorted by path: the
// SHA-256 of its bytes, two spaces, its path below the output folder. That is
// the form of the sha256sum tool, which can check it: run
// "sha256sum -c .gatepost/manifest" in the output folder.
//
// A Commit covers a scope, such as "print/" without "print/joss/": only files in it
// are written or removed, and what the manifest says of the others stands. Write does
// all of this at once.
//
// Files are added in batches. Of each that has a name and a source, .gatepost/prints keeps
// both, the paths, a hash of what the manifest says of them, and a note. While the source is
// the same and all its files are there as they were written, a batch stands: the next Run
// may keep it without its being made again. That file is one JSON object a line, below a line
// with their SHA-256; damaged or missing, nothing stands.
//
// .gatepost/form is the version of all this; an output of a newer one is refused.
//
// Append is for the one file that commands add to and people write too, a log:
// it waits for its turn, adds, and syncs.
//
// All paths go through os.Root, with forward slashes, and cannot leave it.
package store
