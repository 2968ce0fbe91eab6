package hydraulics

// halving is the least figure between low, which is not enough, and high, which is, to the last digit that a float64 tells
// apart.
func halving[T ~float64](low, high T, enough func(T) bool) T {
	const most = 200 // more than a float64 can be halved between two of them that are this near
	for range most {
		mid := low + (high-low)/2
		if mid <= low || mid >= high {
			break
		}
		if enough(mid) {
			high = mid
		} else {
			low = mid
		}
	}
	return high
}
