// Package store puts made files into the output folder, all of them or none.
//
// Everything is made and checked before one file is replaced. Write goes
// through these steps, in this order:
//
//  1. Take the lock; a second command is told so and stops.
//  2. Finish what an interrupted run had decided.
//  3. Compare with what is there. A file with the same bytes is left alone and
//     keeps its time. A file that the manifest does not list, or whose bytes
//     are no longer those that were written, is not ours: it is never replaced
//     and never removed, and standing in the way of a new file it is an error.
//  4. Stage the new files under .gatepost/staged, and sync them.
//  5. Write the list of moves and removals, .gatepost/moves, and sync it.
//     This is the moment of decision: stopped before it, nothing has changed;
//     stopped after it, the next Write or Recover carries the list out.
//  6. Carry it out, unless somebody changed what would be replaced: moves,
//     removals of stale files and of the folders that become empty by them,
//     the new manifest, then the list itself is taken away.
//
// The manifest, .gatepost/manifest, has one line a file, sorted by path: the
// SHA-256 of its bytes, two spaces, its path below the output folder. That is
// the form of the sha256sum tool, which can check it: run
// "sha256sum -c .gatepost/manifest" in the output folder.
//
// A Write covers a scope, such as "print/" without "print/joss/": only files in it
// are written or removed, and what the manifest says of the others stands.
//
// Remember keeps, in .gatepost/made, a line that stands for all that the output
// was made from. While it does, Fresh can tell that there is nothing to do
// without anything being made.
//
// Append is for the one file that commands add to and people write too, a log:
// it waits for its turn, adds, and syncs.
//
// All paths go through os.Root, with forward slashes, and cannot leave it.
package store
