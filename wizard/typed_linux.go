package wizard

import "syscall"

// dropTyped empties the input of a terminal (ioctl_tty(2), TCFLSH of TCIFLUSH).
func dropTyped(fd uintptr) {
	const tcflsh, tciflush = 0x540B, 0
	// A terminal that cannot do it keeps what was typed, which is no harm.
	_, _, _ = syscall.Syscall(syscall.SYS_IOCTL, fd, tcflsh, tciflush)
}
