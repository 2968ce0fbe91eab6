package reckon

import (
	"fmt"
	"strings"
)

// MissingError says that the inputs determine nothing, or that one of them is of
// no use without another.
type MissingError struct {
	Kind string
	// What is missing, in words: keys, with alternatives.
	What string
}

func (e *MissingError) Error() string {
	return fmt.Sprintf("To reckon %s, %s is missing.", e.Kind, e.What)
}

// Do says what to do about it.
func (e *MissingError) Do() string {
	return fmt.Sprintf("Add %s; each in any unit of its kind.", e.What)
}

// InputError says that one input cannot be used.
type InputError struct {
	Key, Value string
	// Want is what would be allowed.
	Want string
}

func (e *InputError) Error() string {
	return fmt.Sprintf("%s is %q; it must be %s.", e.Key, e.Value, e.Want)
}

// Do says what to do about it.
func (e *InputError) Do() string {
	if _, out := strings.CutPrefix(e.Want, "left out"); out {
		return fmt.Sprintf("Leave %s out.", e.Key)
	}
	for _, bound := range []string{"above ", "at most ", "more than ", "between ", "below "} {
		if strings.HasPrefix(e.Want, bound) {
			return fmt.Sprintf("Give %s as a figure %s.", e.Key, e.Want)
		}
	}
	return fmt.Sprintf("Give %s as %s.", e.Key, e.Want)
}

// KeyError says that a kind takes no such input.
type KeyError struct {
	Kind, Key string
	Known     []string
}

func (e *KeyError) Error() string {
	return fmt.Sprintf("reckon %s takes no input %q.", e.Kind, e.Key)
}

// Do says what to do about it.
func (e *KeyError) Do() string {
	return fmt.Sprintf("Use one of: %s; each in any unit of its kind.", strings.Join(e.Known, ", "))
}

// KindError says that there is no such kind of reckoning.
type KindError struct{ Kind string }

func (e *KindError) Error() string {
	return fmt.Sprintf("There is no reckoning called %q.", e.Kind)
}

// Do says what to do about it.
func (e *KindError) Do() string {
	return "Use one of: " + strings.Join(Kinds(), ", ") + "."
}
