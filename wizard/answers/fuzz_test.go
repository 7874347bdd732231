package answers

import (
	"strings"
	"testing"

	"coldreckon/economics"
)

// Whatever a file holds, reading gives a file that can be written, set and
// filled, or faults that name the file; it never panics.
func FuzzRead(f *testing.F) {
	for _, s := range Samples() {
		f.Add(s.Text, "box.volume", "90 L")
	}
	f.Add("{units: metric, box: {volume: 90 L}}\n", "box.foam", "25 mm")
	f.Add("box:\n  faces: {top: {foam: 1 in}} # x\n\n# y\n", "box.faces.top.foam", "none")
	f.Add("units: us # a\rbox:\r  volume: 90 L\n", "box.foam", "2 in")
	f.Add("evidence:\n  ice_history:\n    - {ice: 10 kg, hours: 36, month: 7}\n", "evidence.ice_history", "?")
	f.Fuzz(func(t *testing.T, text, key, answer string) {
		file, faults := Read("f", strings.NewReader(text))
		if file == nil {
			if len(faults) == 0 {
				t.Fatal("neither file nor fault")
			}
			for _, fault := range faults {
				if fault.File != "f" || fault.Wrong == "" || strings.ContainsAny(fault.Error(), "\n\r") {
					t.Errorf("fault %#v", fault)
				}
			}
			return
		}
		before := written(t, file)
		if err := file.Set(key, answer); err != nil {
			if _, ok := err.(Fault); !ok {
				t.Errorf("%T", err)
			}
			if written(t, file) != before {
				t.Error("a refused answer changes the file")
			}
		} else if _, faults := Read("f", strings.NewReader(written(t, file))); len(faults) > 0 {
			t.Errorf("after setting %s to %q: %v", key, answer, faults)
		}
		file.Boat(economics.Book{})
		if err := file.Remove(key); err != nil {
			if _, ok := err.(Fault); !ok {
				t.Errorf("%T", err)
			}
		}
	})
}

func BenchmarkSet(b *testing.B) {
	s, _ := SampleNamed("dunlin")
	f, _ := Read("f", strings.NewReader(s.Text))
	for b.Loop() {
		if err := f.Set("box.volume", "90 L"); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkRead(b *testing.B) {
	s, _ := SampleNamed("dunlin")
	for b.Loop() {
		Read("f", strings.NewReader(s.Text))
	}
}
