package questions

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// Models and sentences ask what was told by keys of this table: one that does not exist
// would never have been told.
func TestModelsAskForKeysThatExist(t *testing.T) {
	var files []string
	for _, folder := range []string{"economics", "report/words", "report/figures", "wizard"} {
		found, err := filepath.Glob("../../" + folder + "/*.go")
		if err != nil {
			t.Fatal(err)
		}
		files = append(files, found...)
	}
	asks := regexp.MustCompile(`\.(?:Told|spread)\("([^"]+)"`)
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
