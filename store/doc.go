// Package store keeps numbered records in one file and never loses one that it
// has confirmed. It knows nothing of what the records mean.
//
//   - Nil from Append means durable: both syncs of the commit have returned.
//   - An error from Append says whether the records are known not to be there,
//     or whether that is unsure (ErrUnsure). After it nothing more is written
//     (ErrLatched) until Recheck has closed, examined and reopened the file.
//   - The caller names each action. The same name again returns the first
//     answer and writes nothing, so an unsure action can simply be repeated.
//     Only a snapshot that found the disk full stops nothing.
//   - Rows, which the caller derives from the records, change in the commit of
//     the record that brings them: both are there or neither is.
//   - Records are numbered from 1 without a gap and are never rewritten.
//   - Open never creates, Create never overwrites, a file is never repaired in
//     place: whatever is wrong with it is said in one sentence, with what to do.
//   - Every byte that is read is checked: pages by their form and their place in
//     the tree, values by their seal, all records together by the head.
//
// How it is kept. bbolt writes: it has the lock, the two heads and the syncs. We
// read: its pages are decoded here, with plain reads and every figure checked
// (page.go, tree.go), because a damaged page can send bbolt round in a circle or
// off the end of its map, and neither can be caught. Before a commit the paths
// that it will touch are read the same way, and before the first one the list of
// free pages is compared with the pages in use, so that damage is found and not
// written over. What still reaches bbolt runs under a guard (guard.go).
//
// What repeats is written once (format 2): a key that goes on from record to
// record stands in the first of them, the name of an action in its first record
// and, by a hash of it, in a block with others (record.go, action.go). A file of
// format 1 opens for reading; ReplaceWith writes it anew and keeps the old one.
//
// A Store may be used by several goroutines. A reader sees the file as it was
// when it began and does not hold up a commit, except that the file cannot be
// made larger meanwhile: so no Append, Recheck or Close from inside Each.
package store
