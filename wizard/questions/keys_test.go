package questions

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// The models ask what was told by keys of this table: one that does not exist
// would never have been told.
func TestModelsAskForKeysThatExist(t *testing.T) {
	files, err := filepath.Glob("../../economics/*.go")
	if err != nil {
		t.Fatal(err)
	}
	asks := regexp.MustCompile(`\.(?:told|spread)\("([^"]+)"`)
	checked := 0
	for _, name := range files {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		for _, found := range asks.FindAllStringSubmatch(string(text), -1) {
			if key := found[1]; !strings.HasSuffix(key, ".") { // put together from parts
				if _, ok := Find(key); !ok {
					t.Errorf("%s asks for %q, which is no key", name, key)
				}
				checked++
			}
		}
	}
	if checked < 12 {
		t.Errorf("%d keys found, expected more", checked)
	}
}
