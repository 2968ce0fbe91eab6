package core

import "example.com/tintline/core/measure"

// LoadOf is a load as it was, with another volume. Amounts that follow from its mix follow again; what was given by
// itself, or was put in by an older recipe, stays as it was put in.
func (s *state) LoadOf(f *Loaded, v measure.Volume) *Loaded {
	c := *f
	c.Volume = v
	if f.Mix == "" || f.For == "" {
		return &c
	}
	bare := *f
	bare.Parts = nil
	full, err := s.resolveLoaded(&bare)
	if err != nil {
		return &c
	}
	follows := full.(*Loaded).Parts
	if len(follows) != len(f.Parts) {
		return &c
	}
	for i := range follows {
		if follows[i] != f.Parts[i] {
			return &c
		}
	}
	c.Parts = nil
	return &c
}
