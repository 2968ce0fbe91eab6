package tui

import "example.com/tintline/core"

// confirmed looks for what the screen says is booked.
func (k *masher) confirmed(seed int64, words string) {
	k.t.Helper()
	all := k.disk.entries
	if len(all) == 0 {
		k.t.Fatalf("seed %d: %q is said to be booked, and nothing is on the disk", seed, words)
	}
	var facts []core.Fact
	for _, e := range all {
		if e.Action == all[len(all)-1].Action {
			facts = append(facts, e.What)
		}
		k.seen["fact "+e.What.Name()] = true
	}
	if got := factWords(facts); got != words {
		k.t.Fatalf("seed %d: %q is said to be booked, on the disk is %q", seed, words, got)
	}
}

// sameFromTheDisk reads the stored entries back into a book of their own: it says the same.
func (k *masher) sameFromTheDisk(seed int64) {
	b := k.first.Clone()
	for _, e := range k.disk.entries {
		back, err := core.Decode(e.Seq, e.Action, e.Encode())
		if err == nil {
			err = b.Apply(back)
		}
		if err != nil {
			k.t.Fatalf("seed %d: %v", seed, err)
		}
	}
	if b.StateDigest() != k.book().StateDigest() || b.Digest() != k.book().Digest() {
		k.t.Errorf("seed %d: the journal gives another book than the screen has", seed)
	}
}
