package store

// child is what the test binary does when it is started as a helper.
func child(job string) int {
	return 99
}
