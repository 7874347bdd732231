package main

import (
	"errors"
	"fmt"
	"hash/fnv"
	"io/fs"
	"os"
	"path/filepath"
	"time"
)

// A guard looks at what stands under a name, if anything does, and gives the
// reason why it must stay.
type guard func(name string) error

// save puts data under the name path, whole or not at all. The bytes go to a
// new file in the same folder, are forced to the disk, and only then take the
// name; a file already there stays as it was until that moment, and keeps its
// permissions. After a failure nothing is left behind. This is the only place
// where the program writes to the file system.
//
// Of several programs that save under one name at a time each has its turn, and
// the guards are asked within it: what they see is what is replaced.
//
// A symbolic link is followed. What is neither a file nor a folder, such as a
// device or a named pipe, cannot be replaced and is written to.
func save(path string, data []byte, guards ...guard) error {
	target, mode, err := saveTarget(path)
	if err != nil {
		return err
	}
	if mode&fs.ModeType != 0 {
		return explainSave(path, os.WriteFile(target, data, 0))
	}
	temp, err := createTemp(target)
	if err != nil {
		return explainSave(path, err)
	}
	if err := fill(temp, data, mode); err != nil {
		return explainSave(path, errors.Join(err, os.Remove(temp.Name())))
	}
	for _, stays := range guards {
		if err := stays(target); err != nil {
			return errors.Join(err, os.Remove(temp.Name()))
		}
	}
	if err := os.Rename(temp.Name(), target); err != nil {
		return explainSave(path, errors.Join(err, os.Remove(temp.Name())))
	}
	syncFolder(filepath.Dir(target))
	return nil
}

// saveTarget finds what a path stands for and the mode of what is there, 0
// when nothing is. A link to nowhere counts as nothing.
func saveTarget(path string) (string, fs.FileMode, error) {
	info, err := os.Stat(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return path, 0, nil
	case err != nil:
		return "", 0, explainSave(path, err)
	case info.IsDir():
		return "", 0, misuse("Give the name of a file in it.", "%s: this is a folder, not a file", path)
	case !info.Mode().IsRegular():
		return path, info.Mode(), nil
	}
	target, err := filepath.EvalSymlinks(path)
	return target, info.Mode(), explainSave(path, err)
}

// partName is the file beside a target that is written first: always the same, so that it also
// keeps the turn of whoever writes it.
func partName(target string) string {
	sum := fnv.New32a()
	sum.Write([]byte(filepath.Base(target)))
	return filepath.Join(filepath.Dir(target), fmt.Sprintf(".coldreckon-%08x.part", sum.Sum32()))
}

// What a program that was killed left behind is known by its age. Its turn is
// over after a few seconds without a byte; other targets' leftovers are swept
// away when they are surely nobody's.
const (
	turnOver   = 5 * time.Second
	partsSwept = time.Hour
)

// createTemp opens the file beside a target that is written first, with the permissions that any
// new file gets, as soon as nobody else has it.
func createTemp(target string) (*os.File, error) {
	name := partName(target)
	parts, _ := filepath.Glob(filepath.Join(filepath.Dir(name), ".coldreckon-*.part")) // none where the folder's name is a pattern
	for _, part := range parts {
		removeOlder(part, partsSwept)
	}
	for start := time.Now(); ; time.Sleep(10 * time.Millisecond) {
		f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
		if !errors.Is(err, fs.ErrExist) || time.Since(start) > 2*turnOver {
			return f, err
		}
		removeOlder(name, turnOver)
	}
}

// removeOlder removes a file that nobody has written to for so long.
func removeOlder(name string, age time.Duration) {
	if info, err := os.Lstat(name); err == nil && time.Since(info.ModTime()) > age {
		os.Remove(name)
	}
}

// fill writes, syncs and closes f, giving it the permissions of the file it
// will replace.
func fill(f *os.File, data []byte, mode fs.FileMode) error {
	_, err := f.Write(data)
	if err == nil && mode != 0 {
		err = f.Chmod(mode.Perm())
	}
	if err == nil {
		err = f.Sync()
	}
	return errors.Join(err, f.Close())
}

// syncFolder forces the new name to the disk. Not every file system can; the
// file is whole either way, so a refusal is no failure.
func syncFolder(folder string) {
	if d, err := os.Open(folder); err == nil {
		d.Sync()
		d.Close()
	}
}

// explainSave puts an operating system's error in the words of the program.
func explainSave(path string, err error) error {
	if err == nil {
		return nil
	}
	return failure("Choose a name in another folder, or make room in this one.",
		"%s: it cannot be written (%v)", path, cause(err))
}

// cause strips from an operating system's error what the message says anyway:
// the call and the name.
func cause(err error) error {
	var onPath *fs.PathError
	var onLink *os.LinkError
	switch {
	case errors.As(err, &onPath):
		return onPath.Err
	case errors.As(err, &onLink):
		return onLink.Err
	}
	return err
}
