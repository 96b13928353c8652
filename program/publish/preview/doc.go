// Package preview serves a site that is still being worked on, to a browser on
// the same machine, from memory: nothing is written.
//
// Show takes the files of a good build, ShowProblems the messages of one that
// went wrong; either makes every open page load again, told by server-sent
// events (HTML standard, 9.2). While there are problems each page shows the
// messages instead, and the last good state of that page is one link away.
//
// Pages are served as they will be published, but for one script that waits for
// the events and the leave for it in the page's content security policy.
//
// Only requests that name the machine itself are answered (localhost or a
// loopback address), so that no page of another site can read what is here under
// a name of its own; Open lifts that.
package preview
