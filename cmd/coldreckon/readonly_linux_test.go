package main

import (
	"errors"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"syscall"
	"testing"
)

// asNobody runs work with the rights of somebody else to the file system, so
// that a folder can refuse even the superuser. Only this thread is changed.
func asNobody(t *testing.T, work func()) {
	t.Helper()
	if os.Getuid() != 0 {
		work()
		return
	}
	runtime.LockOSThread() // never unlocked: the thread ends with its goroutine
	const nobody = 65534
	syscall.RawSyscall(syscall.SYS_SETFSGID, nobody, 0, 0)
	syscall.RawSyscall(syscall.SYS_SETFSUID, nobody, 0, 0)
	work()
}

// A folder that takes no new files is told in one line, and the file that
// stands in it stays as it is, though it could be written itself: it is only
// ever replaced whole.
func TestSaveIntoReadOnlyFolder(t *testing.T) {
	folder := t.TempDir()
	for dir := folder; dir != os.TempDir() && dir != "/"; dir = filepath.Dir(dir) {
		if err := os.Chmod(dir, 0o755); err != nil {
			t.Fatal(err)
		}
	}
	path := filepath.Join(folder, "boat.yaml")
	if err := os.WriteFile(path, []byte("old"), 0o666); err != nil {
		t.Fatal(err)
	}
	if err := errors.Join(os.Chmod(path, 0o666), os.Chmod(folder, 0o555)); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { os.Chmod(folder, 0o755) })

	var err error
	done := make(chan struct{})
	go func() {
		defer close(done)
		asNobody(t, func() { err = save(path, []byte("new")) })
	}()
	<-done
	var c complaint
	if !errors.As(err, &c) || c.code != exitFailed || len(c.lines) != 1 || !strings.Contains(c.lines[0], "permission denied") {
		t.Errorf("found %v, expected a complaint of one line", err)
	}
	if got, err := os.ReadFile(path); err != nil || string(got) != "old" {
		t.Errorf("the old file now holds %q, %v", got, err)
	}
	expectOnly(t, folder, "boat.yaml")
}

// A full device is told; what stands for a disk here is a device that is
// always full.
func TestSaveToFullDevice(t *testing.T) {
	err := save("/dev/full", []byte("new"))
	var c complaint
	if !errors.As(err, &c) || c.code != exitFailed || !strings.Contains(c.lines[0], "no space left on device") {
		t.Errorf("found %v", err)
	}
	if info, err := os.Stat("/dev/full"); err != nil || info.Mode()&os.ModeCharDevice == 0 {
		t.Errorf("the device has become %v, %v", info, err)
	}
}

// A real file system of 64 kB, where it may be mounted, fills up half way.
func TestSaveOnFullDisk(t *testing.T) {
	folder := t.TempDir()
	if err := syscall.Mount("tmpfs", folder, "tmpfs", 0, "size=64k"); err != nil {
		t.Skip("no file system can be mounted here:", err)
	}
	defer syscall.Unmount(folder, 0)
	path := filepath.Join(folder, "report.pdf")
	old := []byte(strings.Repeat("o", 40<<10))
	if err := save(path, old); err != nil {
		t.Fatal(err)
	}
	err := save(path, []byte(strings.Repeat("n", 40<<10)))
	var c complaint
	if !errors.As(err, &c) || c.code != exitFailed || !strings.Contains(c.lines[0], "no space left on device") {
		t.Errorf("found %v", err)
	}
	if got, err := os.ReadFile(path); err != nil || string(got) != string(old) {
		t.Errorf("the old file has changed, %d bytes, %v", len(got), err)
	}
	expectOnly(t, folder, "report.pdf")
}
