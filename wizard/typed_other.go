//go:build !linux

package wizard

// dropTyped would empty the input of a terminal; here what was typed stays.
func dropTyped(uintptr) {}
